import { computed, type ReadonlySignal } from "@preact/signals";
import { allChecks } from "../../shared/all-checks.ts";
import { mustFixCount } from "../../shared/completeness.ts";
import type { Check, SizedLine } from "../../shared/sizing-types.ts";
import type { TracedAlternative, WaterTrace, WetMask } from "../../shared/water-types.ts";
import { chosenId } from "../document/chosen.ts";
import { ground } from "./ground.ts";
import { WATER } from "./parts.ts";
import { questionOf } from "./question.ts";
import { chosenLine, traced } from "./results.ts";
import { levelAtMomentM, momentTraced, toTraceAtMoment } from "./time-now.ts";
import { uncounted } from "./uncounted.ts";

/** What is to be followed of the water now, whichever line is chosen; null without ground that can be counted on. */
export const toTrace = questionOf(WATER, () => (ground.value && !uncounted.value ? {} : null));

/** The water as followed for the plan as it stands; null while it is being followed, and when it cannot be. */
export const waterNow: ReadonlySignal<WaterTrace | null> = computed(() => {
  const last = traced.value;
  return last && last.of === toTrace.value ? last.trace : null;
});

/** The water with each alternative built, for the plan as it stands. */
export const tracedNow: ReadonlySignal<ReadonlyMap<string, TracedAlternative>> = computed(
  () => new Map(waterNow.value?.alternatives.map((each) => [each.id, each])),
);

/** The water with the chosen alternative built, for the plan as it stands. */
export const tracedLine: ReadonlySignal<TracedAlternative | null> = computed(
  () => tracedNow.value.get(chosenId.value ?? "") ?? null,
);

/** The last picture of the water; `isStale` when plan or choice has changed since. */
export const pictureNow: ReadonlySignal<{
  readonly masks: readonly WetMask[];
  readonly isStale: boolean;
} | null> = computed(() => {
  const last = traced.value;
  if (levelAtMomentM.value !== null) return momentPicture(last);
  if (!last) return null;
  return {
    masks: masksOf(last.trace),
    isStale: !waterNow.value || last.chosenId !== chosenId.value,
  };
});

/** The picture of the moment looked at; until that is there, what is shown, as stale. */
function momentPicture(last: { readonly trace: WaterTrace } | null) {
  const moment = momentTraced.value;
  const trace = (moment ?? last)?.trace;
  return trace ? { masks: masksOf(trace), isStale: moment?.of !== toTraceAtMoment.value } : null;
}

/** The pictures of the water: of all the ground, and on large ground of the surroundings of the plan. */
function masksOf({ mask, nearMask }: WaterTrace): readonly WetMask[] {
  return nearMask ? [mask, nearMask] : [mask];
}

/** Every check of a line, and of the water while that is known. */
export function checksOf(line: Pick<SizedLine, "id" | "checks">): readonly Check[] {
  return allChecks(line, waterNow.value);
}

/** How many things must be fixed on a line, by all that is known of it. */
export function mustFixOn(line: Pick<SizedLine, "id" | "checks">): number {
  return mustFixCount(checksOf(line));
}

/** The same of the chosen line; 0 before it is sized. */
export const mustFixOnChosen: ReadonlySignal<number> = computed(() =>
  chosenLine.value ? mustFixOn(chosenLine.value) : 0,
);

/** Every check of the chosen alternative: of its line, and of the water while that is known. */
export const chosenChecks: ReadonlySignal<readonly Check[]> = computed(() =>
  checksOf(chosenLine.value ?? { id: chosenId.value ?? "", checks: [] }),
);
