/** How stored numbers become heights. */
export interface HeightRule {
  /** The numbers (two at most) that mean "no data", as they read in the cells' own type. */
  readonly noData: readonly number[];
  readonly scale: number;
  readonly offset: number;
  readonly metresPerUnit: number;
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
 * No ground on Earth lies outside these, metres (from memory: Challenger Deep -10,935, Everest 8,849);
 * what does is a marker for missing data that the file does not name.
 */
const LOWEST_M = -12_000;
const HIGHEST_M = 9_000;

/** Markers in use where a file names none. Common practice, no source. */
const USUAL_MARKERS = [-9999, -32768];

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
  const { noData, scale, offset, metresPerUnit } = rule;
  const factor = scale * metresPerUnit;
  const shift = offset * metresPerUnit;
  const markers = noData.length === 0 ? USUAL_MARKERS : noData;
  const [m0, m1] = [markers[0]!, markers.at(-1)!];
  for (let i = 0, at = first; i < heightsM.length; i++, at += stride) {
    const value = stored[at]!;
    const heightM = value * factor + shift;
    const isData = value !== m0 && value !== m1 && heightM >= LOWEST_M && heightM <= HIGHEST_M;
    heightsM[i] = isData ? heightM : Number.NaN;
  }
}
