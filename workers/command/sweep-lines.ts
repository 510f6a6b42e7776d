import type { AtStage, CheckedBuilding, CheckedGroup } from "../../shared/buildings/types.ts";
import { timeOf } from "../../shared/defaults.ts";
import type { Plan } from "../../shared/plan.ts";
import { waterElevationAtGauge } from "../../shared/stage.ts";
import { momentText } from "../../shared/time/forecast-time.ts";
import { startOfWork } from "../../shared/time/start.ts";
import { rounded } from "./json.ts";

/** A check of many buildings, as the lines name it. */
export interface SweepOf {
  readonly plan: Plan;
  /** Tells one check from another: the same where plan, buildings, levels and elevation data are the same. */
  readonly check: string;
}

/** One building as a line of output. Times are of the forecast's clock. */
export function buildingLine({ plan, check }: SweepOf, checked: CheckedBuilding): string {
  const { id, name, state, depthM, line, at, failed } = checked;
  const { floorM, weight, priority, sillM, lowM = null } = checked;
  return lineOf({
    ...{ id, name, state, depthM },
    ...timesOf(plan, checked),
    ...shapeOf(line),
    byStage: stagesOf(plan, checked.byStage),
    ...{ sillM, lowM, floorM, weight, priority, at, failed, check },
  });
}

/** One group as a line of output. */
export function groupLine({ plan, check }: SweepOf, group: CheckedGroup): string {
  const { id, members, state, line } = group;
  return lineOf({
    ...{ group: id, members, state },
    ...timesOf(plan, group),
    ...shapeOf(line),
    byStage: stagesOf(plan, group.byStage),
    check,
  });
}

/** Any line of output: numbers rounded as in all answers of the program. */
export function lineOf(value: unknown): string {
  return `${JSON.stringify(rounded(value))}\n`;
}

function timesOf(plan: Plan, { firstWetAtS, latestStartAtS, closedByAtS }: Times) {
  const start = startOfWork(timeOf(plan));
  const text = (atS: number | null) =>
    atS === null ? null : momentText({ atS, offsetMin: start?.offsetMin ?? null });
  return {
    firstWetAt: text(firstWetAtS),
    latestStartAt: text(latestStartAtS),
    closedByAt: text(closedByAtS),
  };
}

type Times = Pick<CheckedBuilding, "firstWetAtS" | "latestStartAtS" | "closedByAtS">;

const NO_LINE = {
  ...{ kind: null, coordinates: null, bags: null, leveeBags: null, sandM3: null, sheetM2: null },
  ...{ personHours: null, greatestHeightM: null, lengthM: null, lengthOverLimitM: null },
  mustFix: null,
};

function shapeOf(line: CheckedBuilding["line"]): object {
  return line ?? NO_LINE;
}

function stagesOf({ water }: Plan, stages: readonly AtStage[]) {
  const byM = water.by === "stage" ? waterElevationAtGauge(water) - water.stageM : null;
  return stages.map(({ atGaugeM, ...rest }) => ({
    stageM: byM === null ? null : atGaugeM - byM,
    atGaugeM,
    ...rest,
  }));
}
