import type { WorkPlace } from "../../../shared/plan.ts";
import { edit } from "./alternatives.ts";

export function renameWorkPlace({ id, name: former }: WorkPlace, name: string): void {
  edit({
    note: `Rename ${former}`,
    change: (plan) => ({
      ...plan,
      workPlaces: (plan.workPlaces ?? []).map((each) =>
        each.id === id ? { ...each, name } : each,
      ),
    }),
  });
}

export function deleteWorkPlace({ id, name }: WorkPlace): void {
  edit({
    note: `Delete ${name}`,
    change: ({ workPlaces = [], ...plan }) => {
      const left = workPlaces.filter((each) => each.id !== id);
      return left.length > 0 ? { ...plan, workPlaces: left } : plan;
    },
  });
}
