import { moved, type Place } from "../../../shared/line-shapes/offset.ts";
import type { Walk } from "../../../shared/sizing-types.ts";

export { nearestChainage } from "../../../shared/line-shapes/nearest-chainage.ts";

/** A spot on a sized line. */
export interface Spot {
  readonly at: Place;
  /** Unit normal to the left of chainage, east and north. */
  readonly left: readonly [number, number];
  /** Distances to the toes, metres; 0 where nothing is built or ground is missing. */
  readonly toeLeftM: number;
  readonly toeRightM: number;
}

/** The spot at a chainage, held inside the line; null for a line without samples. */
export function spotAt(walk: Walk, chainageM: number): Spot | null {
  const count = walk.chainageM.length;
  if (count === 0) return null;
  const last = walk.chainageM[count - 1]!;
  const held = Math.min(last, Math.max(walk.chainageM[0]!, chainageM));
  const after = Math.max(1, firstAtOrAfter(walk.chainageM, held));
  const before = Math.min(after, count - 1) - 1;
  if (before < 0) return spotOf(walk, 0, 0, 0);
  const spanM = walk.chainageM[before + 1]! - walk.chainageM[before]!;
  const share = spanM > 0 ? (held - walk.chainageM[before]!) / spanM : 0;
  return spotOf(walk, before, before + 1, share);
}

function spotOf(walk: Walk, a: number, b: number, share: number): Spot {
  const mix = (values: Float64Array, i: number, j: number) =>
    values[i]! + (values[j]! - values[i]!) * share;
  const near = share < 0.5 ? a : b;
  return {
    at: [mix(walk.lonLat, 2 * a, 2 * b), mix(walk.lonLat, 2 * a + 1, 2 * b + 1)],
    left: [walk.leftNormal[2 * near]!, walk.leftNormal[2 * near + 1]!],
    toeLeftM: mix(walk.toeLeftM, a, b) || 0,
    toeRightM: mix(walk.toeRightM, a, b) || 0,
  };
}

function firstAtOrAfter(values: Float64Array, wanted: number): number {
  let low = 0;
  let high = values.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (values[middle]! < wanted) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The part of a line between two chainages, as places; the order of the two is kept. */
export function stretch(walk: Walk, fromM: number, toM: number): Place[] {
  const start = spotAt(walk, fromM);
  const end = spotAt(walk, toM);
  if (!start || !end) return [];
  const between: Place[] = [];
  for (let i = 0; i < walk.chainageM.length; i++) {
    const chainageM = walk.chainageM[i]!;
    if (chainageM <= fromM || chainageM >= toM) continue;
    between.push([walk.lonLat[2 * i]!, walk.lonLat[2 * i + 1]!]);
  }
  return [start.at, ...between, end.at];
}

/** A place so many metres to the left of a spot (to the right when negative). */
export function beside(spot: Spot, leftM: number): Place {
  return moved(spot.at, spot.left[0] * leftM, spot.left[1] * leftM);
}
