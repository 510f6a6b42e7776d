import type { Candidate, WorkForce } from "../../shared/buildings/types.ts";
import { UNITS_PER, unitsNeeded, unitsThere } from "./whole-units.ts";

/** Who works, and by when; people and hours may be Infinity. */
export type Workers = WorkForce;

/** Thousandths of a person-hour that lines take of those there are until an hour. */
export interface HourLimit {
  readonly untilH: number;
  /** One for each line. */
  readonly hours: readonly number[];
  /** Infinity where people are not limited. */
  readonly most: number;
}

type Timed = Pick<Candidate, "personHours" | "closedByH">;

/** Hours from the start by which a line must be closed; Infinity where that is not known or not limited. */
export function closesBy({ closedByH }: Timed, { untilH }: Workers): number {
  return Math.min(closedByH ?? Infinity, untilH ?? Infinity);
}

/** Whether a line's own work, by as many as can work on it, is done before it must be closed. */
export function fitsAlone(line: Timed, workers: Workers): boolean {
  const hours = closesBy(line, workers) - workers.setUpH;
  if (hours === Infinity) return true;
  const most = hours <= 0 ? 0 : hours * workers.mostOnOneLine;
  return unitsNeeded(line.personHours, "hours") <= unitsThere(most, "hours");
}

/**
 * What people and time allow: one limit for each hour at which a line must be closed.
 *
 * People are pooled and may be divided among lines as the work needs, at most `mostOnOneLine` on one. All can begin
 * after `setUpH`. Then lines can all be closed in time if and only if, until each of those hours t, what has to be
 * done by then is no more than `people x atWorkShare x (t - setUpH)`, and each line's own work fits (`fitsAlone`).
 * What has to be done by t is the whole of each line that must be closed by then, and of a later one, closed by d,
 * what is too much for the most people on it between t and d. That it is enough: as a flow from lines through the
 * spans between those hours to the people there, the least cut is through the spans before some t; between two of
 * those hours the left side is convex in t and the right side straight, so that the hours themselves decide. Without
 * a bound on a line this is the well-known rule of working on what closes first.
 * Walking and moving count as work that is due with the line but crowds nobody on it.
 *
 * Left out: crews of a fixed size, who moves where and how far, trucks, and lines that need each other's road; shifts
 * and nights are in `atWorkShare` alone. Lines whose hour is not known are not limited.
 */
export function hourLimits(lines: readonly Timed[], workers: Workers): HourLimit[] {
  const closing = lines.map((line) => closesBy(line, workers));
  const hours = [...new Set(closing)].filter(Number.isFinite).sort((a, b) => a - b);
  return hours.map((untilH) => {
    const lasts = Math.max(0, untilH - workers.setUpH);
    const due = ({ personHours }: Timed, index: number): number => {
      const laterH = closing[index]! - Math.max(untilH, workers.setUpH);
      if (closing[index]! <= untilH) return personHours + workers.moveHours;
      return laterH === Infinity ? 0 : personHours - laterH * workers.mostOnOneLine;
    };
    return {
      untilH,
      hours: lines.map((line, index) => unitsNeeded(due(line, index), "hours")),
      most: lasts === 0 ? 0 : unitsThere(lasts * workers.people * workers.atWorkShare, "hours"),
    };
  });
}

/** So much past a whole number of people is that number. */
const NEAR_WHOLE = 1e-9;

/** Fewest people with whom lines are closed in time; null where none of them has to be closed by a known hour. */
export function peopleFor(lines: readonly Timed[], workers: Workers): number | null {
  const limits = hourLimits(lines, workers);
  if (limits.length === 0) return null;
  const each = limits.map(({ untilH, hours }) => {
    const sum = hours.reduce((all, one) => all + one, 0);
    const person = Math.max(0, untilH - workers.setUpH) * workers.atWorkShare;
    return sum === 0 ? 0 : Math.ceil(sum / (person * UNITS_PER.hours) - NEAR_WHOLE);
  });
  return Math.max(...each);
}
