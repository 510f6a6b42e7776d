import type { Totals } from "./sizing-types.ts";

/** The bags to get for a line, and what they are for; whole counts. */
export interface BagOrder {
  /** All of them. */
  readonly total: number;
  /** Laid in the levee. */
  readonly placed: number;
  readonly spare: number;
  /** Those that weight the poly sheeting down. */
  readonly onPolySheeting: number;
}

/** What is ordered for a line or a reach: the bags of the levee with their spares, and those on the poly sheeting. */
export function bagOrder({
  bags,
  bagsPlaced,
  sheetBags,
}: Pick<Totals, "bags" | "bagsPlaced" | "sheetBags">): BagOrder {
  return {
    total: bags + sheetBags,
    placed: bagsPlaced,
    spare: bags - bagsPlaced,
    onPolySheeting: sheetBags,
  };
}
