import { isSooner, type TimedLine, type TimeVerdict, timeVerdict } from "./time-verdict.ts";
import type { LineTime, WaysOut } from "./types.ts";

const MOST_PEOPLE = 5000;

/** What a line that is late is judged by; bags an hour at the slow pace, all people together. */
export interface LateLine {
  readonly bags: number;
  /** Of one person, and of all that are stated. */
  readonly bagsPerHEach: number;
  readonly bagsPerH: number;
  /** With which the build sequence is in time in the hours stated, and day and night; Infinity where with none. */
  readonly neededByDay: number;
  /** In the hours stated, with what is on HOLD; null where nothing is. */
  readonly neededWithHold: number | null;
  readonly neededAlways: number;
}

/**
 * What would make a late line possible: the fewest people with whom its build sequence is in time, and the most bags
 * that the people stated could lay in time.
 */
export function waysOut(line: LateLine): Omit<WaysOut, "peopleAtLeast"> {
  const { bags, bagsPerHEach, bagsPerH, neededByDay, neededAlways, neededWithHold } = line;
  const share = Math.min(1, bagsPerH / neededByDay);
  return {
    people: peopleFor(neededByDay, bagsPerHEach),
    peopleWithHold: neededWithHold === null ? null : peopleFor(neededWithHold, bagsPerHEach),
    peopleDayAndNight: peopleFor(neededAlways, bagsPerHEach),
    bagsAtMost: share < LEAST_SHARE ? null : Math.floor(share * bags),
  };
}

function peopleFor(bagsPerH: number, each: number): number | null {
  const people = Math.max(1, Math.ceil(bagsPerH / each - 1e-6));
  return people <= MOST_PEOPLE ? people : null;
}

/** Less than this of a line is no way out. */
const LEAST_SHARE = 0.01;

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
