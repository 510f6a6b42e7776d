import { refusal } from "./failure.ts";
import type { LonLat, Plan } from "./plan.ts";
import { type PlanPlane, planPlane } from "./plan-plane.ts";

/** A box on the plan plane, metres. */
export interface PlaneBox {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** Whether a box has all of another in it. */
export function holdsBox(outer: PlaneBox, inner: PlaneBox): boolean {
  return (
    outer.minX <= inner.minX &&
    outer.minY <= inner.minY &&
    outer.maxX >= inner.maxX &&
    outer.maxY >= inner.maxY
  );
}

/** The box around points. */
export function boxAround(points: Iterable<readonly [number, number]>): PlaneBox {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const [x, y] of points) {
    box.minX = Math.min(box.minX, x);
    box.minY = Math.min(box.minY, y);
    box.maxX = Math.max(box.maxX, x);
    box.maxY = Math.max(box.maxY, y);
  }
  return box;
}

/** Where a plan lies: its plane and the box that holds its lines and structures, with a margin. */
export interface Site {
  readonly plane: PlanPlane;
  readonly box: PlaneBox;
}

/** Widest a plan may be: the plan plane is exact to a millionth within this, and one building needs less. */
const WIDEST_M = 12_000;

/** Origins are rounded to this many degrees so that dragging a corner keeps the same plane. */
const ORIGIN_STEP_DEG = 0.02;

let lastPlane: PlanPlane | null = null;

/**
 * The plane and box of a plan.
 * @param marginM added on every side, metres
 * @throws Refusal `plan/empty` without any corner, `plan/too-wide` beyond 12 km
 */
export function planSite(plan: Plan, marginM: number): Site {
  const points: LonLat[] = [
    ...plan.alignments.flatMap((each) => each.corners),
    ...plan.structures.flatMap((each) => each.outline),
  ];
  const first = points[0];
  if (!first) throw refusal("plan/empty");
  const plane = planeNear(first);
  const box = boxAround(points.map((point) => plane.toPlane(point)));
  const widestM = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  if (!(widestM <= WIDEST_M)) {
    throw refusal("plan/too-wide", { widestM, mostM: WIDEST_M });
  }
  return {
    plane,
    box: {
      minX: box.minX - marginM,
      minY: box.minY - marginM,
      maxX: box.maxX + marginM,
      maxY: box.maxY + marginM,
    },
  };
}

function planeNear([lon, lat]: LonLat): PlanPlane {
  const origin: LonLat = [
    Math.round(lon / ORIGIN_STEP_DEG) * ORIGIN_STEP_DEG,
    Math.round(lat / ORIGIN_STEP_DEG) * ORIGIN_STEP_DEG,
  ];
  if (lastPlane && lastPlane.origin[0] === origin[0] && lastPlane.origin[1] === origin[1]) {
    return lastPlane;
  }
  lastPlane = planPlane(origin);
  return lastPlane;
}
