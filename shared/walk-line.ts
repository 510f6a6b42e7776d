import { layLine } from "./alignment.ts";
import { cutWalk } from "./cut-walk.ts";
import type { GroundSampler } from "./ground.ts";
import { breaksInside, sampleLine } from "./line-samples.ts";
import type { Alignment, Plan } from "./plan.ts";
import type { PlanPlane } from "./plan-plane.ts";
import { stepFor } from "./section.ts";
import { builtReaches, sameBuild } from "./sections/built-reach.ts";
import { waterSurface } from "./stage.ts";
import { surveyedGround, surveyRaises } from "./survey/surveyed-ground.ts";
import { totalsOf } from "./totals.ts";
import { waterSideOf } from "./water-side.ts";

/** A line of a plan, and the ground it is to be built on. */
export interface LineOnGround {
  readonly plan: Plan;
  readonly alignment: Alignment;
  readonly plane: PlanPlane;
  readonly ground: GroundSampler;
}

/** A line as it was walked. */
export type WalkedLine = ReturnType<typeof walkLine>;

/**
 * A line laid on the plan plane, walked no coarser than half a cell, cut across at every sample, and its totals.
 * Throws a `Refusal` for a line without enough corners or length, or too long for the ground's cells.
 */
export function walkLine({ plan, alignment, plane, ground }: LineOnGround) {
  const line = layLine(alignment, plane);
  const breaksM = breaksInside(line, alignment.reachBreaksM);
  const built = builtReaches(plan, alignment, breaksM.length + 1);
  const parted = (reach: number) => !sameBuild(built[reach - 1]!, built[reach]!);
  const surface = waterSurface(plan.water, plan.flow, plan.gauge, plane);
  const { freeboardM } = plan.water;
  const samples = sampleLine(line, breaksM, stepFor(ground), surface, freeboardM, parted);
  const surveyed = surveyedGround({ plan, line, plane, ground });
  if (surveyed) samples.surveyRaiseM.set(samples.chainageM.map(surveyRaises(surveyed)));
  const waterSide = waterSideOf(line, plan, plane);
  const cuts = cutWalk(samples, ground, built, waterSide, 0);
  const { whole, reaches } = totalsOf(samples, cuts, plan, waterSide);
  return { line, breaksM, built, surface, samples, surveyed, waterSide, cuts, whole, reaches };
}
