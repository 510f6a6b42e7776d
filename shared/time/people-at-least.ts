import type { LiftedStretch } from "./stretches.ts";

export interface LeastPeopleInputs {
  readonly stretches: readonly LiftedStretch[];
  /** Height kept above the water, metres. */
  readonly marginM: number;
  readonly setUpH: number;
  /** Hours worked until the water passes a level above the design water; Infinity where it does not. */
  readonly dueH: (levelM: number) => number;
  /** Bags that one person fills and lays in an hour at the slow pace. */
  readonly bagsPerH: number;
}

/**
 * Fewer people than this are not enough, however they are divided: for every hour by which bags are due, those bags
 * over the hours worked until then, nobody walking. Null where no number is enough.
 */
export function peopleAtLeast(inputs: LeastPeopleInputs): number | null {
  const { stretches, marginM, setUpH, dueH, bagsPerH } = inputs;
  const due = stretches
    .filter(({ isOnHold }) => !isOnHold)
    .flatMap(({ lifts, lowestM, standsM = lowestM }) =>
      lifts.map(({ bags }, k) => {
        const laidM = lifts[k - 1]?.topM ?? standsM;
        return { bags, atH: dueH(Math.max(lowestM, laidM - marginM)) };
      }),
    )
    .filter(({ bags, atH }) => bags > 0 && Number.isFinite(atH))
    .sort((a, b) => a.atH - b.atH);
  let people = 1;
  let bagsDue = 0;
  for (const { bags, atH } of due) {
    bagsDue += bags;
    if (atH <= setUpH) return null;
    people = Math.max(people, Math.ceil(bagsDue / bagsPerH / (atH - setUpH) - 1e-6));
  }
  return people;
}
