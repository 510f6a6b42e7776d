import type { Section } from "../plan.ts";
import { coursesFor } from "../quantities.ts";
import { formatLength, formatStation, type UnitSystem } from "../units.ts";
import { courseWords } from "./courses.ts";
import { unitsOf } from "./units.ts";

/** The heights of a levee at one place. */
export interface PlaceHeights {
  readonly chainageM: number;
  /** Top of levee less ground at the center line, metres; null where that ground is not known. */
  readonly heightM: number | null;
  /** Top of levee less the lowest ground under the base, metres; null where any of it is not known. */
  readonly greatestHeightM: number | null;
}

/** What a reach is built as: the bags of the plan's own section, or another type by its name. */
export type BuiltAs = Section | string;

/** Heights closer than this are said as one, metres: what the eye reads off is no finer. */
const SAME_HEIGHT_M = 0.03;

/** A station with its height, or why it has none: `4+18: 4.4 ft`; over a limit, as many decimals as tell it from that. */
export function stationWords(
  { chainageM, greatestHeightM }: PlaceHeights,
  system: UnitSystem,
  limitM = Number.POSITIVE_INFINITY,
): string {
  const station = formatStation(chainageM, system);
  if (greatestHeightM === null) return `${station}: no elevation data`;
  if (greatestHeightM <= 0) return `${station}: above top of levee`;
  return `${station}: ${unitsOf(system).lengthOver(greatestHeightM, limitM)}`;
}

/** Heights as they are read out: `station 4+81, height 4.3 ft, 13 courses`. */
export function spokenWords(at: PlaceHeights, built: BuiltAs, system: UnitSystem): string {
  return [`station ${formatStation(at.chainageM, system)}`, ...heights(at, built, system)].join(
    ", ",
  );
}

function heights(
  { heightM, greatestHeightM }: PlaceHeights,
  built: BuiltAs,
  system: UnitSystem,
): string[] {
  if (heightM === null) return ["no elevation data"];
  if (greatestHeightM === null) return ["ground under the base not known"];
  if (greatestHeightM <= 0) return ["ground above the top of levee"];
  const isBags = typeof built !== "string";
  const greatest = formatLength(greatestHeightM, system);
  const courses = isBags ? courseWords(coursesFor(heightM, built)) : null;
  if (greatestHeightM - heightM <= SAME_HEIGHT_M)
    return [`height ${greatest}`, courses ?? String(built)];
  const center = [formatLength(heightM, system), courses].filter(Boolean).join(" and ");
  return [`greatest height ${greatest}`, `${center} at center`, ...(isBags ? [] : [built])];
}
