import type { ExitRoad } from "../../../shared/plan.ts";
import { edit } from "./alternatives.ts";

export function renameRoad({ id, name: former }: ExitRoad, name: string): void {
  edit({
    note: `Rename ${former}`,
    change: (plan) => ({
      ...plan,
      roads: (plan.roads ?? []).map((each) => (each.id === id ? { ...each, name } : each)),
    }),
  });
}

export function deleteRoad({ id, name }: ExitRoad): void {
  edit({
    note: `Delete ${name}`,
    change: ({ roads = [], ...plan }) => {
      const left = roads.filter((each) => each.id !== id);
      return left.length > 0 ? { ...plan, roads: left } : plan;
    },
  });
}
