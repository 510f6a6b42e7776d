import type { LevelDoubt } from "../level-doubt.ts";
import type { CrewInput } from "./crew-inputs.ts";
import { endsBeforeTheWork, riseOverPlanM } from "./forecast-end.ts";
import type { AheadVerdict, LineTime } from "./types.ts";

/** Why it is not known whether a line is in time. */
export type TimeUnknown =
  | { readonly because: "counting" | "no-forecast" | "forecast-over" | "forecast-ends" }
  /** The forecast is by stage, and no gauge zero is given. */
  | { readonly because: "no-gauge-zero" }
  /** Part of the line has no elevation data, and the rest keeps ahead. */
  | { readonly because: "no-data" }
  /** Part of the line, or all, is over the height limit and on HOLD, and the rest keeps ahead. */
  | { readonly because: "on-hold"; readonly isAll: boolean }
  | { readonly because: "doubt"; readonly doubt: LevelDoubt }
  | { readonly because: "no-crew"; readonly missing: readonly CrewInput[] };

/** Whether a line is finished ahead of the water. "In time" is the slow pace against the likely forecast. */
export type TimeVerdict =
  | { readonly kind: "in-time" }
  /** By the likely forecast at both paces, at the slow pace alone, or by the high forecast alone. */
  | { readonly kind: "late" | "late-slow" | "late-if-high"; readonly behind: AheadVerdict }
  | { readonly kind: "over-a-year" }
  /** Ahead of the water, but sized for less than the likely forecast's crest, by so many metres. */
  | { readonly kind: "too-low"; readonly riseM: number }
  | ({ readonly kind: "not-known" } & TimeUnknown);

/** What a line's time is judged by. */
export interface TimedLine {
  readonly time?: LineTime | null;
  readonly levelDoubt?: LevelDoubt | null;
}

/** The verdict on a line's time, and nothing where what it needs is not given. */
export function timeVerdict({ time, levelDoubt }: TimedLine): TimeVerdict {
  if (levelDoubt) return { kind: "not-known", because: "doubt", doubt: levelDoubt };
  if (!time) return { kind: "not-known", because: "counting" };
  const { missing, forecastEndH, finishSlowH } = time;
  if (missing.length > 0) return { kind: "not-known", because: "no-crew", missing };
  if (isAllOnHold(time)) return { kind: "not-known", because: "on-hold", isAll: true };
  if (time.lacksGaugeZero) return { kind: "not-known", because: "no-gauge-zero" };
  const likely = verdictOf(time, "likely", "slow");
  if (!likely) {
    const because = forecastEndH === null ? "no-forecast" : "forecast-over";
    return { kind: "not-known", because };
  }
  if (!likely.ahead) {
    const isFastEnough = verdictOf(time, "likely", "fast")?.ahead === true;
    return { kind: isFastEnough ? "late-slow" : "late", behind: likely };
  }
  if (finishSlowH === null) return { kind: "over-a-year" };
  const riseM = riseOverPlanM(time);
  if (riseM > 0) return { kind: "too-low", riseM };
  const high = verdictOf(time, "high", "slow");
  if (high && !high.ahead) return { kind: "late-if-high", behind: high };
  if (time.bagsOnHold > 0) {
    return { kind: "not-known", because: "on-hold", isAll: false };
  }
  if (time.inTime === null) return { kind: "not-known", because: "no-data" };
  if (endsBeforeTheWork(time)) return { kind: "not-known", because: "forecast-ends" };
  return { kind: "in-time" };
}

/** True where nothing is to be laid before an engineer decides: no hour of the work is known. */
export function isAllOnHold({ bags, bagsOnHold }: Pick<LineTime, "bags" | "bagsOnHold">): boolean {
  return bags === 0 && bagsOnHold > 0;
}

/** True where the water of the likely forecast comes first. */
export function isLate({ kind }: TimeVerdict): boolean {
  return kind === "late" || kind === "late-slow" || kind === "over-a-year";
}

/** True where it is known, to the end of the work, that the water of the likely forecast does not come first. */
export function isSooner({ time }: TimedLine, { kind }: TimeVerdict): boolean {
  const isAhead = kind === "in-time" || kind === "late-if-high";
  return isAhead && time?.inTime === true && !endsBeforeTheWork(time);
}

/** The verdict for a band and a pace; null where there is none. */
export function verdictOf(
  { verdicts }: LineTime,
  band: AheadVerdict["band"],
  pace: AheadVerdict["pace"],
): AheadVerdict | null {
  return verdicts.find((each) => each.band === band && each.pace === pace) ?? null;
}
