import type { Failure } from "../../shared/failure.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { failureWords } from "../../shared/words/failure.ts";
import type { Terminal } from "./verb.ts";

/** Says what was repaired, left out or assumed. @param of begins each, e.g. `culverts.zip: ` */
export function sayNotes(
  notes: readonly Failure[],
  system: UnitSystem,
  say: Terminal["say"],
  of = "",
): void {
  for (const note of notes) say(`Note: ${of}${failureWords(note, system).message}`);
}
