import { layLine } from "../../../shared/alignment.ts";
import type { Plan } from "../../../shared/plan.ts";
import { planPlane } from "../../../shared/plan-plane.ts";
import { waterSideOf } from "../../../shared/water-side.ts";

/** Which side of an alternative the water stands on: left (+1) or right (-1) of chainage; right when unknown. */
export function waterSideIn(plan: Plan, alternativeId: string): 1 | -1 {
  const alignment = plan.alignments.find((each) => each.id === alternativeId);
  const first = alignment?.corners[0];
  if (!alignment || !first) return -1;
  const plane = planPlane(first);
  try {
    return waterSideOf(layLine(alignment, plane), plan, plane);
  } catch {
    return -1;
  }
}
