import type { Walk } from "../../../shared/sizing-types.ts";

/** Index of the first chainage that is not below `chainageM`; the length of the array when all are. */
export function firstFrom(chainages: Float64Array, chainageM: number): number {
  let low = 0;
  let high = chainages.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (chainages[middle]! < chainageM) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Index of the sample nearest to a chainage; -1 for an empty walk. */
export function nearestSample(chainages: Float64Array, chainageM: number): number {
  const after = firstFrom(chainages, chainageM);
  if (after === 0) return chainages.length - 1 < 0 ? -1 : 0;
  if (after === chainages.length) return after - 1;
  return chainageM - chainages[after - 1]! <= chainages[after]! - chainageM ? after - 1 : after;
}

/**
 * Indices of the samples worth drawing between two chainages on so many columns of pixels, in order.
 * Every column keeps its first and last sample, its lowest and highest ground, its greatest height and the
 * edges of a hole, so that neither a narrow ditch nor a narrow gap in the data is lost. One sample beyond
 * each end is kept so that lines run to the edge.
 */
export function pickSamples(walk: Walk, fromM: number, toM: number, columns: number): number[] {
  const { chainageM } = walk;
  const first = Math.max(0, firstFrom(chainageM, fromM) - 1);
  const last = Math.min(chainageM.length - 1, firstFrom(chainageM, toM) + 1);
  const count = last - first + 1;
  if (count <= 2 * columns) return Array.from({ length: Math.max(0, count) }, (_, i) => first + i);
  const columnM = (toM - fromM) / columns;
  const picked: number[] = [];
  let start = first;
  while (start <= last) {
    const column = Math.floor((chainageM[start]! - fromM) / columnM);
    let end = start;
    while (end < last && Math.floor((chainageM[end + 1]! - fromM) / columnM) === column) end++;
    picked.push(...tellingSamples(walk, start, end));
    start = end + 1;
  }
  return picked;
}

function tellingSamples(walk: Walk, start: number, end: number): number[] {
  const kept = new Set([start, end]);
  let lowest = -1;
  let highest = -1;
  let tallest = -1;
  for (let i = start; i <= end; i++) {
    const hole = isHole(walk, i);
    if (i > start && hole !== isHole(walk, i - 1)) kept.add(i - 1).add(i);
    if (!hole && (lowest < 0 || walk.groundM[i]! < walk.groundM[lowest]!)) lowest = i;
    if (!hole && (highest < 0 || walk.groundM[i]! > walk.groundM[highest]!)) highest = i;
    const tall = walk.greatestHeightM[i]!;
    if (!Number.isNaN(tall) && (tallest < 0 || tall > walk.greatestHeightM[tallest]!)) tallest = i;
  }
  for (const index of [lowest, highest, tallest]) if (index >= 0) kept.add(index);
  return [...kept].sort((a, b) => a - b);
}

function isHole(walk: Walk, index: number): boolean {
  return Number.isNaN(walk.groundM[index]!);
}
