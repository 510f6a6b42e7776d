import { computed, effect, signal } from "@preact/signals";
import { asFailure, type Failure } from "../../shared/failure.ts";
import type { CrossSection, SizedLine } from "../../shared/sizing-types.ts";
import { plan } from "../document/store.ts";
import { engine } from "../engine.ts";
import { chosenLine, markedM } from "../state.ts";

/** Ground asked for beyond the toes, metres. */
export const sectionMarginM = signal(3);
/** The section last drawn by the engine, and why there is none if it refused. */
export const sectionNow = signal<CrossSection | null>(null);
export const sectionFailure = signal<Failure | null>(null);

/** Chainage the section is wanted at: the marked one, else that of the greatest height. */
const sectionAtM = computed(() => {
  const line = chosenLine.value;
  if (!line) return null;
  const wished = markedM.value ?? line.totals.greatestHeightAtM;
  return Math.min(Math.max(0, wished), line.totals.lengthM);
});

let asked = 0;
let inFlight = false;
let frame = 0;

/**
 * Keeps {@link sectionNow} at the wanted station: at most one request per frame and one under way, the newest
 * next; an answer to an older question is dropped.
 */
export function keepSection(): () => void {
  const stop = effect(() => {
    const wanted = chosenLine.value && plan.value && sectionAtM.value !== null;
    sectionMarginM.value;
    asked += 1;
    if (!wanted) {
      sectionNow.value = null;
      sectionFailure.value = null;
      return;
    }
    schedule();
  });
  return () => {
    stop();
    asked += 1;
    cancelAnimationFrame(frame);
    frame = 0;
  };
}

function schedule(): void {
  if (inFlight || frame !== 0) return;
  frame = requestAnimationFrame(() => {
    frame = 0;
    void ask();
  });
}

async function ask(): Promise<void> {
  const line = chosenLine.peek();
  const chainageM = sectionAtM.peek();
  if (!line || chainageM === null) return;
  const turn = asked;
  inFlight = true;
  try {
    const request = { plan: plan.peek(), id: line.id, chainageM, marginM: sectionMarginM.peek() };
    const answer = await engine.crossSection(request);
    if (turn === asked || isStillOf(line)) {
      sectionNow.value = answer;
      sectionFailure.value = null;
    }
  } catch (thrown) {
    if (turn === asked) {
      sectionNow.value = null;
      sectionFailure.value = asFailure(thrown);
    }
  } finally {
    inFlight = false;
    if (turn !== asked) schedule();
  }
}

/** While the pointer runs along one line, the section a frame behind it is still worth showing. */
function isStillOf(line: SizedLine): boolean {
  return chosenLine.peek()?.id === line.id;
}
