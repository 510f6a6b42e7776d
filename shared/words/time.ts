import type { Plan } from "../plan.ts";
import { waterElevationAtGauge } from "../stage.ts";
import type { AheadVerdict, LineTime } from "../time/types.ts";
import { formatElevation, formatLength, formatStation, type UnitSystem } from "../units.ts";
import { hourWords } from "./clock.ts";
import { timeNotKnownWords } from "./crew.ts";

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

/** The verdict by which a line is judged: slow pace, likely forecast; null without a forecast or a crew. */
export function mainVerdict(time: LineTime): AheadVerdict | null {
  return verdictOf(time, "likely", "slow");
}

/** The verdict for a band and a pace; null where the forecast has no such band. */
export function verdictOf(
  { verdicts }: LineTime,
  band: AheadVerdict["band"],
  pace: AheadVerdict["pace"],
): AheadVerdict | null {
  return verdicts.find((each) => each.band === band && each.pace === pace) ?? null;
}

/** Whether there is time, in one sentence without a full stop. */
export function timeWords(time: LineTime, system: UnitSystem): string {
  if (time.missing.length > 0) return timeNotKnownWords(time.missing);
  const verdict = mainVerdict(time);
  if (!verdict) return `${doneAfter(time)}; no forecast yet`;
  if (isPartCounted(time)) {
    return `Not known whether there is time: part of the line has no elevation data; the rest takes ${doneAfter(time)}`;
  }
  if (verdict.ahead) return aheadWords(time, system);
  const opening = verdictOf(time, "likely", "fast")?.ahead
    ? "In time only at the fast pace; at the slow one"
    : "CANNOT be done in time:";
  return `${opening} ${behindWords(time, verdict, system)}`;
}

/** Whether what is counted keeps ahead and the rest is not counted: whether there is time is not known. */
export function isPartCounted(time: LineTime): boolean {
  return time.inTime === null && mainVerdict(time)?.ahead === true;
}

/** `behind from Wed 11:00, worst at 2+15`. */
export function behindWords(time: LineTime, verdict: AheadVerdict, system: UnitSystem): string {
  if (verdict.behindFromH === null) return "ahead";
  const at =
    verdict.behindAtM === null ? "" : `, worst at ${formatStation(verdict.behindAtM, system)}`;
  return `behind from ${hourWords(time.startAt, verdict.behindFromH, system)}${at}`;
}

/** `12 to 28 h`, breaks and nights included. */
export function doneAfter({ missing, finishFastH, finishSlowH }: LineTime): string {
  if (missing.length > 0) return "not known";
  const hours = elapsedHours({ finishFastH, finishSlowH });
  return hours === null ? "not laid within a year" : `${hours}, nights included`;
}

/** `27 to 49 h` from the start of work to the last bag, shifts and nights included; `…` while it is calculated. */
export function elapsedWords(time: LineTime | null | undefined): string {
  if (!time) return "…";
  if (time.missing.length > 0) return "hours not known";
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
