import { candidatesOf } from "../../shared/buildings/candidates.ts";
import type { BuildingsCheck } from "../../shared/buildings/check-types.ts";
import type { ChoiceQuestion } from "../../shared/buildings/choice-types.ts";
import type { CheckedBuilding, Stock, WorkForce } from "../../shared/buildings/types.ts";
import { timeOf } from "../../shared/defaults.ts";
import type { Engine } from "../../shared/messages.ts";
import type { Plan } from "../../shared/plan.ts";
import { startOfWork } from "../../shared/time/start.ts";
import { lineOf } from "./sweep-lines.ts";

type Found = Pick<BuildingsCheck, "buildings" | "groups">;

/** Which lines to build with a stock, as the last line of output. */
export async function choiceLine(
  engine: Pick<Engine, "chooseLines">,
  plan: Plan,
  found: Found,
  stock: Stock,
  mostOnOneLine: number,
): Promise<string> {
  const question = choiceQuestion(plan, found, stock, mostOnOneLine);
  const { chosen, weight, bags, bestPossible, runsOutFirst, ...rest } = await engine.chooseLines({
    question,
  });
  return lineOf({ choice: { chosen, weight, bags, bestPossible, runsOutFirst, ...rest } });
}

/** Share of a stock's people who work at a time: the others sleep, eat or travel. Source: judgement. */
const AT_WORK_SHARE = 0.5;

/**
 * The question of which lines to build. Those marked "First" must be ringed, those marked "Never" must not. Each line
 * has its own hour to be closed by; hours are limited where both people and a start of work are known. People of the
 * stock work in turns, half of them at a time; without any, the plan's, who are those at work at a time.
 */
function choiceQuestion(
  plan: Plan,
  { buildings, groups }: Found,
  stock: Stock,
  mostOnOneLine: number,
): ChoiceQuestion {
  const time = timeOf(plan);
  const startAtS = time.startAt === null ? null : (startOfWork(time)?.atS ?? null);
  const candidates = candidatesOf(buildings, groups, {
    startAtS,
    marginH: 0,
  });
  const marked = (priority: CheckedBuilding["priority"]) =>
    buildings.filter((each) => each.priority === priority).map(({ id }) => id);
  return {
    candidates,
    stock: {
      ...stock,
      mustDo: [...new Set([...stock.mustDo, ...marked("first")])],
      mustNot: [...new Set([...stock.mustNot, ...marked("never")])],
    },
    workForce: startAtS === null ? null : workForceOf(plan, stock, mostOnOneLine),
  };
}

function workForceOf(plan: Plan, { people }: Stock, mostOnOneLine: number): WorkForce | null {
  const workers = people ?? plan.practice.people;
  if (workers === null) return null;
  return {
    people: workers,
    atWorkShare: people === null ? 1 : AT_WORK_SHARE,
    setUpH: timeOf(plan).setUpH,
    moveHours: 0,
    mostOnOneLine,
    untilH: null,
  };
}
