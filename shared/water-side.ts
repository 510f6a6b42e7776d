import { type PlaneLine, signedAreaM2 } from "./alignment.ts";
import type { LonLat, Plan } from "./plan.ts";
import type { PlanPlane } from "./plan-plane.ts";
import { isProtected } from "./protected.ts";

/**
 * The side on which the water stands: left (+1) or right (-1) of chainage. Outside of a ring. For a line:
 * away from the structures; without any, the side of the gauge; without that, the right.
 */
export function waterSideOf(line: PlaneLine, plan: Plan, plane: PlanPlane): 1 | -1 {
  if (line.closed) return signedAreaM2(line) > 0 ? -1 : 1;
  const kept = plan.structures.filter(isProtected);
  const corners = kept.flatMap((structure) => structure.outline);
  if (corners.length > 0) return sideOf(line, middleOf(corners, plane)) > 0 ? -1 : 1;
  if (plan.gauge?.at) return sideOf(line, plane.toPlane(plan.gauge.at)) > 0 ? 1 : -1;
  return -1;
}

function middleOf(corners: readonly LonLat[], plane: PlanPlane): [number, number] {
  const points = corners.map((corner) => plane.toPlane(corner));
  const sum = points.reduce<[number, number]>(([x, y], [px, py]) => [x + px, y + py], [0, 0]);
  return [sum[0] / points.length, sum[1] / points.length];
}

/** Positive where a point lies to the left of the leg nearest to it. */
function sideOf(line: PlaneLine, [x, y]: readonly [number, number]): number {
  let nearest = Number.POSITIVE_INFINITY;
  let side = 0;
  for (let i = 0; i < line.legs; i++) {
    const alongX = line.xM[i + 1]! - line.xM[i]!;
    const alongY = line.yM[i + 1]! - line.yM[i]!;
    const square = alongX * alongX + alongY * alongY;
    if (square === 0) continue;
    const towardX = x - line.xM[i]!;
    const towardY = y - line.yM[i]!;
    const share = Math.min(1, Math.max(0, (towardX * alongX + towardY * alongY) / square));
    const distance = Math.hypot(towardX - share * alongX, towardY - share * alongY);
    if (distance >= nearest) continue;
    nearest = distance;
    side = alongX * towardY - alongY * towardX;
  }
  return side;
}
