import { computed, type ReadonlySignal } from "@preact/signals";
import { candidatesOf } from "../../../shared/buildings/candidates.ts";
import type {
  BagCurve,
  ChoiceQuestion,
  FoundChoice,
  MoreBuys,
} from "../../../shared/buildings/choice-types.ts";
import type { Sweep } from "../../../shared/buildings/shown-states.ts";
import { hasStock, workForceOf } from "../../../shared/buildings/stock-settings.ts";
import { curveBags, usualMore } from "../../../shared/buildings/usual-more.ts";
import type { Failure } from "../../../shared/failure.ts";
import { engine } from "../../engine.ts";
import { follow } from "../follow.ts";
import { unitSystem } from "../screen.ts";
import { sweepWhole } from "./checking.ts";
import { listed } from "./listed.ts";
import { stock, stockNow } from "./stock.ts";
import { untilWaterH, workStart } from "./times.ts";

/** What is typed must rest so long before it is chosen anew, milliseconds. */
const SETTLE_MS = 250;
const CURVE_POINTS = 24;

/** What is to be chosen from now; null before all are checked, and without stock. */
const toChoose: ReadonlySignal<ChoiceQuestion | null> = computed(() => {
  const sweep = sweepWhole.value;
  return sweep && hasStock(stock.value) ? questionFor(sweep) : null;
});

function questionFor(sweep: Sweep): ChoiceQuestion {
  const weights = new Map(listed.value?.buildings.map(({ id, weight }) => [id, weight]));
  const { closeBeforeH, byOwnWater } = stock.value;
  const buildings = [...sweep.checked.values()].map((each) => ({
    ...each,
    weight: weights.get(each.id) ?? each.weight,
  }));
  const candidates = candidatesOf(buildings, sweep.groups, {
    startAtS: workStart.value?.atS ?? null,
    marginH: closeBeforeH,
  });
  const workForce = workForceOf(stock.value, byOwnWater ? null : untilWaterH.value);
  return { candidates, stock: stockNow.value, workForce };
}

const choosing = follow(toChoose, {
  overtaken: "cancelled",
  restMs: SETTLE_MS,
  ask: (question, signal) => engine.chooseLines({ question }, { signal }),
});

/** Asked after the choice, which comes first. */
const chosenFor = computed(() => (choosing.isCurrent.value ? toChoose.value : null));

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

/** Keeps the choice in step with check and stock. */
export function keepChosen(): () => void {
  const stops = [choosing.keep(), moreBuying.keep(), drawingCurve.keep()];
  return () => {
    for (const stop of stops) stop();
  };
}
