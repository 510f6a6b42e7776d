import type { Totals } from "../sizing-types.ts";

/** Why a line has no height to build anywhere. */
export function nothingBuiltWords(totals: Totals): string {
  if (totals.lengthNoDataM >= totals.lengthM) {
    return "No elevation data under this line: nothing can be counted. Open elevation data that covers it.";
  }
  if (totals.lengthNoDataM > 0) {
    return "Where there is elevation data, the ground is above the top of levee; the rest of the line cannot be counted.";
  }
  return "The ground is above the top of levee all along: nothing to build for this water.";
}
