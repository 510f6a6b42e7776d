import { type Extent, hasAnyData, isComplete } from "../completeness.ts";
import type { Totals } from "../sizing-types.ts";
import { formatCount, lengthIn, lengthUnit, type UnitSystem } from "../units.ts";

const MOST_DIGITS = 2;

/** How much of a line is counted: `820`, `1,135 ft`, `315 ft`; the last is the difference of the two as written. */
interface Shares {
  readonly counted: string;
  readonly all: string;
  readonly missing: string;
}

/** Whole feet or metres, with decimals only where the missing length would otherwise read as 0. */
function sharesOf({ lengthM, lengthNoDataM }: Extent, system: UnitSystem): Shares {
  const all = lengthIn(lengthM, system);
  const missing = lengthIn(lengthNoDataM, system);
  let digits = 0;
  while (digits < MOST_DIGITS && Number(missing.toFixed(digits)) === 0) digits++;
  const write = (value: number) =>
    value.toLocaleString("en-US", { minimumFractionDigits: digits, maximumFractionDigits: digits });
  const unit = lengthUnit(system);
  const [wholeAll, wholeMissing] = [all, missing].map((value) => Number(value.toFixed(digits)));
  return {
    counted: write(wholeAll! - wholeMissing!),
    all: `${write(wholeAll!)} ${unit}`,
    missing: `${write(wholeMissing!)} ${unit}`,
  };
}

/** What follows a number of bags: `bags for 820 of 1,135 ft; 315 ft have no elevation data`. */
export function besideBagsWords(extent: Extent, system: UnitSystem): string {
  if (!hasAnyData(extent)) return `bags: ${missingWords(extent, system)}`;
  if (isComplete(extent)) return "bags";
  return `bags for ${countedWords(extent, system)}`;
}

/** `11,204 bags for 820 of 1,135 ft`. */
export function bagsForWords(totals: Extent & Pick<Totals, "bags">, system: UnitSystem): string {
  const { counted, all } = sharesOf(totals, system);
  const bags = `${formatCount(totals.bags)} bags`;
  return isComplete(totals) ? bags : `${bags} for ${counted} of ${all}`;
}

/** `820 of 1,135 ft; 315 ft have no elevation data`. */
export function countedWords(extent: Extent, system: UnitSystem): string {
  const { counted, all } = sharesOf(extent, system);
  return `${counted} of ${all}; ${missingWords(extent, system)}`;
}

/** `315 ft have no elevation data`; of a line without any, `no elevation data under any of its 1,135 ft`. */
export function missingWords(extent: Extent, system: UnitSystem): string {
  const { missing, all } = sharesOf(extent, system);
  return hasAnyData(extent)
    ? `${missing} have no elevation data`
    : `no elevation data under any of its ${all}`;
}

/** In the place of the bags of a line whose figures are no answer. */
export const BAGS_NOT_KNOWN = "bags not known";

/** `11,204 bags`, and where not all of the line is counted for how much of it; nothing is counted without data. */
export function bagsWords(totals: Extent & Pick<Totals, "bags">, system: UnitSystem): string {
  if (!hasAnyData(totals)) return `not known: ${missingWords(totals, system)}`;
  const bags = bagsForWords(totals, system);
  return isComplete(totals) ? bags : `${bags}; ${missingWords(totals, system)}`;
}
