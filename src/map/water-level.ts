import type { HeightTileRequest } from "../../shared/messages.ts";
import type { Plan } from "../../shared/plan.ts";
import { planPlane } from "../../shared/plan-plane.ts";
import { isWaterGiven, waterElevationAtGauge, waterSurface } from "../../shared/stage.ts";

/** The water as the tint needs it: one level, over heights that carry the fall. */
export interface WaterTint {
  /** Water-surface elevation at the reference point of the fall, metres. */
  readonly levelM: number;
  readonly fall: HeightTileRequest["fall"];
}

/** Where no level is given none is drawn, metres. */
const BELOW_ALL_GROUND_M = -12_000;

/** Level and fall of the plan's water; `fall` is null for a level surface. */
export function waterTint(plan: Plan): WaterTint {
  if (!isWaterGiven(plan.water)) return { levelM: BELOW_ALL_GROUND_M, fall: null };
  const levelM = waterElevationAtGauge(plan.water);
  const { flow, gauge, water } = plan;
  if (!flow || !(water.fallPerM > 0)) return { levelM, fall: null };
  const at = gauge?.at ?? flow.from;
  const plane = planPlane(at);
  const [fromX, fromY] = plane.toPlane(flow.from);
  const [toX, toY] = plane.toPlane(flow.to);
  if (Math.hypot(toX - fromX, toY - fromY) <= 0.01) return { levelM, fall: null };
  const toward = plane.toLonLat(toX - fromX, toY - fromY);
  return { levelM, fall: { at, toward, fallPerM: water.fallPerM } };
}

/** Water-surface elevation at a place, metres. */
export function waterAt(plan: Plan, at: readonly [number, number]): number {
  const plane = planPlane([at[0], at[1]]);
  return waterSurface(plan.water, plan.flow, plan.gauge, plane)(0, 0);
}
