import type { Failure } from "../../shared/failure.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { failureWords } from "../../shared/words/failure.ts";
import { note } from "../../shared/words/terminal.ts";
import type { Terminal } from "./verb.ts";

/** Says what was repaired, left out or assumed. @param of begins each, e.g. `culverts.zip: ` */
export function sayNotes(
  notes: readonly Failure[],
  system: UnitSystem,
  say: Terminal["say"],
  of = "",
): void {
  for (const each of notes) say(note(of + failureWords(each, system).message));
}
