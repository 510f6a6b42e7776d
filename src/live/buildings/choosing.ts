import { computed, type ReadonlySignal } from "@preact/signals";
import { candidatesOf, tooLateOf } from "../../../shared/buildings/candidates.ts";
import type {
  BagCurve,
  ChoiceQuestion,
  FoundChoice,
  MoreBuys,
} from "../../../shared/buildings/choice-types.ts";
import {
  type BandChoices,
  bandSweeps,
  besideEachOther,
  offSweep,
} from "../../../shared/buildings/level-choices.ts";
import { leftToHours } from "../../../shared/buildings/line-times.ts";
import type { Sweep } from "../../../shared/buildings/shown-states.ts";
import { hasStock, workForceOf } from "../../../shared/buildings/stock-settings.ts";
import { curveBags, usualMore } from "../../../shared/buildings/usual-more.ts";
import type { Failure } from "../../../shared/failure.ts";
import { plan } from "../../document/store.ts";
import { engine } from "../../engine.ts";
import { follow } from "../follow.ts";
import { unitSystem } from "../screen.ts";
import { wholeTimed, workersNow } from "./crew.ts";
import { bandsNow, offNow } from "./levels.ts";
import { listed } from "./listed.ts";
import { stock, stockNow } from "./stock.ts";
import { firstWaterH, untilWaterH, workStart } from "./times.ts";

/** What is typed must rest so long before it is chosen anew, milliseconds. */
const SETTLE_MS = 250;
const CURVE_POINTS = 24;

/** What is to be chosen from now; null before all are checked, and without stock. */
const toChoose: ReadonlySignal<ChoiceQuestion | null> = computed(() => {
  const sweep = wholeTimed.value;
  return sweep && hasStock(stock.value) ? questionFor(sweep) : null;
});

/** @param untilH hours until the first water at any building */
function questionFor(sweep: Sweep, untilH = untilWaterH.value): ChoiceQuestion {
  const weights = new Map(listed.value?.buildings.map(({ id, weight }) => [id, weight]));
  const { closeBeforeH } = stock.value;
  const workForce = workForceOf(stock.value, workersNow.value, untilH);
  const { checked, groups } = workForce ? leftToHours(sweep) : sweep;
  const buildings = [...checked.values()].map((each) => ({
    ...each,
    weight: weights.get(each.id) ?? each.weight,
  }));
  const candidates = candidatesOf(buildings, groups, {
    startAtS: workStart.value?.atS ?? null,
    marginH: closeBeforeH,
  });
  const tooLate = tooLateOf([...sweep.checked.values()], sweep.groups);
  return { candidates, stock: stockNow.value, workForce, tooLate };
}

const choosing = follow(toChoose, {
  overtaken: "cancelled",
  restMs: SETTLE_MS,
  ask: (question, signal) => engine.chooseLines({ question }, { signal }),
});

/** Asked after the choice, which comes first. */
const chosenFor = computed(() => (choosing.isCurrent.value ? toChoose.value : null));

/** The same question for other water. */
function questionAt(sweep: Sweep): ChoiceQuestion {
  const firsts = [...sweep.checked.values()].map(({ firstWetAtS }) => firstWetAtS);
  return questionFor(sweep, stock.value.untilWaterH ?? firstWaterH(firsts));
}

const choose = (question: ChoiceQuestion, signal: AbortSignal) =>
  engine.chooseLines({ question }, { signal });

/** What is to be chosen for each line of the forecast; null before the choice itself, and without these lines. */
const toChooseByBand = computed(() => {
  const [sweep, levels] = [wholeTimed.value, bandsNow.value];
  const of = chosenFor.value;
  const sweeps = of && sweep && levels && bandSweeps(plan.value, sweep);
  if (!sweeps) return null;
  const questions = {
    low: questionAt(sweeps.low),
    likely: questionAt(sweeps.likely),
    high: questionAt(sweeps.high),
  };
  return { levels, sweeps, questions };
});

const choosingByBand = follow(toChooseByBand, {
  overtaken: "cancelled",
  ask: async ({ levels, sweeps, questions }, signal) => {
    const low = await choose(questions.low, signal);
    const likely = await choose(questions.likely, signal);
    const high = await choose(questions.high, signal);
    return besideEachOther(levels, sweeps, { low, likely, high });
  },
});

/** What is to be chosen where the ground is higher, and lower, than the data say by their error. */
const toChooseOff = computed(() => {
  const [sweep, off] = [wholeTimed.value, offNow.value];
  if (!chosenFor.value || !sweep || !off) return null;
  const at = (lowerM: number) => questionAt(offSweep(plan.value, sweep, lowerM));
  return { byM: off.byM, higher: at(-off.byM), lower: at(off.byM) };
});

const choosingOff = follow(toChooseOff, {
  overtaken: "cancelled",
  ask: async ({ byM, higher, lower }, signal) => {
    const choices = [await choose(higher, signal), await choose(lower, signal)];
    return { byM, ringed: choices.map(({ buildings }) => buildings.length) };
  },
});

const moreBuying = follow(chosenFor, {
  overtaken: "cancelled",
  ask: (question, signal) =>
    engine.moreBuys({ question, more: usualMore(unitSystem.peek()) }, { signal }),
});

/** The curve goes no further than twice the bags there are. */
function curveBagsFor({ candidates, stock: { bags } }: ChoiceQuestion): readonly number[] {
  const single = candidates.filter(({ members }) => members.length === 1);
  const all = single.reduce((sum, each) => sum + each.bags, 0);
  return curveBags(bags, bags === null ? all : Math.min(all, 2 * bags), CURVE_POINTS);
}

const drawingCurve = follow(chosenFor, {
  overtaken: "cancelled",
  ask: (question, signal) =>
    engine.bagCurve({ question, bags: curveBagsFor(question) }, { signal }),
});

/** A choice, what it was made from, and whether that is still what is asked. */
interface Shown {
  readonly choice: FoundChoice;
  readonly of: ChoiceQuestion;
  readonly isStale: boolean;
}

/** The last choice; it stays, as stale, while another is made, and goes when there is nothing to choose with. */
export const choiceShown: ReadonlySignal<Shown | null> = computed(() => {
  const last = choosing.answered.value;
  if (!last || !hasStock(stock.value)) return null;
  return { choice: last.answer, of: last.of, isStale: !choosing.isCurrent.value };
});

export const choiceFailure: ReadonlySignal<Failure | null> = computed(
  () => choosing.failed.value?.answer ?? null,
);

/** Whether a choice is being made. */
export const isChoosing: ReadonlySignal<boolean> = computed(
  () => toChoose.value !== null && !choosing.isCurrent.value && choiceFailure.value === null,
);

/** What more would buy, for the choice that is shown; null until it is known. */
export const moreShown: ReadonlySignal<readonly MoreBuys[] | null> = computed(
  () => moreBuying.answered.value?.answer ?? null,
);

/** Buildings ringed against bags, for the stock there is; null until it is known. */
export const curveShown: ReadonlySignal<BagCurve | null> = computed(
  () => drawingCurve.answered.value?.answer ?? null,
);

/** Whether what more would buy, and the curve, are of the choice that is shown. */
export const moreIsCurrent: ReadonlySignal<boolean> = moreBuying.isCurrent;
export const curveIsCurrent: ReadonlySignal<boolean> = drawingCurve.isCurrent;

/** The choices for the low, the likely and the high forecast; null until they are known, and without such a forecast. */
export const bandChoices: ReadonlySignal<BandChoices | null> = computed(() =>
  choosingByBand.isCurrent.value ? (choosingByBand.answered.value?.answer ?? null) : null,
);

/** Fewest and most buildings ringed if the ground is off by its error, meters; null until it is known. */
export const offRinged: ReadonlySignal<{
  readonly byM: number;
  readonly fewest: number;
  readonly most: number;
} | null> = computed(() => {
  const answer = choosingOff.isCurrent.value ? choosingOff.answered.value?.answer : null;
  const now = choosing.answered.value?.answer;
  if (!answer || !now) return null;
  const all = [...answer.ringed, now.buildings.length];
  return { byM: answer.byM, fewest: Math.min(...all), most: Math.max(...all) };
});

/** Keeps the choice in step with check and stock. */
export function keepChosen(): () => void {
  const each = [choosing, choosingByBand, choosingOff, moreBuying, drawingCurve];
  const stops = each.map(({ keep }) => keep());
  return () => {
    for (const stop of stops) stop();
  };
}
