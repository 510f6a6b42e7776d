import { computed, type ReadonlySignal } from "@preact/signals";
import type { SizedLine } from "../../shared/sizing-types.ts";
import {
  type Cure,
  cureOf,
  type KnownLine,
  type OverallVerdict,
  overallVerdict,
} from "../../shared/verdict.ts";
import { chosenId } from "../document/chosen.ts";
import { sized } from "./results.ts";
import { checksOf, tracedNow } from "./water-now.ts";

const known: ReadonlySignal<readonly KnownLine[]> = computed(() =>
  [...sized.value.values()].map(knownOf),
);

/** The verdict on each sized line, by its id. */
export const verdicts: ReadonlySignal<ReadonlyMap<string, OverallVerdict>> = computed(
  () => new Map(known.value.map((each) => [each.line.id, overallVerdict(each)])),
);

/** The verdict on the chosen line; null before it is sized. */
export const chosenVerdict: ReadonlySignal<OverallVerdict | null> = computed(
  () => verdicts.value.get(chosenId.value ?? "") ?? null,
);

/** Another line that cures what must be fixed on the chosen one; null where there is none. */
export const cureNow: ReadonlySignal<Cure | null> = computed(() => {
  const chosen = known.value.find(({ line }) => line.id === chosenId.value);
  const verdict = chosenVerdict.value;
  return chosen && verdict ? cureOf(chosen, verdict, known.value) : null;
});

function knownOf(line: SizedLine): KnownLine {
  return { line, checks: checksOf(line), traced: tracedNow.value.get(line.id) ?? null };
}
