import { computed, effect, type ReadonlySignal, signal } from "@preact/signals";
import type { Failure } from "../../shared/failure.ts";
import type { CrossSection } from "../../shared/sizing-types.ts";
import { engine } from "../engine.ts";
import { type Asked, askedNow, isCurrent } from "./current.ts";
import { lagOf } from "./lag.ts";
import { latest } from "./latest.ts";
import { chosenLine } from "./results.ts";
import { markedM } from "./screen.ts";

interface Question extends Asked {
  readonly id: string;
  readonly chainageM: number;
  readonly marginM: number;
}

const sections = latest(({ plan, id, chainageM, marginM }: Question) =>
  engine.crossSection({ plan, id, chainageM, marginM }),
);

/** Ground asked for beyond the toes, metres. */
export const sectionMarginM = signal(3);
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
  computed(() => !sections.answered.value || isCurrent(sections.answered.value.of)),
  sections.answered,
);

/** Chainage the section is wanted at: the marked one, else that of the greatest height. */
const sectionAtM = computed(() => {
  const line = chosenLine.value;
  if (!line) return null;
  const wished = markedM.value ?? line.totals.greatestHeightAtM;
  return Math.min(Math.max(0, wished), line.totals.lengthM);
});

/** Keeps {@link sectionNow} at the wanted station: one request under way, the newest next. */
export function keepSection(): () => void {
  const stop = effect(() => {
    const id = chosenLine.value?.id;
    const [chainageM, marginM] = [sectionAtM.value, sectionMarginM.value];
    if (id === undefined || chainageM === null) sections.drop();
    else sections.want({ ...askedNow(), id, chainageM, marginM });
  });
  return () => {
    stop();
    sections.drop();
  };
}

function ofChosen<T>(last: { readonly of: Question; readonly answer: T } | null): T | null {
  return last && last.of.id === chosenLine.value?.id ? last.answer : null;
}
