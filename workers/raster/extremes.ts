/** A height at the low or the high end, how many cells hold it, and the raster in which it was met first. */
export interface Extreme {
  readonly heightM: number;
  cells: number;
  readonly source: number;
}

/** The lowest and the highest few different heights among cells, from the end inwards. */
export interface Extremes {
  readonly low: readonly Extreme[];
  readonly high: readonly Extreme[];
  /** Cells looked at, those without data too. */
  readonly cells: number;
  /** Looks at cells of one raster. */
  look(heightsM: Float32Array, from: number, to: number, source: number): void;
}

/** Different heights kept at either end. */
const KEPT = 6;

export function makeExtremes(): Extremes {
  const low: Extreme[] = [];
  const high: Extreme[] = [];
  let [lowLimit, highLimit] = [Infinity, -Infinity];
  let cells = 0;

  return {
    low,
    high,
    get cells() {
      return cells;
    },
    look(heightsM, from, to, source) {
      for (let i = from; i < to; i++) {
        const heightM = heightsM[i]!;
        if (heightM <= lowLimit) {
          put(low, heightM, source, 1);
          lowLimit = low.length < KEPT ? Infinity : low[KEPT - 1]!.heightM;
        }
        if (heightM >= highLimit) {
          put(high, heightM, source, -1);
          highLimit = high.length < KEPT ? -Infinity : high[KEPT - 1]!.heightM;
        }
      }
      cells += to - from;
    },
  };
}

/** @param sense 1 where lower heights come first, -1 where higher ones do */
function put(list: Extreme[], heightM: number, source: number, sense: 1 | -1): void {
  let at = 0;
  while (at < list.length && sense * list[at]!.heightM < sense * heightM) at++;
  const known = list[at];
  if (known?.heightM === heightM) {
    known.cells++;
    return;
  }
  list.splice(at, 0, { heightM, cells: 1, source });
  if (list.length > KEPT) list.pop();
}
