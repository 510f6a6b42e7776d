import type { CheckGroupRequest } from "../../shared/buildings/check-types.ts";
import { groupId } from "../../shared/buildings/group-id.ts";
import { timedByPlan } from "../../shared/buildings/plan-times.ts";
import type { CheckedGroup } from "../../shared/buildings/types.ts";
import { isComplete } from "../../shared/completeness.ts";
import { Refusal } from "../../shared/failure.ts";
import type { CallOptions } from "../../shared/messages.ts";
import { waterElevationAtGauge } from "../../shared/stage.ts";
import type { Terrain } from "../raster/terrain.ts";
import { atStages, buildingLine, checkedLine, closedBy, isOverLimit } from "./building-line.ts";

/**
 * One line round some neighbors; null where none is found.
 * @throws Refusal `cancelled`, and what else is no fault of these buildings alone
 */
export async function checkGroup(
  terrain: Terrain,
  request: CheckGroupRequest,
  options?: CallOptions,
): Promise<CheckedGroup | null> {
  const { members, waters, plan, mostOnOneLine, mostBags } = request;
  const aim = {
    members,
    river: waters.flatMap(({ river }) => river),
    levelM: waterElevationAtGauge(plan.water),
    mostBags,
  };
  try {
    const line = await buildingLine(terrain, request, aim, options);
    if (!isComplete(line.walked.whole)) return null;
    const aroundM = leastOf(waters.map((each) => each.aroundM));
    const wetM = leastOf(waters.map(({ sillM }) => sillM)) ?? Number.NEGATIVE_INFINITY;
    const levelsM = request.levelsM.filter((levelM) => levelM > wetM).sort((a, b) => a - b);
    const checked = checkedLine(line);
    return timedByPlan<CheckedGroup>(plan, mostOnOneLine, {
      id: groupId(members),
      members: members.map(({ id }) => id),
      line: checked,
      state: isOverLimit(checked) ? "over-limit" : "can-be-ringed",
      firstWetAtS: leastOf(waters.map(({ firstWetAtS }) => firstWetAtS)),
      latestStartAtS: null,
      closedByAtS: closedBy(request, line, aroundM),
      byStage: await atStages(terrain, line, levelsM),
    });
  } catch (thrown) {
    if (thrown instanceof Refusal && thrown.code.startsWith("site/")) return null;
    throw thrown;
  }
}

/** The least of those that are known; null where none is. */
function leastOf(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return known.length > 0 ? Math.min(...known) : null;
}
