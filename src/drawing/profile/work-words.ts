import { FOOT_M } from "../../../shared/constants.ts";
import type { LineTime, WorkStretch } from "../../../shared/time/types.ts";
import {
  formatCount,
  formatHours,
  formatLength,
  formatStation,
  type UnitSystem,
} from "../../../shared/units.ts";
import { hourWords } from "../../../shared/words/clock.ts";
import { stepNames } from "../../../shared/words/crew-parts.ts";

/** How a stretch of work comes out against the likely forecast; `plain` without one. */
export type WorkTone = "before" | "tight" | "behind" | "plain";

/** Finished less than this before its ground gets wet is tight, hours. Judgement. */
const TIGHT_H = 2;
const SLACK_M = 1e-6;
/** Water nearer to the top than this is at it, metres: 0.01 ft. */
const AT_TOP_M = 0.01 * FOOT_M;
/** Less than this is not told as a figure, metres: 0.1 ft. */
const LEAST_TOLD_M = 0.1 * FOOT_M;

/** `behind` is what the check of time counts: less crest above the water than is asked, at some hour. */
export function workTone({ finishH, wetH, leastSpareM }: WorkStretch): WorkTone {
  if (leastSpareM === null) return "plain";
  if (leastSpareM < -SLACK_M) return "behind";
  if (wetH === null) return "before";
  return finishH === null || finishH > wetH - TIGHT_H ? "tight" : "before";
}

/** True where water comes to the top of what is built of a stretch before it is done. */
export function isOvertopped({ leastAheadM }: WorkStretch): boolean {
  return leastAheadM !== null && leastAheadM < AT_TOP_M;
}

/** The stretch of work at a chainage; null where nothing is built, and while nothing is calculated. */
export function workAt(time: LineTime | null, chainageM: number): WorkStretch | null {
  return (
    time?.stretches.find(({ fromM, toM }) => chainageM >= fromM && chainageM <= toM + 1e-6) ?? null
  );
}

/** How much of a stretch is done at an hour after the start, 0..1, as if its crew worked on it evenly. */
export function doneShare({ startH, finishH }: WorkStretch, hour: number): number {
  if (startH === null || hour <= startH) return 0;
  if (finishH === null) return 0;
  return finishH > startH ? Math.min(1, (hour - startH) / (finishH - startH)) : 1;
}

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
  return shortM < LEAST_TOLD_M
    ? `less than ${formatLength(LEAST_TOLD_M, system)}`
    : formatLength(shortM, system);
}
