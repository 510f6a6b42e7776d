import { FOOT_M } from "../../shared/constants.ts";
import { crossSection } from "../../shared/cross-section.ts";
import { DEFAULT_PRACTICE, DEFAULT_SECTION, EMPTY_PLAN } from "../../shared/defaults.ts";
import type { GroundSampler } from "../../shared/ground.ts";
import type { Alignment, Plan } from "../../shared/plan.ts";
import { type PlanPlane, planPlane } from "../../shared/plan-plane.ts";
import { sizeLine } from "../../shared/size-line.ts";
import type { CrossSection, SizedLine } from "../../shared/sizing-types.ts";

/** Ground height as a formula of plan-plane metres; the line below runs east along y = 0. */
type GroundFormula = (xM: number, yM: number) => number;

export const LIMIT_M = DEFAULT_PRACTICE.limitM;
export const BAG = DEFAULT_SECTION.bag;

const plane: PlanPlane = planPlane([-96.8, 46.9]);

function alignment(lengthM: number, reachBreaksM: readonly number[]): Alignment {
  const corners = [plane.toLonLat(0, 0), plane.toLonLat(lengthM, 0)];
  return { id: "a", name: "A", kind: "line", corners, reachBreaksM };
}

function planWith(crestM: number, line: Alignment): Plan {
  const water = { ...EMPTY_PLAN.water, elevationM: crestM - FOOT_M, freeboardM: FOOT_M };
  return { ...EMPTY_PLAN, alignments: [line], water };
}

function sampler(formula: GroundFormula, cellM: number): GroundSampler {
  return { heightAt: formula, cellM };
}

/** A straight line sized over a formula. */
export function sizedOver(
  formula: GroundFormula,
  options: { crestM: number; lengthM?: number; cellM?: number; reachBreaksM?: number[] },
): SizedLine {
  const { crestM, lengthM = 200, cellM = 1, reachBreaksM = [] } = options;
  const line = alignment(lengthM, reachBreaksM);
  const plan = planWith(crestM, line);
  return sizeLine({ plan, alignment: line, plane, ground: sampler(formula, cellM), live: true });
}

/** The same line cut across. */
export function cutOver(
  formula: GroundFormula,
  crestM: number,
  chainageM = 100,
  marginM = 3,
): CrossSection {
  const line = alignment(200, []);
  const ground = sampler(formula, 0.5);
  const plan = planWith(crestM, line);
  return crossSection({ plan, alignment: line, plane, ground, chainageM, marginM });
}

/** Numbers in [0, 1) that are the same on every run (mulberry32, public domain; from memory). */
export function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
