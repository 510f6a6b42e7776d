import type { SurveyedGround } from "./surveyed-ground.ts";

/** Fewer readings say nothing of the whole survey. Source: judgement. */
const LEAST_READINGS = 3;
/** A mean difference that a rod does not show, metres (0.01 ft). */
const LEAST_M = 0.003;

/**
 * By how much the ground was read higher than the elevation data on average, metres; null where too few readings are
 * on the line or beside it, or where it is nothing.
 */
export function meanDifferenceM(surveyed: SurveyedGround | null | undefined): number | null {
  const readings = [...(surveyed?.readings ?? []), ...(surveyed?.beside ?? [])];
  if (readings.length < LEAST_READINGS) return null;
  const sumM = readings.reduce((sum, { readM, dataM }) => sum + readM - dataM, 0);
  const meanM = sumM / readings.length;
  return Math.abs(meanM) < LEAST_M ? null : meanM;
}
