import { isSooner, type TimedLine, type TimeVerdict, timeVerdict } from "./time-verdict.ts";
import type { LineTime, WaysOut } from "./types.ts";

const MOST_PEOPLE = 5000;
const LEAST_SHARE = 0.01;
const SHARE_STEPS = 12;

/** Whether the slow pace keeps ahead with so many people, so much of the work, by day or around the clock. */
export type Trial = (people: number, shareOfWork: number, dayAndNight: boolean) => boolean;

/**
 * What would make a line possible that is late: the fewest people with whom it keeps ahead, and the most bags
 * that the people stated could keep ahead with. More people and less work are both taken to help always.
 */
export function waysOut(trial: Trial, people: number, bags: number): WaysOut {
  return {
    people: fewestPeople(trial, people, false),
    peopleDayAndNight: fewestPeople(trial, 1, true),
    bagsAtMost: mostBags(trial, people, bags),
  };
}

/** Bags are rounded down to this: no schedule is better. */
const BAGS_STEP = 100;

/** The most work that can be done ahead of the water: bags, or a share of all where a line is not of bags alone. */
export type MostWork =
  | { readonly of: "bags"; readonly bags: number }
  | { readonly of: "share"; readonly share: number };

/** Bags rounded down to a hundred, or a share rounded down to a per cent; null where there is no such. */
export function mostWork(
  { waysOut, bags }: Pick<LineTime, "waysOut" | "bags">,
  isOfBagsAlone: boolean,
): MostWork | null {
  const most = waysOut?.bagsAtMost ?? null;
  if (most === null) return null;
  if (!isOfBagsAlone) return { of: "share", share: Math.floor((100 * most) / bags) / 100 };
  const rounded = most < BAGS_STEP ? most : Math.floor(most / BAGS_STEP) * BAGS_STEP;
  return { of: "bags", bags: rounded };
}

function fewestPeople(trial: Trial, tooFew: number, dayAndNight: boolean): number | null {
  if (!trial(MOST_PEOPLE, 1, dayAndNight)) return null;
  if (trial(tooFew, 1, dayAndNight)) return tooFew;
  let low = tooFew;
  let high = MOST_PEOPLE;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (trial(middle, 1, dayAndNight)) high = middle;
    else low = middle;
  }
  return high;
}

function mostBags(trial: Trial, people: number, bags: number): number | null {
  if (!trial(people, LEAST_SHARE, false)) return null;
  let low = LEAST_SHARE;
  let high = 1;
  for (let step = 0; step < SHARE_STEPS; step++) {
    const middle = (low + high) / 2;
    if (trial(people, middle, false)) low = middle;
    else high = middle;
  }
  return Math.floor(low * bags);
}

/** A line with its time, as others are compared with it. */
export interface OtherLine extends TimedLine {
  readonly id: string;
  readonly totals: { readonly bags: number };
}

/** Another line that the likely forecast does not overtake. */
export interface Sooner<T> {
  readonly line: T;
  readonly verdict: TimeVerdict;
}

/** Other lines that are in time, or late only if the river runs high, where this one is late; fewest bags first. */
export function soonerLines<T extends OtherLine>(
  { id }: Pick<OtherLine, "id">,
  lines: readonly T[],
): Sooner<T>[] {
  return lines
    .filter((line) => line.id !== id)
    .map((line) => ({ line, verdict: timeVerdict(line) }))
    .filter(({ line, verdict }) => isSooner(line, verdict))
    .sort((a, b) => a.line.totals.bags - b.line.totals.bags);
}
