import type { BuildingRow } from "../buildings/rows.ts";
import type { ShownState } from "../buildings/shown-states.ts";
import type { Plan } from "../plan.ts";
import { isWaterGiven, waterElevationAtGauge } from "../stage.ts";
import { formatCount, formatElevation, formatLength, type UnitSystem } from "../units.ts";

/** `at 24.6 ft` of stage, or at the elevation where the water is given by that; empty before it is given. */
function atWaterWords({ water }: Pick<Plan, "water">, system: UnitSystem): string {
  if (!isWaterGiven(water)) return "";
  return water.by === "stage"
    ? `at ${formatLength(water.stageM, system)}`
    : `at ${formatElevation(waterElevationAtGauge(water), system)}`;
}

/** What the bar of states needs beside the state. */
export interface StateWordsAbout {
  readonly plan: Pick<Plan, "water">;
  readonly system: UnitSystem;
  /** How many lines are chosen; null before there is a choice. */
  readonly lines: number | null;
  /** False where nobody said who works or when the water comes: then no line is known to be too late. */
  readonly isTimeKnown: boolean;
}

/** A state in two short lines: `Over height`, `limit: engineer`. */
export function stateWords(
  state: ShownState,
  { plan, system, lines, isTimeKnown }: StateWordsAbout,
): readonly [string, string] {
  switch (state) {
    case "chosen":
      return ["Ring these", lines === 1 ? "1 line" : `${formatCount(lines ?? 0)} lines`];
    case "can-be-ringed":
      return lines === null ? ["Can be", "ringed"] : ["Can be ringed,", "not in stock"];
    case "over-limit":
      return ["Over height", "limit: engineer"];
    case "no-room":
      return ["No room", "for a ring"];
    case "too-late":
      return isTimeKnown ? ["Cannot be", "done in time"] : ["In time?", "not known"];
    case "no-data":
      return ["No elevation", "data"];
    case "dry":
      return ["Not flooded", atWaterWords(plan, system)];
  }
}

/** A state as one short remark in a row of the table; empty where the row's figures say it. */
export function stateRemark(state: ShownState): string {
  switch (state) {
    case "chosen":
    case "can-be-ringed":
      return "";
    case "over-limit":
      return "over limit";
    case "no-room":
      return "no room";
    case "too-late":
      return "too late";
    case "no-data":
      return "no data";
    case "dry":
      return "not flooded";
  }
}

/** What the state of a picked row means, in one sentence; null where its figures say it. */
export function stateSentence(
  { state, line, failed }: Pick<BuildingRow, "state" | "line" | "failed">,
  system: UnitSystem,
): string | null {
  if (failed !== null) return `It could not be checked (${failed}). Check it in a separate plan.`;
  switch (state) {
    case "chosen":
      return null;
    case "can-be-ringed":
      return NOT_RINGED;
    case "over-limit": {
      const over = line
        ? `Over the height limit for ${formatLength(line.lengthOverLimitM, system, 0)}.`
        : "Over the height limit.";
      return `${over} Ask a licensed engineer. ${NOT_RINGED}`;
    }
    case "no-room":
      return `No line fits with its setback from buildings and no-go areas. ${NOT_RINGED}`;
    case "too-late":
      return `Its line cannot be closed before the water with these people. ${NOT_RINGED}`;
    case "no-data":
      return "No elevation data here: whether it floods is not known. Treat it as flooded.";
    case "dry":
      return "Connected water does not touch it at this stage. Groundwater and rain are not counted.";
  }
}

const NOT_RINGED = "Not ringed: warn the people there; they leave.";
