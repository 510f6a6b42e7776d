import type { Outcome } from "../../../shared/failure.ts";
import type { Culvert, Drain, Plan } from "../../../shared/plan.ts";
import { apply } from "../store.ts";
import { edit } from "./alternatives.ts";

/** A change to one culvert, e.g. that it is plugged. */
export function changeCulvert(
  culvert: Culvert,
  change: Partial<Culvert>,
  gesture?: string,
): Outcome<void> {
  return apply({
    note: `Change ${culvert.name}`,
    gesture,
    change: (plan) => ({ ...plan, culverts: changed(plan.culverts, culvert, change) }),
  });
}

/** A change to one drain. */
export function changeDrain(drain: Drain, change: Partial<Drain>): Outcome<void> {
  return apply({
    note: `Change ${drain.name}`,
    change: (plan) => ({ ...plan, drains: changed(plan.drains, drain, change) }),
  });
}

export function deleteCulvert({ id, name }: Culvert): void {
  edit({
    note: `Delete ${name}`,
    change: ({ culverts = [], ...plan }) => withList(plan, "culverts", without(culverts, id)),
  });
}

export function deleteDrain({ id, name }: Drain): void {
  edit({
    note: `Delete ${name}`,
    change: ({ drains = [], ...plan }) => withList(plan, "drains", without(drains, id)),
  });
}

function changed<T extends { readonly id: string }>(
  list: readonly T[] = [],
  { id }: T,
  change: Partial<T>,
): T[] {
  return list.map((each) => (each.id === id ? { ...each, ...change } : each));
}

function without<T extends { readonly id: string }>(list: readonly T[], id: string): T[] {
  return list.filter((each) => each.id !== id);
}

/** The plan with a list, which is left out when it is empty. */
function withList<K extends "culverts" | "drains">(
  plan: Plan,
  key: K,
  list: NonNullable<Plan[K]>,
): Plan {
  return list.length > 0 ? { ...plan, [key]: list } : plan;
}
