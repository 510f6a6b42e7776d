import { timeOf } from "../defaults.ts";
import type { Plan } from "../plan.ts";
import { type Band, firstAbove, hydrographOf, levelAt } from "../time/hydrograph.ts";
import type { Sweep } from "./shown-states.ts";
import type { AtStage, CheckedBuilding, CheckedGroup } from "./types.ts";

/** Other water for which a check is read: how high it is at the gauge, and how it comes there. */
export interface OtherWater {
  /** Elevation at the gauge, meters. */
  readonly levelM: number;
  /** Line of the forecast by which it comes. */
  readonly band: Band;
  /** How much higher it stands over the ground than that line says, meters: what the ground may be off by. */
  readonly overM: number;
}

/** Levels this near are the same, meters. */
const SAME_M = 1e-6;

/**
 * A check of many buildings read for other water, with nothing searched anew: each line is the one that was found,
 * counted for that water. A group counts only where all its members flood. A building that floods only then, and for
 * which no line was counted, has no room. What the check did not know stays unknown.
 * @param sizedM water at the gauge that the check is of, meters
 */
export function sweepAt(
  plan: Plan,
  { checked, groups }: Sweep,
  sizedM: number,
  water: OtherWater,
): Sweep {
  const times = timesIn(plan, water);
  const buildings = new Map(
    [...checked].map(([id, each]) => [id, buildingAt(each, sizedM, water, times)]),
  );
  const isFlooded = (id: string) => {
    const state = buildings.get(id)?.state;
    return state !== undefined && state !== "dry" && state !== "no-data";
  };
  return {
    checked: buildings,
    groups: groups
      .filter(({ members }) => members.every(isFlooded))
      .flatMap((each) => groupAt(each, sizedM, water, times)),
  };
}

type Times = Pick<CheckedBuilding, "firstWetAtS" | "closedByAtS">;
type TimesOf = (
  sillM: number | null,
  likely: Pick<CheckedBuilding, "firstWetAtS" | "closedByAtS">,
) => Times;

function buildingAt(
  each: CheckedBuilding,
  sizedM: number,
  { levelM }: OtherWater,
  times: TimesOf,
): CheckedBuilding {
  const { state, sillM, failed } = each;
  if (state === "no-data" || failed !== null) return each;
  if (sillM === null || sillM >= levelM) {
    return { ...each, state: "dry", line: null, firstWetAtS: null, closedByAtS: null };
  }
  const stage = stageAt(each, sizedM, levelM);
  const isOverAlready = state === "over-limit" && levelM >= sizedM - SAME_M;
  return {
    ...each,
    ...times(sillM, each),
    state: !stage
      ? "no-room"
      : isOverAlready || stage.lengthOverLimitM > 0
        ? "over-limit"
        : "can-be-ringed",
    line: stage && { ...(each.line ?? NO_SHAPE), ...stage },
  };
}

/** A line that was only counted, for water at which alone its building floods. */
const NO_SHAPE = { kind: "ring", coordinates: [], mustFix: [] } as const;

function groupAt(
  each: CheckedGroup,
  sizedM: number,
  { levelM }: OtherWater,
  times: TimesOf,
): CheckedGroup[] {
  const stage = stageAt(each, sizedM, levelM);
  if (!stage) return [];
  const isOverAlready = each.state === "over-limit" && levelM >= sizedM - SAME_M;
  const isOver = isOverAlready || stage.lengthOverLimitM > 0;
  return [
    {
      ...each,
      ...times(null, each),
      state: isOver ? "over-limit" : "can-be-ringed",
      line: { ...each.line, ...stage },
    },
  ];
}

/** What the line takes at a level; null where it was not counted for it. */
function stageAt(
  { line, byStage }: Pick<CheckedBuilding, "line" | "byStage">,
  sizedM: number,
  levelM: number,
): Omit<AtStage, "atGaugeM" | "waterM"> | null {
  if (line && Math.abs(levelM - sizedM) < SAME_M) return line;
  const found = byStage.find(({ atGaugeM }) => Math.abs(atGaugeM - levelM) < SAME_M);
  if (!found) return null;
  const { atGaugeM: _, waterM: __, ...figures } = found;
  return figures;
}

/**
 * When the water comes by another line of the forecast, or over ground that is lower than the data say. What must be
 * closed by then follows from the level that the likely forecast has at the line's own hour.
 */
function timesIn(plan: Plan, { band, overM }: OtherWater): TimesOf {
  const { forecast } = timeOf(plan);
  const river = forecast && hydrographOf(plan, forecast, band);
  const likely = forecast && hydrographOf(plan, forecast, "likely");
  if (!river || !likely) return () => ({ firstWetAtS: null, closedByAtS: null });
  const startS = river.atS[0]!;
  const first = firstAbove(river, startS);
  const inBand = (atS: number | null) => {
    if (atS === null) return null;
    return atS <= likely.atS[0]! ? startS : first(levelAt(likely, atS) - overM);
  };
  return (sillM, { firstWetAtS, closedByAtS }) => ({
    firstWetAtS: sillM === null ? inBand(firstWetAtS) : first(sillM - overM),
    closedByAtS: inBand(closedByAtS),
  });
}
