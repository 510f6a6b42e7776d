import { computed, type ReadonlySignal } from "@preact/signals";
import {
  type Built,
  builtOf,
  isToHeight,
  markMomentS,
  markOf,
  toCentimetre,
} from "../../shared/field/progress.ts";
import { type StakedStretch, stretchesOfStakes } from "../../shared/field/stakes.ts";
import type { BuildState, ProgressMark } from "../../shared/plan.ts";
import { builtNumber } from "../../shared/plan-number.ts";
import { recall, remember } from "../browser/remember.ts";
import { chosenAlternative } from "../document/chosen.ts";
import { markStretch } from "../document/edits/progress.ts";
import { plan } from "../document/store.ts";
import { chosenLine } from "../live/results.ts";
import { unitSystem } from "../live/screen.ts";
import { type AtStake, atStake } from "./at.ts";

const NAME = "drystead.field.name";

/** Number of the plan as it is, by which what is built counts; null before the line is sized. */
export const numberNow: ReadonlySignal<string | null> = computed(() => {
  const [line, alternative] = [chosenLine.value, chosenAlternative.value];
  return line && alternative ? builtNumber(plan.value, alternative, line) : null;
});

/** How far the stretch that begins at the stake is built; null where none begins. */
export const builtHere: ReadonlySignal<Built | null> = computed(() => {
  const [at, number] = [atStake.value, numberNow.value];
  if (!at?.stretch || number === null) return null;
  return builtOn(at.line.id, at.stretch, number);
});

/** How far a stretch of a line is built by the plan with a number. */
function builtOn(lineId: string, stretch: StakedStretch, number: string): Built {
  return builtOf(markOf(plan.value.progress ?? [], lineId, stretch), number);
}

/** The stretches of a line that are up to height by the plan as it is. */
export function stretchesToHeight({ line, staked }: AtStake): readonly StakedStretch[] {
  const number = numberNow.value;
  if (number === null) return [];
  return stretchesOfStakes(staked).filter((each) =>
    isToHeight(builtOn(line.id, each, number).state),
  );
}

/** Who marks on this device; empty until a name is typed. */
export function whoMarks(): string {
  return recall(NAME, "");
}

export function rememberWhoMarks(name: string): void {
  remember(NAME, name);
}

/** What is said of a stretch beside how far it is built. */
export type Remarks = Pick<ProgressMark, "by" | "clearedBy" | "note" | "photoId">;

/** Marks the stretch at the stake; what is not said anew stays as it was. @returns whether the plan took it */
export function markHere(state: BuildState, said: Partial<Remarks> = {}): boolean {
  const [at, number] = [atStake.peek(), numberNow.peek()];
  if (!at?.stretch || number === null) return false;
  const before = markOf(plan.peek().progress ?? [], at.line.id, at.stretch);
  const { clearedBy = "", note = "", photoId = "" } = before ?? {};
  const mark: ProgressMark = {
    ...{ lineId: at.line.id, state, planNumber: number },
    ...{ fromM: toCentimetre(at.stretch.fromM), toM: toCentimetre(at.stretch.toM) },
    atS: markMomentS(Date.now() / 1000, before),
    ...{ by: whoMarks(), clearedBy, note, photoId },
    ...said,
  };
  return markStretch(mark, unitSystem.peek());
}
