import type { GroundSampler } from "../ground.ts";
import { isInside, type PlanePolygon } from "../plane-polygon.ts";

/** Ground inside an outline, as a basin filled from its lowest place up. */
export interface Basin {
  readonly lowestM: number;
  readonly lowestX: number;
  readonly lowestY: number;
  /** Area with ground data, and the share of the whole without, 0..1. */
  readonly areaM2: number;
  readonly holeShare: number;
  /** Ground heights, rising, each standing for `cellM2`. */
  readonly heightsM: Float64Array;
  readonly cellM2: number;
}

const MOST_SAMPLES = 20_000;

/**
 * Samples the ground inside an outline whose inner side is on its left (winding above 0, so that the small
 * loops of an inward offset at its corners fall away), without the areas of `without`. Null where there is
 * no ground inside. Hollows apart from one another count as one basin.
 * @param stepM sampling step, made coarser where it would need more than 20,000 samples
 */
export function basinInside(
  ground: GroundSampler,
  outline: PlanePolygon,
  without: readonly PlanePolygon[],
  stepM: number,
): Basin | null {
  const { minX, maxX, minY, maxY } = boundsOf(outline);
  const widest = Math.max(0, maxX - minX) * Math.max(0, maxY - minY);
  const step = Math.max(stepM, Math.sqrt(widest / MOST_SAMPLES));
  const rows = Math.max(1, Math.ceil((maxY - minY) / step));
  const stepX = (maxX - minX) / Math.max(1, Math.ceil((maxX - minX) / step));
  const stepY = (maxY - minY) / rows;
  const crossings = crossingsByRow(outline, minY, stepY, rows);
  const heights: number[] = [];
  let holes = 0;
  let lowest = { m: Number.POSITIVE_INFINITY, x: Number.NaN, y: Number.NaN };
  const take = (x: number, y: number) => {
    if (without.some((each) => isInside(each, x, y))) return;
    const m = ground.heightAt(x, y);
    if (Number.isNaN(m)) {
      holes++;
      return;
    }
    heights.push(m);
    if (m < lowest.m) lowest = { m, x, y };
  };
  for (let row = 0; row < rows; row++) {
    const y = minY + (row + 0.5) * stepY;
    for (const [fromX, toX] of insideSpans(crossings[row]!)) {
      const first = Math.ceil((fromX - minX) / stepX - 0.5);
      for (let x = minX + (first + 0.5) * stepX; x < toX; x += stepX) take(x, y);
    }
  }
  if (heights.length === 0) return null;
  return {
    lowestM: lowest.m,
    lowestX: lowest.x,
    lowestY: lowest.y,
    areaM2: heights.length * stepX * stepY,
    holeShare: holes / (holes + heights.length),
    heightsM: Float64Array.from(heights).sort(),
    cellM2: stepX * stepY,
  };
}

/** Water held below a level, m3. */
export function storedM3({ heightsM, cellM2 }: Basin, levelM: number): number {
  let sum = 0;
  for (const heightM of heightsM) {
    if (heightM >= levelM) break;
    sum += levelM - heightM;
  }
  return sum * cellM2;
}

/** Level at which a basin holds so much water, metres, as if its sides went on straight up. */
export function levelFor({ heightsM, cellM2 }: Basin, volumeM3: number): number {
  const depthSum = volumeM3 / cellM2;
  let groundSum = 0;
  for (let k = 0; k < heightsM.length; k++) {
    groundSum += heightsM[k]!;
    const levelM = (depthSum + groundSum) / (k + 1);
    if (k + 1 === heightsM.length || levelM <= heightsM[k + 1]!) return levelM;
  }
  return Number.NaN;
}

type Crossing = readonly [x: number, winding: number];

function crossingsByRow(
  { xM, yM }: PlanePolygon,
  minY: number,
  step: number,
  rows: number,
): Crossing[][] {
  const found: Crossing[][] = Array.from({ length: rows }, () => []);
  for (let i = 0; i < xM.length; i++) {
    const j = (i + 1) % xM.length;
    const fromY = yM[i]!;
    const toY = yM[j]!;
    if (fromY === toY) continue;
    const first = Math.max(0, Math.ceil((Math.min(fromY, toY) - minY) / step - 0.5));
    for (let row = first; row < rows; row++) {
      const y = minY + (row + 0.5) * step;
      if (y >= Math.max(fromY, toY)) break;
      const x = xM[i]! + ((y - fromY) / (toY - fromY)) * (xM[j]! - xM[i]!);
      found[row]!.push([x, toY < fromY ? 1 : -1]);
    }
  }
  return found;
}

function insideSpans(crossings: Crossing[]): [number, number][] {
  const spans: [number, number][] = [];
  let winding = 0;
  let startX = 0;
  for (const [x, turn] of crossings.sort((a, b) => a[0] - b[0])) {
    const before = winding;
    winding += turn;
    if (before <= 0 && winding > 0) startX = x;
    if (before > 0 && winding <= 0) spans.push([startX, x]);
  }
  return spans;
}

function boundsOf({ xM, yM }: PlanePolygon) {
  const least = (values: readonly number[]) => values.reduce((a, b) => Math.min(a, b), Infinity);
  const most = (values: readonly number[]) => values.reduce((a, b) => Math.max(a, b), -Infinity);
  return { minX: least(xM), maxX: most(xM), minY: least(yM), maxY: most(yM) };
}
