import type { Check, SizedLine, Totals } from "./sizing-types.ts";

/** A stretch shorter than this is a rounding, metres. */
export const A_STRETCH_M = 0.05;

/** How much of a line its totals are for. */
export type Extent = Pick<Totals, "lengthM" | "lengthNoDataM">;

/** Whether there is elevation data under all of a line, so that its totals are for its whole length. */
export function isComplete({ lengthNoDataM }: Extent): boolean {
  return !(lengthNoDataM > 0);
}

/** Whether there is elevation data under any of a line. */
export function hasAnyData({ lengthM, lengthNoDataM }: Extent): boolean {
  return lengthNoDataM < lengthM;
}

/** Checks as they are listed: the two halves of a stretch that runs over a ring's closing point are one. */
export function listedOnce(checks: readonly Check[]): Check[] {
  return checks.filter(({ continued }) => !continued);
}

/** How many things must be fixed before a line may be built. */
export function mustFixCount(checks: readonly Check[]): number {
  return listedOnce(checks).filter(({ severity }) => severity === "stop").length;
}

/** A sized line, or what its totals are judged by. */
type Counted = Pick<SizedLine, "totals"> & Partial<Pick<SizedLine, "levelDoubt">>;

/** Whether its totals answer anything: there is data under some of it, and the water belongs to the ground. */
export function isCounted({ totals, levelDoubt }: Counted): boolean {
  return hasAnyData(totals) && !levelDoubt?.countsUnknown;
}

/** Whether its totals are for all of it, so that they may be compared with another line's. */
export function isWhole(line: Counted): boolean {
  return isCounted(line) && isComplete(line.totals);
}

/** Whether a line may be called the least, the best or the cheapest: all of it is counted, nothing must be fixed. */
export function mayBeBest(line: Counted, mustFix: number): boolean {
  return isWhole(line) && mustFix === 0;
}
