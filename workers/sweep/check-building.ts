import type { CheckBuildingRequest } from "../../shared/buildings/check-types.ts";
import { timedByPlan } from "../../shared/buildings/plan-times.ts";
import type { BuildingState, CheckedBuilding, CheckedLine } from "../../shared/buildings/types.ts";
import { unsearched } from "../../shared/buildings/unsearched.ts";
import { isComplete } from "../../shared/completeness.ts";
import { Refusal } from "../../shared/failure.ts";
import type { CallOptions } from "../../shared/messages.ts";
import { waterElevationAtGauge } from "../../shared/stage.ts";
import type { Terrain } from "../raster/terrain.ts";
import {
  atStages,
  type BuildingLine,
  buildingLine,
  checkedLine,
  closedBy,
  isOverLimit,
} from "./building-line.ts";

/** What a search that finds no line says of a building; any other refusal is an error of its own. */
const STATE_OF: Readonly<Record<string, BuildingState>> = {
  "site/all-no-go": "no-room",
  "site/water-in-the-way": "no-room",
  "site/window-too-small": "no-room",
  "site/no-ring": "no-room",
  "site/edge-of-data": "no-data",
  "site/no-ground": "no-data",
};

/**
 * The state of one traced building, its best line, and that line at other levels. A building that is dry at the
 * plan's water and flooded at one of the levels has a line looked for at the highest of them, for those alone.
 * @throws Refusal `cancelled`, and what else is no fault of this building alone
 */
export async function checkBuilding(
  terrain: Terrain,
  request: CheckBuildingRequest,
  options?: CallOptions,
): Promise<CheckedBuilding> {
  const { building, water, plan, mostOnOneLine } = request;
  const bare = unsearched(building, water);
  const isFlooded = water.state === "flooded";
  const wetM = water.sillM ?? Number.POSITIVE_INFINITY;
  const levelsM = request.levelsM.filter((levelM) => levelM > wetM).sort((a, b) => a - b);
  if (water.state === "no-data" || (!isFlooded && levelsM.length === 0)) return bare;
  const levelM = isFlooded ? waterElevationAtGauge(plan.water) : levelsM.at(-1)!;
  const aim = { members: [building], river: water.river, levelM, mostBags: null };
  try {
    const line = await buildingLine(terrain, request, aim, options);
    const closedByAtS = closedBy(request, line, water.aroundM);
    const byStage = await atStages(terrain, line, levelsM);
    if (!isFlooded) return { ...bare, byStage };
    const checked = checkedLine(line);
    const state = stateOf(line, checked);
    if (state === "no-data") return { ...bare, state, at: line.shape.coordinates[0]! };
    return timedByPlan(plan, mostOnOneLine, {
      ...bare,
      ...{ state, byStage, closedByAtS, line: checked },
    });
  } catch (thrown) {
    if (!(thrown instanceof Refusal) || !thrown.code.startsWith("site/")) throw thrown;
    if (!isFlooded) return bare;
    const state = STATE_OF[thrown.code];
    return state ? { ...bare, state } : { ...bare, state: "no-data", failed: thrown.code };
  }
}

function stateOf({ walked }: BuildingLine, checked: CheckedLine): BuildingState {
  if (!isComplete(walked.whole)) return "no-data";
  return isOverLimit(checked) ? "over-limit" : "can-be-ringed";
}
