import type { SizedLine } from "../../shared/sizing-types.ts";
import { formatLength, type UnitSystem } from "../../shared/units.ts";

/** Shorter than this is a rounding, metres. */
const A_STRETCH_M = 0.05;

/** How much of a line runs over ground that is not known, in words; null where all of it is known. */
export function gapLength(line: SizedLine | null, system: UnitSystem): string | null {
  const gapM = line?.totals.lengthNoDataM ?? 0;
  return gapM > A_STRETCH_M ? formatLength(gapM, system, 0) : null;
}

/** What is added to any promise of a line: `, but for 158 ft not known`; empty where all of its ground is known. */
export function butForGap(line: SizedLine | null, system: UnitSystem): string {
  const gap = gapLength(line, system);
  return gap === null ? "" : `, but for ${gap} not known`;
}
