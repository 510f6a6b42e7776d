import type { CheckedBuilding, CheckedGroup, Choice } from "./types.ts";

/** What the view of all buildings says of a building, in the order of its bar; every building is in exactly one. */
export const SHOWN_STATES = [
  "chosen",
  "can-be-ringed",
  "over-limit",
  "no-room",
  "too-late",
  "no-data",
  "dry",
] as const;

/** One of {@link SHOWN_STATES}: that of the check, and `chosen` where a chosen line goes round it. */
export type ShownState = (typeof SHOWN_STATES)[number];

/** A check of many buildings as far as it has come. */
export interface Sweep {
  /** By id. */
  readonly checked: ReadonlyMap<string, CheckedBuilding>;
  readonly groups: readonly CheckedGroup[];
}

/** How many buildings are in each state. */
export type StateCounts = Readonly<Record<ShownState, number>>;

/** States in which connected water touches a wall. */
const FLOODED: ReadonlySet<ShownState> = new Set([
  "chosen",
  "can-be-ringed",
  "over-limit",
  "no-room",
  "too-late",
]);

/** Whether connected water touches a wall of a building in that state. */
export function isFlooded(state: ShownState): boolean {
  return FLOODED.has(state);
}

/**
 * The state of each checked building. A group ring that can be built makes its members ringable; one that is chosen
 * makes them chosen.
 * @param choice null before there is one
 */
export function shownStates(
  { checked, groups }: Sweep,
  choice: Pick<Choice, "chosen"> | null,
): ReadonlyMap<string, ShownState> {
  const states = new Map<string, ShownState>();
  for (const [id, { state }] of checked) states.set(id, state);
  const chosen = new Set(choice?.chosen);
  for (const { id, members, state } of groups) {
    if (state !== "can-be-ringed" && !chosen.has(id)) continue;
    for (const member of members) {
      const own = states.get(member);
      if (own === undefined || !isFlooded(own)) continue;
      states.set(member, chosen.has(id) ? "chosen" : own === "chosen" ? own : "can-be-ringed");
    }
  }
  for (const id of chosen) if (states.has(id)) states.set(id, "chosen");
  return states;
}

export function countStates(states: Iterable<ShownState>): StateCounts {
  const counts = Object.fromEntries(SHOWN_STATES.map((state) => [state, 0])) as Record<
    ShownState,
    number
  >;
  for (const state of states) counts[state] += 1;
  return counts;
}

/** How many of the buildings with data connected water touches when it is so high at the gauge, meters. */
export function floodedAt({ checked }: Pick<Sweep, "checked">, levelM: number): number {
  return [...checked.values()].filter(({ state, sillM }) => {
    return state !== "no-data" && sillM !== null && sillM < levelM;
  }).length;
}

/** Ground that lies this much lower than the water, meters, is lower beyond the rounding of a figure. */
const LOWER_M = 0.03;

/** Ids of the buildings that no connected water touches when it is so high at the gauge, and that lie lower: higher ground alone keeps it off. */
export function lowBehindBanks({ checked }: Pick<Sweep, "checked">, levelM: number): string[] {
  return [...checked.values()].flatMap(({ id, state, sillM, lowM }) => {
    const isTouched = state === "no-data" || (sillM !== null && sillM < levelM);
    return !isTouched && (lowM ?? Infinity) < levelM - LOWER_M ? [id] : [];
  });
}

/** How many buildings connected water touches. */
export function floodedCount(counts: StateCounts): number {
  return SHOWN_STATES.reduce((sum, state) => sum + (isFlooded(state) ? counts[state] : 0), 0);
}
