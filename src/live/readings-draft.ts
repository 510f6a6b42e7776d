import { signal } from "@preact/signals";
import { type Failure, failureOf } from "../../shared/failure.ts";
import { heightOfInstrumentM, surveyOf } from "../../shared/survey/leveling.ts";
import { parseReadings, type ReadAs } from "../../shared/survey/parse-readings.ts";
import { chosenAlternative } from "../document/chosen.ts";
import { takeReadings } from "../document/edits/survey.ts";
import { plan } from "../document/store.ts";
import { chosenLine } from "./results.ts";
import { unitSystem } from "./screen.ts";

/** What is typed or pasted and not taken yet; stays when the worksheet's row is closed. */
export const readingsText = signal("");
/** What the figures are where no first line says so. */
export const readingsAs = signal<ReadAs>("rod");
/** Why what is typed was refused. */
export const readingsFailure = signal<Failure | null>(null);

/** Takes what is typed as ground at stakes of the chosen line, one step; what is refused stays, with the reason. */
export function takeReadingsTyped(): void {
  readingsFailure.value = take(readingsText.peek());
  if (!readingsFailure.peek()) readingsText.value = "";
}

/** Takes a CSV file; one that is refused can be put right where readings are typed. */
export async function openReadingsFile(file: File): Promise<void> {
  const text = await file.text();
  readingsFailure.value = take(text);
  readingsText.value = readingsFailure.peek() ? text.slice(0, MOST_SHOWN) : "";
}

/** Longer texts are cut where they are put before the person, characters. */
const MOST_SHOWN = 200_000;

function take(text: string): Failure | null {
  const [alternative, line] = [chosenAlternative.peek(), chosenLine.peek()];
  if (!alternative || !line) return failureOf("readings/no-line");
  const read = parseReadings(text, {
    ...{ readAs: readingsAs.peek(), system: unitSystem.peek() },
    lengthM: line.totals.lengthM,
    instrumentM: heightOfInstrumentM(surveyOf(plan.peek())),
  });
  if (!read.ok) return read.failure;
  takeReadings(alternative, read.value);
  return null;
}
