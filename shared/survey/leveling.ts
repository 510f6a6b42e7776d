import type { Plan, Survey } from "../plan.ts";

/** What a plan without any survey has. */
const NO_SURVEY: Survey = { benchmark: null, backsightM: null, readings: [] };

/** The survey of a plan; empty where nothing was typed. */
export function surveyOf({ survey }: Pick<Plan, "survey">): Survey {
  return survey ?? NO_SURVEY;
}

/**
 * Elevation of the level's line of sight: benchmark plus the rod reading on it. Null until both are typed.
 * Source: differential leveling as Ghilani and Wolf, Elementary Surveying, have it (HI = elevation + backsight).
 */
export function heightOfInstrumentM({ benchmark, backsightM }: Survey): number | null {
  return benchmark === null || backsightM === null ? null : benchmark.elevationM + backsightM;
}

/** Rod reading at which a mark has an elevation, and the elevation of where the rod reads so; the sum is the same. */
export function belowInstrument(instrument: number, value: number): number {
  return instrument - value;
}
