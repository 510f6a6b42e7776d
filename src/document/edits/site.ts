import type { GroundSummary } from "../../../shared/messages.ts";
import type { Flow, LonLat, Plan } from "../../../shared/plan.ts";
import { planPlane } from "../../../shared/plan-plane.ts";
import { rounded } from "./corners.ts";

/** How long a flow arrow that was typed as a direction is drawn, metres. */
const ARROW_M = 150;

/** Compass direction of the flow, degrees clockwise from north, 0 to 360. */
export function bearingOf(flow: Flow): number {
  const [x, y] = planPlane(flow.from).toPlane(flow.to);
  return ((Math.atan2(x, y) * 180) / Math.PI + 360) % 360;
}

/** An arrow of the same start and length in another direction; `from` starts a new one. */
export function flowToward(flow: Flow | null, from: LonLat, bearingDeg: number): Flow {
  const start = flow?.from ?? from;
  const plane = planPlane(start);
  const [oldX, oldY] = flow ? plane.toPlane(flow.to) : [0, ARROW_M];
  const lengthM = Math.hypot(oldX, oldY);
  const angle = (bearingDeg * Math.PI) / 180;
  const [lon, lat] = plane.toLonLat(lengthM * Math.sin(angle), lengthM * Math.cos(angle));
  return { from: start, to: rounded(lon, lat) };
}

/** A place to start from when nothing is pointed at: the first building, the first corner, the middle of the ground. */
export function siteMiddle(plan: Plan, ground: GroundSummary | null): LonLat | null {
  const drawn = plan.structures[0]?.outline[0] ?? plan.alignments[0]?.corners[0];
  if (drawn) return drawn;
  if (!ground) return null;
  const [west, south, east, north] = ground.bounds;
  return rounded((west + east) / 2, (south + north) / 2);
}
