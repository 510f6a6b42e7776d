import type { Alignment, Survey } from "../../../shared/plan.ts";
import { surveyOf } from "../../../shared/survey/leveling.ts";
import type { StationReading } from "../../../shared/survey/parse-readings.ts";
import { withReadings } from "../../../shared/survey/placed-readings.ts";
import { edit } from "./alternatives.ts";

/** Changes the benchmark or the backsight. @returns whether the plan took it */
export function setLeveling(
  note: string,
  change: Partial<Pick<Survey, "benchmark" | "backsightM">>,
): boolean {
  return edit({ note, change: (now) => ({ ...now, survey: { ...surveyOf(now), ...change } }) });
}

/** Takes ground read at stations of a line, one step. @returns whether the plan took it */
export function takeReadings(alignment: Alignment, readings: readonly StationReading[]): boolean {
  return edit({
    note: "Take ground readings",
    change: (now) => withReadings(now, alignment, readings),
  });
}

/** Takes all ground readings out: the ground is the elevation data's again. */
export function removeReadings(): void {
  edit({
    note: "Remove the ground readings",
    change: (now) => ({ ...now, survey: { ...surveyOf(now), readings: [] } }),
  });
}
