import type { PlaneLine } from "../alignment.ts";
import type { CutWalk } from "../cut-walk.ts";
import type { GroundSampler } from "../ground.ts";
import type { LineSamples } from "../line-samples.ts";
import type { Plan } from "../plan.ts";
import type { PlanPlane } from "../plan-plane.ts";
import { isInside, type PlanePolygon, planePolygon } from "../plane-polygon.ts";
import { stepFor } from "../section.ts";
import { type Basin, basinInside, storedM3 } from "./basin.ts";
import type { Inside } from "./types.ts";

const STORAGE_LEVELS = 20;

/** What lies inside a ring: its basin, and what of it is told. */
export interface InsideFound {
  readonly basin: Basin;
  readonly inside: Inside;
}

export interface InsideInputs {
  readonly plan: Plan;
  readonly line: PlaneLine;
  readonly plane: PlanPlane;
  readonly samples: LineSamples;
  readonly cuts: CutWalk;
  readonly ground: GroundSampler;
  readonly waterSide: 1 | -1;
  /** Lowest water surface outside, metres: the inside does not fill beyond it. */
  readonly waterM: number;
}

/**
 * The lowest place, the storage and the level at which a structure gets wet, inside the landside toes of a
 * ring. Structures store no water. Null for a line, and where there is no ground inside.
 */
export function lookInside(inputs: InsideInputs): InsideFound | null {
  const { plan, line, plane, ground, waterM } = inputs;
  if (!line.closed) return null;
  const ring: PlanePolygon = { xM: Array.from(line.xM), yM: Array.from(line.yM) };
  const structures = plan.structures
    .map((each) => ({ floorM: each.floorM, outline: planePolygon(each.outline, plane) }))
    .filter(({ outline }) => isInside(ring, mean(outline.xM), mean(outline.yM)));
  const walls = structures.map(({ outline }) => outline);
  const basin = basinInside(ground, toeOutline(inputs), walls, stepFor(ground));
  if (!basin) return null;
  const wet = structures
    .map(({ floorM, outline }) => wetLevel(floorM, outline, ground))
    .filter((level) => level !== null)
    .sort((a, b) => a.levelM - b.levelM)[0];
  const { lowestX, lowestY, lowestM, areaM2, holeShare } = basin;
  return {
    basin,
    inside: {
      lowestM,
      lowestAt: plane.toLonLat(lowestX, lowestY),
      areaM2,
      holeShare,
      storage: storageUpTo(basin, waterM),
      structureM: wet?.levelM ?? null,
      structureBy: wet?.by ?? null,
    },
  };
}

/** The landside toes in order, counter-clockwise. */
function toeOutline({ samples, cuts, waterSide }: InsideInputs): PlanePolygon {
  const left = waterSide === -1;
  const toeM = left ? cuts.toeLeftM : cuts.toeRightM;
  const xM: number[] = [];
  const yM: number[] = [];
  for (let k = 0; k < samples.count; k++) {
    const i = left ? k : samples.count - 1 - k;
    const inwardM = (toeM[i]! || 0) * (left ? 1 : -1);
    xM.push(samples.xM[i]! + samples.leftNormal[2 * i]! * inwardM);
    yM.push(samples.yM[i]! + samples.leftNormal[2 * i + 1]! * inwardM);
  }
  return { xM, yM };
}

function storageUpTo(basin: Basin, waterM: number): { levelM: number; volumeM3: number }[] {
  const riseM = (waterM - basin.lowestM) / STORAGE_LEVELS;
  if (!(riseM > 0)) return [];
  return Array.from({ length: STORAGE_LEVELS + 1 }, (_, k) => {
    const levelM = basin.lowestM + k * riseM;
    return { levelM, volumeM3: storedM3(basin, levelM) };
  });
}

/** A structure is wet when water stands at its walls and, where the floor is known, as high as the floor. */
function wetLevel(floorM: number | null, outline: PlanePolygon, ground: GroundSampler) {
  const wallM = lowestAtWalls(outline, ground);
  if (floorM !== null && !(floorM < wallM)) return { levelM: floorM, by: "floor" as const };
  return Number.isFinite(wallM) ? { levelM: wallM, by: "ground" as const } : null;
}

function lowestAtWalls({ xM, yM }: PlanePolygon, ground: GroundSampler): number {
  let lowestM = Number.POSITIVE_INFINITY;
  for (let i = 0; i < xM.length; i++) {
    const j = (i + 1) % xM.length;
    const lengthM = Math.hypot(xM[j]! - xM[i]!, yM[j]! - yM[i]!);
    const steps = Math.max(1, Math.ceil(lengthM / stepFor(ground)));
    for (let k = 0; k < steps; k++) {
      const share = k / steps;
      const x = xM[i]! + (xM[j]! - xM[i]!) * share;
      const heightM = ground.heightAt(x, yM[i]! + (yM[j]! - yM[i]!) * share);
      if (heightM < lowestM) lowestM = heightM;
    }
  }
  return lowestM;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
