import type { Alignment, Plan } from "../../shared/plan.ts";
import { planPlane } from "../../shared/plan-plane.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import type { LegFlow } from "../../shared/words/laying.ts";

/** A leg is across the flow where it makes at least so many degrees with it. Judgement. */
const ACROSS_DEG = 75;

/** Which way is downstream along a line, by the flow drawn on the plan: legs that follow each other the same way are one. */
export function legFlows(
  { flow }: Pick<Plan, "flow">,
  { corners }: Alignment,
  { cornersM, kind, totals }: Pick<SizedLine, "cornersM" | "kind" | "totals">,
): LegFlow[] {
  if (!flow) return [];
  const plane = planPlane(corners[0]!);
  const direction = directionOf(plane.toPlane(flow.from), plane.toPlane(flow.to));
  const places = corners.map((at) => plane.toPlane(at));
  const legs = kind === "ring" ? corners.length : corners.length - 1;
  const each = Array.from({ length: legs }, (_, i): LegFlow => {
    const next = (i + 1) % corners.length;
    const leg = directionOf(places[i]!, places[next]!);
    const along = leg[0] * direction[0] + leg[1] * direction[1];
    const isAcross = Math.abs(along) < Math.cos((ACROSS_DEG * Math.PI) / 180);
    return {
      fromM: cornersM[i]!,
      toM: next === 0 ? totals.lengthM : cornersM[next]!,
      open: isAcross ? "across" : along > 0 ? "onward" : "back",
    };
  });
  const starts = each.filter(({ open }, i) => open !== each[i - 1]?.open);
  return starts.map((start, i) => ({
    ...start,
    toM: starts[i + 1]?.fromM ?? each.at(-1)!.toM,
  }));
}

function directionOf(
  [ax, ay]: readonly [number, number],
  [bx, by]: readonly [number, number],
): readonly [number, number] {
  const long = Math.hypot(bx - ax, by - ay) || 1;
  return [(bx - ax) / long, (by - ay) / long];
}
