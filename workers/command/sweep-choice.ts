import { bandLevels } from "../../shared/buildings/band-levels.ts";
import { candidatesOf, tooLateOf } from "../../shared/buildings/candidates.ts";
import type { BuildingsCheck } from "../../shared/buildings/check-types.ts";
import type { ChoiceQuestion, FoundChoice } from "../../shared/buildings/choice-types.ts";
import { bandSweeps, besideEachOther } from "../../shared/buildings/level-choices.ts";
import { type LineCrew, timed } from "../../shared/buildings/line-times.ts";
import { timedByPlan } from "../../shared/buildings/plan-times.ts";
import type {
  CheckedBuilding,
  CheckedGroup,
  Stock,
  WorkForce,
} from "../../shared/buildings/types.ts";
import { timeOf } from "../../shared/defaults.ts";
import type { Engine } from "../../shared/messages.ts";
import type { Plan } from "../../shared/plan.ts";
import type { Band } from "../../shared/time/hydrograph.ts";
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
  const choose = (of: Found) =>
    engine.chooseLines({ question: choiceQuestion(plan, of, stock, mostOnOneLine) });
  const { chosen, weight, bags, bestPossible, runsOutFirst, ...rest } = await choose(found);
  const forecasts = await byForecast(plan, found, choose);
  return lineOf({
    choice: { chosen, weight, bags, bestPossible, runsOutFirst, ...rest, forecasts },
  });
}

/** What is chosen at the crests of the low, the likely and the high forecast; null without these. */
async function byForecast(
  plan: Plan,
  { buildings, groups }: Found,
  choose: (found: Found) => Promise<FoundChoice>,
) {
  const levels = bandLevels(plan);
  const checked = new Map(buildings.map((each) => [each.id, each]));
  const sweeps = bandSweeps(plan, { checked, groups });
  if (!levels || !sweeps) return null;
  const at = (band: Band) => {
    const { checked: of, groups: ofGroups } = sweeps[band];
    return choose({ buildings: [...of.values()], groups: ofGroups });
  };
  const choices = { low: await at("low"), likely: await at("likely"), high: await at("high") };
  const { bands, same } = besideEachOther(levels, sweeps, choices);
  const shown = (band: Band) => {
    const { levelM, flooded, choice } = bands[band];
    const { chosen, buildings: ringed, weight, bags, personHours, isProved, runsOutFirst } = choice;
    const figures = { weight, bags, personHours, isProved, runsOutFirst };
    return { atGaugeM: levelM, flooded, chosen, buildings: ringed, ...figures };
  };
  return { low: shown("low"), likely: shown("likely"), high: shown("high"), sameInAll: same };
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
    tooLate: tooLateOf(buildings, groups),
  };
}

/**
 * Latest starts and "too late" as the people of the stock make them, in person-hours as the choice counts them; where
 * it names none as the plan's crew does.
 */
export function timedWith(plan: Plan, stock: Stock | null, mostOnOneLine: number) {
  const people = stock?.people ?? null;
  const time = timeOf(plan);
  const crew: LineCrew | null =
    people === null
      ? null
      : {
          atWork: people * AT_WORK_SHARE,
          ...{ mostOnOneLine, setUpH: time.setUpH, closeBeforeH: 0, untilH: null },
          startAtS: time.startAt === null ? null : (startOfWork(time)?.atS ?? null),
        };
  return <Each extends CheckedBuilding | CheckedGroup>(each: Each): Each =>
    crew ? timed(each, crew) : timedByPlan(plan, mostOnOneLine, each);
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
