import { computed, type ReadonlySignal, signal } from "@preact/signals";
import type { Failure } from "../../shared/failure.ts";
import type { CrossSection } from "../../shared/sizing-types.ts";
import { engine } from "../engine.ts";
import { toSize } from "./current.ts";
import { follow } from "./follow.ts";
import { lagOf } from "./lag.ts";
import { SIZING } from "./parts.ts";
import { questionOf } from "./question.ts";
import { chosenLine } from "./results.ts";
import { markedM } from "./screen.ts";

/** Ground asked for beyond the toes, metres. */
export const sectionMarginM = signal(3);
/** Chainage the section is wanted at: the marked one, else that of the greatest height. */
const sectionAtM = computed(() => {
  const line = chosenLine.value;
  if (!line) return null;
  const wantedM = markedM.value ?? line.totals.greatestHeightAtM;
  return Math.min(Math.max(0, wantedM), line.totals.lengthM);
});

const question = questionOf(SIZING, () => {
  const [sizing, id, chainageM] = [toSize.value, chosenLine.value?.id, sectionAtM.value];
  if (sizing === null || id === undefined || chainageM === null) return null;
  return { sizing, id, chainageM, marginM: sectionMarginM.value };
});
const sections = follow(question, {
  overtaken: "shown",
  ask: ({ plan, id, chainageM, marginM }) => engine.crossSection({ plan, id, chainageM, marginM }),
});

/** The section last drawn by the engine: while the pointer runs along a line, one a frame behind it. */
export const sectionNow: ReadonlySignal<CrossSection | null> = computed(() =>
  ofChosen(sections.answered.value),
);
/** Why there is none, when the engine refused it. */
export const sectionFailure: ReadonlySignal<Failure | null> = computed(() =>
  ofChosen(sections.failed.value),
);
/** True while the section that is shown is of a former plan. */
export const sectionLags: ReadonlySignal<boolean> = lagOf(
  computed(() => !sections.answered.value || sections.answered.value.of.sizing === toSize.value),
  sections.answered,
);

/** Keeps {@link sectionNow} at the wanted station. */
export const keepSection = sections.keep;

function ofChosen<T>(
  last: { readonly of: { readonly id: string }; readonly answer: T } | null,
): T | null {
  return last && last.of.id === chosenLine.value?.id ? last.answer : null;
}
