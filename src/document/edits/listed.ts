import type { Outcome } from "../../../shared/failure.ts";
import type { Plan } from "../../../shared/plan.ts";
import { apply } from "../store.ts";
import type { Edit } from "../types.ts";
import { edit } from "./alternatives.ts";

/** Lists that a plan has even when they are empty; the others are left out then. */
const ALWAYS = new Set<ListName>(["structures", "noGo"]);

/** The lists of a plan whose entries have an identifier and a name, and what one is called that has none. */
const UNNAMED = {
  structures: "building",
  noGo: "no-go area",
  sources: "source",
  roads: "road",
  workPlaces: "work place",
  culverts: "culvert",
  drains: "drain",
  possibleCulverts: "place",
} as const;

export type ListName = keyof typeof UNNAMED;
export type Listed<K extends ListName> = NonNullable<Plan[K]>[number];
interface Entry {
  readonly id: string;
  readonly name: string;
}

/** What an entry is called in a note of undo. */
export function nameIn(list: ListName, { name }: Pick<Entry, "name">): string {
  return name || UNNAMED[list];
}

/** A change to one entry, e.g. that a culvert is plugged. */
export function changeListed<K extends ListName>(
  list: K,
  entry: Listed<K>,
  change: Partial<Listed<K>>,
  { note = `Change ${nameIn(list, entry)}`, gesture }: Omit<Partial<Edit>, "change"> = {},
): Outcome<void> {
  return apply({ note, gesture, change: (plan) => withChanged(plan, list, entry.id, change) });
}

export function renameListed<K extends ListName>(list: K, entry: Listed<K>, name: string): void {
  edit({
    note: `Rename ${nameIn(list, entry)}`,
    change: (plan) => withChanged(plan, list, entry.id, { name } as Partial<Listed<K>>),
  });
}

export function deleteListed<K extends ListName>(list: K, entry: Listed<K>): void {
  edit({
    note: `Delete ${nameIn(list, entry)}`,
    change: (plan) => withoutListed(plan, list, entry.id),
  });
}

/** The plan with an entry at the end of a list. */
export function withAdded<K extends ListName>(plan: Plan, list: K, entry: Listed<K>): Plan {
  return { ...plan, [list]: [...entriesOf(plan, list), entry] };
}

export function withChanged<K extends ListName>(
  plan: Plan,
  list: K,
  id: string,
  change: Partial<Listed<K>>,
): Plan {
  const entries = entriesOf(plan, list);
  return {
    ...plan,
    [list]: entries.map((each) => (each.id === id ? { ...each, ...change } : each)),
  };
}

/** The plan without an entry; a list that is empty then is left out where a plan may be without it. */
export function withoutListed(plan: Plan, list: ListName, id: string): Plan {
  const left = entriesOf(plan, list).filter((each) => each.id !== id);
  if (left.length > 0 || ALWAYS.has(list)) return { ...plan, [list]: left };
  const { [list]: _, ...rest } = plan;
  return rest as Plan;
}

function entriesOf(plan: Plan, list: ListName): readonly Entry[] {
  return plan[list] ?? [];
}
