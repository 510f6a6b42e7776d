import type { Strays } from "./strays.ts";

/** How stored numbers become heights. */
export interface HeightRule {
  /** The numbers (two at most) that mean "no data", as they read in the cells' own type. */
  readonly noData: readonly number[];
  readonly scale: number;
  readonly offset: number;
  readonly metresPerUnit: number;
  /** Takes what is on no ground and not declared; null where nobody looks. */
  readonly strays: Strays | null;
}

export type Samples =
  | Uint8Array
  | Int8Array
  | Uint16Array
  | Int16Array
  | Uint32Array
  | Int32Array
  | Float32Array
  | Float64Array;

/**
 * No ground lies outside these, metres (from memory: shore of the Dead Sea -440, Everest 8,849); what does
 * marks missing data, whether or not the file says so.
 */
const LOWEST_M = -500;
const HIGHEST_M = 9_000;

/** Marks in use where a file names none. Common practice, no source. */
const USUAL_MARKS = [-9999, -32768];

/**
 * Share by which a floating-point cell may differ from the mark and still be the mark: four times the step
 * of a 32-bit number. Source: GDAL 3.8, `ARE_REAL_EQUAL` (from memory); the reference tests ask GDAL itself.
 */
const MARK_ROUNDING = 4 * 2 ** -23;

interface Span {
  readonly from: number;
  readonly to: number;
}

/** The stored numbers that count as a mark. In whole-number cells its decimals do not count, as in GDAL. */
function spanOf(mark: number, stored: Samples): Span {
  const floats = stored instanceof Float32Array || stored instanceof Float64Array;
  if (!floats || !Number.isFinite(mark)) return { from: Math.trunc(mark), to: Math.trunc(mark) };
  const rounding = MARK_ROUNDING * Math.abs(mark);
  return { from: mark - rounding, to: mark + rounding };
}

/**
 * Turns stored numbers into metres, NaN where there is no data. This is the one place where no-data
 * becomes NaN.
 * @param stored cells with `stride` numbers each, of which number `first` is the height
 */
export function toHeights(
  stored: Samples,
  stride: number,
  first: number,
  rule: HeightRule,
  heightsM: Float32Array,
): void {
  const { noData, scale, offset, metresPerUnit, strays } = rule;
  const factor = scale * metresPerUnit;
  const shift = offset * metresPerUnit;
  const marks = noData.length === 0 ? USUAL_MARKS : noData;
  const one = spanOf(marks[0]!, stored);
  const other = spanOf(marks.at(-1)!, stored);
  for (let i = 0, at = first; i < heightsM.length; i++, at += stride) {
    const value = stored[at]!;
    const heightM = value * factor + shift;
    const isMark =
      (value >= one.from && value <= one.to) || (value >= other.from && value <= other.to);
    const isOnEarth = heightM > LOWEST_M && heightM < HIGHEST_M;
    heightsM[i] = isOnEarth && !isMark ? heightM : Number.NaN;
    if (!isOnEarth && !isMark) strays?.note(value);
  }
}
