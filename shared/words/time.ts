import type { Plan } from "../plan.ts";
import { waterElevationAtGauge } from "../stage.ts";
import {
  isAllOnHold,
  type TimedLine,
  type TimeUnknown,
  type TimeVerdict,
  timeVerdict,
} from "../time/time-verdict.ts";
import type { AheadVerdict, LineTime } from "../time/types.ts";
import { formatElevation, formatLength, formatStation, type UnitSystem } from "../units.ts";
import { capital } from "./capital.ts";
import { hourWords } from "./clock.ts";
import { crewInputWords } from "./crew.ts";
import { timeVerdictWords } from "./time-verdict.ts";

/** Water at the gauge as the plan gives it: the stage of an elevation, or the elevation itself; metres. */
export function shownLevelM({ water }: Plan, elevationM: number): number {
  if (water.by === "elevation") return elevationM;
  return water.stageM + elevationM - waterElevationAtGauge(water);
}

/** `31.0 ft` where the plan gives water by stage, else an elevation. */
export function levelWords(plan: Plan, elevationM: number, system: UnitSystem): string {
  const levelM = shownLevelM(plan, elevationM);
  return plan.water.by === "stage" ? formatLength(levelM, system) : formatElevation(levelM, system);
}

/** `stage 31.0 ft` or `water 873.93 ft`. */
export function namedLevel(plan: Plan, elevationM: number, system: UnitSystem): string {
  const name = plan.water.by === "stage" ? "stage" : "water";
  return `${name} ${levelWords(plan, elevationM, system)}`;
}

/** Whether there is time, with what it rests on, in one sentence without a full stop. */
export function timeWords(line: TimedLine, system: UnitSystem): string {
  const verdict = timeVerdict(line);
  const said = capital(timeVerdictWords(verdict, system));
  const why = line.time ? whyWords(verdict, line.time, system) : "";
  const joint = verdict.kind === "not-known" ? ";" : ":";
  return why === "" ? said : `${said}${joint} ${why}`;
}

/** What a verdict on time rests on; empty where its own words say all. */
export function whyWords(verdict: TimeVerdict, time: LineTime, system: UnitSystem): string {
  switch (verdict.kind) {
    case "in-time":
      return aheadWords(time, system);
    case "late":
    case "late-slow":
    case "late-if-high":
      return behindWords(time, verdict.behind, system);
    case "over-a-year":
      return "";
    case "too-low":
      return `up to the sized-for level ${aheadWords(time, system)}`;
    case "not-known":
      return whyNotKnown(verdict, time);
  }
}

function whyNotKnown(unknown: TimeUnknown, time: LineTime): string {
  switch (unknown.because) {
    case "no-crew":
      return `type ${crewInputWords(unknown.missing)}`;
    case "counting":
    case "doubt":
      return "";
    case "on-hold":
      return unknown.isAll ? "" : `the rest takes ${doneAfter(time)}`;
    case "no-forecast":
    case "no-gauge-zero":
    case "forecast-over":
    case "forecast-ends":
    case "no-data":
      return `the work takes ${doneAfter(time)}`;
  }
}

/** `behind from Wed 11:00, worst at 2+15`. */
function behindWords(time: LineTime, verdict: AheadVerdict, system: UnitSystem): string {
  if (verdict.behindFromH === null) return "ahead";
  const at =
    verdict.behindAtM === null ? "" : `, worst at ${formatStation(verdict.behindAtM, system)}`;
  return `behind from ${hourWords(time.startAt, verdict.behindFromH, system)}${at}`;
}

/** `12 to 28 h`, breaks and nights included. */
export function doneAfter(time: LineTime): string {
  const { missing, finishFastH, finishSlowH } = time;
  if (missing.length > 0 || isAllOnHold(time)) return "not known";
  const hours = elapsedHours({ finishFastH, finishSlowH });
  return hours === null ? "not laid within a year" : `${hours}, nights included`;
}

/** `27 to 49 h` from the start of work to the last bag, shifts and nights included; `…` while it is calculated. */
export function elapsedWords(time: LineTime | null | undefined): string {
  if (!time) return "…";
  if (time.missing.length > 0 || isAllOnHold(time)) return "hours not known";
  return elapsedHours(time) ?? "over a year";
}

function elapsedHours({
  finishFastH,
  finishSlowH,
}: Pick<LineTime, "finishFastH" | "finishSlowH">): string | null {
  if (finishSlowH === null || finishFastH === null) return null;
  const [fast, slow] = [Math.round(finishFastH), Math.round(finishSlowH)];
  return fast === slow ? `${slow} h` : `${fast} to ${slow} h`;
}

function aheadWords(
  { startAt, finishSlowH, firstWetH, forecastEndH }: LineTime,
  system: UnitSystem,
): string {
  if (finishSlowH === null) return "ahead, but not laid within a year";
  const done = hourWords(startAt, finishSlowH, system);
  if (forecastEndH !== null && finishSlowH > forecastEndH) {
    return `ahead while the forecast lasts, done only after it, ${done}`;
  }
  if (firstWetH === null) return `done ${done}; the forecast does not reach the line`;
  const spareH = Math.floor(firstWetH - finishSlowH);
  return spareH >= 1 ? `done ${spareH} h before the water` : `ahead of the water, done ${done}`;
}
