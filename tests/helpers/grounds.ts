import { EMPTY_PLAN } from "../../shared/defaults.ts";
import type { GroundSampler } from "../../shared/ground.ts";
import type { Alignment, LonLat, Plan, Structure } from "../../shared/plan.ts";
import { type PlanPlane, planPlane } from "../../shared/plan-plane.ts";
import { sizeLine } from "../../shared/size-line.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";

/** Grounds by formula, and plans on the plan plane in metres, for tests. */
export const PLANE: PlanPlane = planPlane([-96.78, 46.88]);

export function groundOf(heightAt: (xM: number, yM: number) => number, cellM = 1): GroundSampler {
  return { heightAt, cellM };
}

export function flat(elevationM: number, cellM = 1): GroundSampler {
  return groundOf(() => elevationM, cellM);
}

export type Corner = readonly [xM: number, yM: number];

export function lonLats(corners: readonly Corner[]): LonLat[] {
  return corners.map(([x, y]) => PLANE.toLonLat(x, y));
}

export function ring(corners: readonly Corner[], breaksM: readonly number[] = []): Alignment {
  return { id: "a", name: "A", kind: "ring", corners: lonLats(corners), reachBreaksM: breaksM };
}

export function openLine(corners: readonly Corner[], breaksM: readonly number[] = []): Alignment {
  return { id: "a", name: "A", kind: "line", corners: lonLats(corners), reachBreaksM: breaksM };
}

export function rectangle(halfX: number, halfY: number): Corner[] {
  return [
    [-halfX, -halfY],
    [halfX, -halfY],
    [halfX, halfY],
    [-halfX, halfY],
  ];
}

export function structure(name: string, corners: readonly Corner[]): Structure {
  return { id: name, name, outline: lonLats(corners), floorM: null };
}

type Changes = { readonly [K in keyof Plan]?: Partial<Plan[K]> };

/** A plan with 60 people and all else at its default but what `changes` names; the crest is 1 ft above `waterM`. */
export function planWith(waterM: number, changes: Changes = {}): Plan {
  const { water, ground, section, practice, ...rest } = changes;
  return {
    ...EMPTY_PLAN,
    ...(rest as Partial<Plan>),
    water: {
      ...EMPTY_PLAN.water,
      by: "elevation",
      elevationM: waterM,
      datumNote: "same datum",
      ...water,
    },
    ground: { ...EMPTY_PLAN.ground, ...ground },
    section: { ...EMPTY_PLAN.section, ...section },
    practice: { ...EMPTY_PLAN.practice, people: 60, ...practice },
  };
}

export function size(
  plan: Plan,
  alignment: Alignment,
  ground: GroundSampler,
  live = false,
): SizedLine {
  return sizeLine({ plan, alignment, plane: PLANE, ground, live });
}

/** Heights on a square grid, cell centres at whole multiples of the cell, as a worker would hold them. */
export function gridGround(
  cells: number,
  cellM: number,
  heightAt: (xM: number, yM: number) => number,
): GroundSampler {
  const heights = new Float32Array(cells * cells);
  const half = ((cells - 1) / 2) * cellM;
  for (let row = 0; row < cells; row++) {
    for (let column = 0; column < cells; column++) {
      heights[row * cells + column] = heightAt(column * cellM - half, row * cellM - half);
    }
  }
  const sample = (xM: number, yM: number): number => {
    const u = (xM + half) / cellM;
    const v = (yM + half) / cellM;
    const column = Math.floor(u);
    const row = Math.floor(v);
    if (!(column >= 0 && row >= 0 && column < cells - 1 && row < cells - 1)) return Number.NaN;
    const east = u - column;
    const north = v - row;
    const at = row * cells + column;
    const south = heights[at]! * (1 - east) + heights[at + 1]! * east;
    const upper = heights[at + cells]! * (1 - east) + heights[at + cells + 1]! * east;
    return south * (1 - north) + upper * north;
  };
  return { heightAt: sample, cellM };
}
