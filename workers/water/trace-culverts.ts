import { type FoundCandidates, unanswered } from "../../shared/pipes/candidates.ts";
import { candidatesNear } from "../culverts/near-plan.ts";
import type { TraceContext } from "./trace-context.ts";
import { cellAt } from "./water-grid.ts";

/** Most places to ask about at once. */
const MOST = 12;

/**
 * Places near the plan where there may be a culvert, of which nobody has said anything, and through which water up to
 * the top of levee could pass. They are asked about and count as no pipe.
 */
export function traceCulverts({
  plan,
  plane,
  ground,
  grid,
  levelM,
}: TraceContext): FoundCandidates {
  const near = candidatesNear(plan, ground, plane);
  if (!near) return { found: [], leftOff: 0, looked: false };
  const topM = levelM + plan.water.freeboardM;
  const low = near.filter(({ ends: [inSag] }) => grid.heightM[cellAt(grid, inSag)]! < topM);
  const open = unanswered(low, plan, plane);
  return { found: open.slice(0, MOST), leftOff: Math.max(0, open.length - MOST), looked: true };
}
