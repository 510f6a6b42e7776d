import { timeOf } from "../defaults.ts";
import type { Plan } from "../plan.ts";
import { startOfWork } from "../time/start.ts";
import { latestStart } from "./latest-start.ts";
import type { BuildingState, CheckedBuilding, CheckedGroup, CheckedLine } from "./types.ts";

/** Findings that a line is not done in time by the crew of the plan. */
const LATE: readonly string[] = ["late", "over-a-year"];
/** States of a line that can be built but for the time. */
const BUT_FOR_TIME: readonly BuildingState[] = ["can-be-ringed", "too-late"];

/**
 * A checked building or group as it is with the crew of the plan: its latest start, with as many on the line as fit,
 * and whether it is too late. That is not known without people, shifts or the hour by which it must be closed. The
 * check of the line in a plan of its own counts steps and crews, and may find it late where this does not.
 */
export function timedByPlan<Each extends CheckedBuilding | CheckedGroup>(
  plan: Plan,
  mostOnOneLine: number,
  each: Each,
): Each {
  const { line, closedByAtS, state } = each;
  if (!line) return each;
  const latestS =
    closedByAtS === null ? null : latestStartOf(plan, mostOnOneLine, line, closedByAtS);
  const latestStartAtS = latestS !== null && Number.isFinite(latestS) ? Math.floor(latestS) : null;
  if (!BUT_FOR_TIME.includes(state)) return { ...each, latestStartAtS };
  const time = timeOf(plan);
  const startAtS = time.startAt === null ? null : (startOfWork(time)?.atS ?? null);
  const isTooLate =
    line.mustFix.some(({ finding }) => LATE.includes(finding.kind)) ||
    (latestS !== null && latestS < (startAtS ?? Number.MIN_SAFE_INTEGER));
  return { ...each, latestStartAtS, state: isTooLate ? "too-late" : "can-be-ringed" };
}

function latestStartOf(
  plan: Plan,
  mostOnOneLine: number,
  { leveeBags: bags, coordinates }: CheckedLine,
  closedByS: number,
): number | null {
  return latestStart(plan, { bags, closedByS, mostOnOneLine, at: coordinates[0]! });
}
