import type { WriteRows } from "../../shared/exports/csv.ts";
import type { Exported, Named } from "../../shared/exports/exported.ts";
import { recordsCsv } from "../../shared/exports/records-csv.ts";
import { hourText } from "../../shared/time/clock.ts";
import type {
  BuildStep,
  ClosureTime,
  CrewPart,
  HoldStretch,
  LineTime,
} from "../../shared/time/types.ts";
import { formatStation, lengthIn, lengthUnit, type UnitSystem } from "../../shared/units.ts";
import { wayName } from "../../shared/words/closure-rows.ts";
import { LEFT_OPEN_SHORT } from "../../shared/words/closures.ts";
import { crewName, ON_HOLD, stepName } from "../../shared/words/crew-parts.ts";
import { mostSettlingFigure } from "../../shared/words/settling.ts";

/** The build sequence as CSV: crew by crew, times as the forecast writes them (ISO 8601), levels at the gauge. */
export function buildSequenceCsv(exported: Exported, time: LineTime, write?: WriteRows): string {
  const { system } = exported;
  const records = time.parts.flatMap((part): Named[] => [
    ...part.holds.map((hold) => holdRecord(part, hold, exported, time)),
    ...part.steps.map((step) => stepRecord(part, step, exported, time)),
  ]);
  const ways = time.closures.map((each, index) => wayRecord(each, index, exported, time));
  return recordsCsv(exported, "Step", head(system), [...records, ...ways], write);
}

function head(system: UnitSystem): string[] {
  const unit = lengthUnit(system);
  return [
    ...["crew", "step", "from", "to", `below_mark_${unit}`, "courses_fewest", "courses_most"],
    ...["bags", `lay_bags_higher_by_${unit}`, "first_bag", "done_slow", "done_fast", "needed_by"],
    ...[`needed_at_water_${unit}`, "early_h"],
    ...[`close_at_stage_${unit}`, "close_at", "people", "takes_slow_h"],
  ];
}

function stepRecord(part: CrewPart, step: BuildStep, { line, system }: Exported, time: LineTime) {
  const { fromM, toM, courses, earlyH } = step;
  const unit = lengthUnit(system);
  const hour = (hours: number | null) => hourCell(hours, time);
  const settling = mostSettlingFigure(line, Math.min(fromM, toM), Math.max(fromM, toM), system);
  return {
    crew: crewName(part),
    step: stepName(part, step.number),
    from: formatStation(fromM, system),
    to: formatStation(toM, system),
    [`below_mark_${unit}`]: length(step.belowM, system),
    courses_fewest: courses?.[0] ?? null,
    courses_most: courses?.[1] ?? null,
    bags: step.bags,
    [`lay_bags_higher_by_${unit}`]: fromM <= toM ? settling : null,
    first_bag: hour(step.startH),
    done_slow: hour(step.finishSlowH),
    done_fast: hour(step.finishFastH),
    needed_by: neededCell(step.neededH, time),
    [`needed_at_water_${unit}`]: length(step.neededM, system),
    early_h: earlyH === null ? null : Number(earlyH.toFixed(1)),
  };
}

/** What is not built: an engineer decides before the hour in `needed_by`. */
function holdRecord(part: CrewPart, hold: HoldStretch, { system }: Exported, time: LineTime) {
  return {
    crew: crewName(part),
    step: ON_HOLD,
    from: formatStation(hold.fromM, system),
    to: formatStation(hold.toM, system),
    bags: hold.bags,
    needed_by: neededCell(hold.decideH, time),
    [`needed_at_water_${lengthUnit(system)}`]: length(hold.decideM, system),
  };
}

/** A way left open: closed by its own people, from the stage or hour in `close_at_stage`, `close_at` on. */
function wayRecord(closure: ClosureTime, index: number, { system }: Exported, time: LineTime) {
  const { fromM, toM, bags, people, stageM, at, closeH, takesSlowH } = closure;
  const { neededM, neededH, earlyH } = closure;
  const unit = lengthUnit(system);
  const known = (hours: number | null) =>
    hours === null ? "not known" : hourText(time.startAt, hours);
  return {
    crew: LEFT_OPEN_SHORT,
    step: wayName(index),
    from: formatStation(fromM, system),
    to: formatStation(toM, system),
    bags,
    first_bag: known(closeH),
    done_slow: known(closeH === null || takesSlowH === null ? null : closeH + takesSlowH),
    needed_by: neededCell(neededH, time),
    [`needed_at_water_${unit}`]: neededM === null ? null : length(neededM, system),
    early_h: earlyH === null ? null : Number(earlyH.toFixed(1)),
    [`close_at_stage_${unit}`]: stageM === null ? null : length(stageM, system),
    close_at: at,
    people,
    takes_slow_h: takesSlowH === null ? null : Number(takesSlowH.toFixed(2)),
  };
}

function length(m: number, system: UnitSystem): number {
  return Number(lengthIn(m, system).toFixed(2));
}

function hourCell(hours: number | null, { startAt, missing }: LineTime): string {
  if (hours === null) return missing.length > 0 ? "not known" : "not within a year";
  return hourText(startAt, hours);
}

function neededCell(hours: number | null, { startAt, verdicts }: LineTime): string | null {
  if (hours !== null) return hourText(startAt, hours);
  return verdicts.length > 0 ? "not in the forecast" : null;
}
