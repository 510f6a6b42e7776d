import type { LonLat } from "./plan.ts";
import { badGeometry, type FilePlace } from "./plan-complaints.ts";
import { lonLatComplaint } from "./plan-schema.ts";
import { cameOf } from "./plan-text.ts";

/** Decimals of a degree in a plan: a tenth of a millimetre. */
const STEPS_PER_DEGREE = 1e9;

/** A GeoJSON geometry as found in a file, nothing about it proven. */
export interface FoundGeometry {
  readonly type: string;
  readonly coordinates: readonly unknown[];
}

/** A degree value rounded to nine decimals, never minus zero. */
export function rounded(degrees: number): number {
  return Math.round(degrees * STEPS_PER_DEGREE) / STEPS_PER_DEGREE + 0;
}

/**
 * A GeoJSON position as longitude and latitude; a third number (a height) is left out.
 * @throws Refusal `plan/bad-geometry`
 */
export function position(value: unknown, at: FilePlace): LonLat {
  const pair = Array.isArray(value) && value.length > 2 ? value.slice(0, 2) : value;
  const complaint = lonLatComplaint(pair);
  if (complaint !== null) throw badGeometry(at, complaint);
  const [lon, lat] = pair as [number, number];
  return [rounded(lon), rounded(lat)];
}

/**
 * Positions in order without neighbours at the same place; `closes` drops the repeated first corner too.
 * @throws Refusal `plan/bad-geometry`
 */
export function path(value: unknown, at: FilePlace, closes: boolean): LonLat[] {
  if (!Array.isArray(value)) {
    throw badGeometry(at, { is: "no-corners", came: cameOf(value) });
  }
  const all = value.map((item, index) => position(item, { ...at, corner: index + 1 }));
  const moved = all.filter((each, i) => i === 0 || !samePlace(each, all[i - 1] as LonLat));
  while (closes && moved.length > 1 && samePlace(moved[0] as LonLat, moved.at(-1) as LonLat)) {
    moved.pop();
  }
  return moved;
}

/** The parts of a geometry whose type is one of `single` or its Multi form; a plain one is its only part. */
export function partsOf(geometry: FoundGeometry): readonly unknown[] {
  return geometry.type.startsWith("Multi") ? geometry.coordinates : [geometry.coordinates];
}

/** True when an outline runs clockwise seen from above; false for one without area. Exact. */
export function isClockwise(outline: readonly LonLat[]): boolean {
  let twiceArea = 0n;
  const [first] = outline;
  if (!first) return false;
  const steps = outline.map((at) => [eastSteps(at[0], first[0]), northSteps(at[1])] as const);
  for (let i = 0; i < steps.length; i++) {
    const [xA, yA] = steps[i] as readonly [bigint, bigint];
    const [xB, yB] = steps[(i + 1) % steps.length] as readonly [bigint, bigint];
    twiceArea += xA * yB - xB * yA;
  }
  return twiceArea < 0n;
}

/** The same outline the other way round, starting at the same corner. */
export function turned(outline: readonly LonLat[]): LonLat[] {
  return [...outline.slice(0, 1), ...outline.slice(1).reverse()];
}

/** Whether two places are one, to the last digit. */
export function samePlace(a: LonLat, b: LonLat): boolean {
  return a[0] === b[0] && a[1] === b[1];
}

function northSteps(degrees: number): bigint {
  return BigInt(Math.round(degrees * STEPS_PER_DEGREE));
}

function eastSteps(degrees: number, fromDegrees: number): bigint {
  const circle = BigInt(360 * STEPS_PER_DEGREE);
  const east = (northSteps(degrees) - northSteps(fromDegrees)) % circle;
  if (east > circle / 2n) return east - circle;
  return east < -circle / 2n ? east + circle : east;
}
