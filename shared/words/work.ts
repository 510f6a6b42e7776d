import { FOOT_M } from "../constants.ts";
import type { HourRow, LineTime, WorkStretch } from "../time/types.ts";
import { type WorkTone, workTone } from "../time/work-tone.ts";
import {
  formatCount,
  formatHours,
  formatLength,
  formatStation,
  type UnitSystem,
} from "../units.ts";
import { hourWords } from "./clock.ts";
import { stepNames } from "./crew-parts.ts";

/** Less than this is not given as a figure, meters: 0.1 ft. */
const LEAST_SHOWN_M = 0.1 * FOOT_M;

/** Everything about a stretch of work, as a tip: which steps, where, how much, when, and whether that is in time. */
export function workWords(stretch: WorkStretch, time: LineTime, system: UnitSystem): string {
  const { fromM, toM, bags, startH, finishH, isOnHold, steps } = stretch;
  const { startAt } = time;
  const place = `${formatStation(fromM, system)} to ${formatStation(toM, system)}`;
  const many = `${formatCount(Math.round(bags))} bags`;
  if (isOnHold) {
    return `On HOLD, over the height limit: ${place}, ${many}. Not built before an engineer decides. ${verdictWords(stretch, startAt, system)}`.trim();
  }
  const hours =
    startH === null || finishH === null
      ? time.missing.length > 0
        ? "hours not known"
        : "not finished within a year"
      : `from ${hourWords(startAt, startH, system)} to ${hourWords(startAt, finishH, system)}`;
  const names = stepNames(stretch, time).join(", ");
  return `Step${steps.length === 1 ? "" : "s"} ${names}: ${place}, ${many}, ${hours}. ${verdictWords(stretch, startAt, system)}`.trim();
}

/** The same in a few words, for the marked station: "N2, N4, done 15.2 h before wet". */
export function shortWorkWords(stretch: WorkStretch, time: LineTime): string {
  if (stretch.isOnHold) return "on HOLD, not built";
  const built = stepNames(stretch, time).join(", ");
  const { finishH, wetH } = stretch;
  const tone = workTone(stretch);
  if (tone === "behind") return `${built}, behind the water`;
  if (finishH === null) return built;
  if (tone === "plain") return `${built}, done after ${formatHours(finishH)}`;
  if (wetH === null) return `${built}, not reached`;
  return finishH <= wetH
    ? `${built}, done ${formatHours(wetH - finishH)} before wet`
    : `${built}, with water against it`;
}

/** How the whole build sequence comes out, for those who listen: "9 stretches: 7 in time, 1 tight, 1 behind". */
export function scheduleWords({ stretches }: LineTime): string {
  const built = stretches.filter(({ isOnHold }) => !isOnHold);
  const count = (tone: WorkTone) => built.filter((each) => workTone(each) === tone).length;
  const said = (
    [
      ["before", "finished before their ground gets wet"],
      ["tight", "tight"],
      ["behind", "behind the water"],
    ] as const
  )
    .map(([tone, words]) => [count(tone), words] as const)
    .filter(([n]) => n > 0)
    .map(([n, words]) => `${n} ${words}`);
  const onHold = stretches.length - built.length;
  if (onHold > 0) said.push(`${onHold} on HOLD`);
  const all = stretches.length === 1 ? "1 stretch" : `${stretches.length} stretches`;
  return said.length > 0 ? `${all} of work: ${said.join(", ")}` : `${all} of work`;
}

function verdictWords(stretch: WorkStretch, startAt: string | null, system: UnitSystem): string {
  const { finishH, wetH, leastSpareM } = stretch;
  const tone = workTone(stretch);
  if (stretch.isOnHold) {
    return wetH === null ? "" : `Its ground gets wet ${hourWords(startAt, wetH, system)}.`;
  }
  if (tone === "plain") return "";
  if (tone === "behind") {
    return `Behind the water: at worst ${shortWords(-leastSpareM!, system)} short of the top of levee required.`;
  }
  if (wetH === null) return "Its ground not reached in the likely forecast.";
  const wet = `Its ground gets wet ${hourWords(startAt, wetH, system)}`;
  if (finishH === null) return `${wet}.`;
  if (finishH <= wetH) return `${wet}: finished ${formatHours(wetH - finishH)} before.`;
  return `${wet}: built with water against it; its top stays above the water.`;
}

function shortWords(shortM: number, system: UnitSystem): string {
  return shortM < LEAST_SHOWN_M
    ? `less than ${formatLength(LEAST_SHOWN_M, system)}`
    : formatLength(shortM, system);
}

interface AtHour {
  readonly hour: number;
  /** All that the line takes. */
  readonly bags: number;
  readonly startAt: string | null;
  readonly stands: boolean;
}

/**
 * How far the work is at an hour after the start, and how far above the water.
 * @param stands whether the line is above the water all along at that hour
 */
export function workAtHour(
  { bagsLaid, leastAheadM }: HourRow,
  { hour, bags, startAt, stands }: AtHour,
  system: UnitSystem,
): string {
  if (hour < 0) return `Work starts ${hourWords(startAt, 0, system)}.`;
  const laid =
    bagsLaid >= bags
      ? "All bags are laid"
      : `${formatCount(bagsLaid)} of ${formatCount(bags)} bags are laid`;
  if (leastAheadM === null) return `${laid}.`;
  if (!stands) {
    return `${laid}: the line is ${formatLength(-leastAheadM, system)} lower than the water at its lowest place, so the map shows the water without it.`;
  }
  return `${laid}; the lowest place is ${formatLength(leastAheadM, system)} above the water.`;
}
