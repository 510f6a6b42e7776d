import type { Flow, Gauge, Water } from "./plan.ts";
import type { PlanPlane } from "./plan-plane.ts";

/** Elevation in metres at a place on the plan plane. */
export type SurfaceAt = (xM: number, yM: number) => number;

/** Whether a person has given the water's level: before that no figure of it stands for anything. */
export function isWaterGiven({ given }: Pick<Water, "given">): boolean {
  return given !== false;
}

/**
 * Water-surface elevation where it is given, metres in the terrain's datum: gauge zero + stage (+ datum
 * offset, 0 when none is stated), or the elevation as typed.
 * Source: NWS-D, USGS-D (elevation = gauge zero + stage).
 */
export function waterElevationAtGauge(water: Water): number {
  if (water.by === "elevation") return water.elevationM;
  return water.gaugeZeroM + water.stageM + (water.datumOffsetM ?? 0);
}

/**
 * The water surface over the plan plane: level, or falling at `fallPerM` along the flow from the gauge
 * (from the start of the flow arrow when there is no gauge). Without a direction no fall is applied;
 * a check says so. Source: USGS-F, OWRB (the surface at a site is read along the river's slope).
 */
export function waterSurface(
  water: Water,
  flow: Flow | null,
  gauge: Gauge | null,
  plane: PlanPlane,
): SurfaceAt {
  const elevationM = waterElevationAtGauge(water);
  const direction = flowDirection(flow, plane);
  if (direction === null || flow === null || water.fallPerM === 0) return () => elevationM;
  const [fromX, fromY] = plane.toPlane(gauge?.at ?? flow.from);
  const fallX = water.fallPerM * direction[0];
  const fallY = water.fallPerM * direction[1];
  return (xM, yM) => elevationM - fallX * (xM - fromX) - fallY * (yM - fromY);
}

/** Unit vector of the flow on the plan plane; null when none is drawn or it has no length. */
export function flowDirection(flow: Flow | null, plane: PlanPlane): [number, number] | null {
  if (flow === null) return null;
  const [fromX, fromY] = plane.toPlane(flow.from);
  const [toX, toY] = plane.toPlane(flow.to);
  const lengthM = Math.hypot(toX - fromX, toY - fromY);
  return lengthM > 0.01 ? [(toX - fromX) / lengthM, (toY - fromY) / lengthM] : null;
}
