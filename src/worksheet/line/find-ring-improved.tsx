import { formatCount, formatLength } from "../../../shared/units.ts";
import { bagsForWords } from "../../../shared/words/counted.ts";
import { butOverLimit, searchNoteWords } from "../../../shared/words/search.ts";
import { unitsOf } from "../../../shared/words/units.ts";
import { unitSystem } from "../../live/screen.ts";
import type { Improved } from "../../live/search/improve.ts";
import { canCompare } from "./saving.ts";

/** What improving the chosen line came to, against the line as drawn before it was first improved. */
export function ImprovedNote({ result }: { result: Improved }) {
  const { before, after, notes } = result;
  const system = unitSystem.value;
  const fewer = before.bags - after.bags;
  const height = (m: number) => formatLength(m, system);
  return (
    <p class="hint" role="status">
      Improved: {bagsForWords(before, system)} as drawn to{" "}
      <strong>{bagsForWords(after, system)}</strong>
      {canCompare(before, after) &&
        `, ${formatCount(Math.abs(fewer))} ${fewer < 0 ? "more" : "fewer"} than as drawn`}
      {butOverLimit(after, system)}; greatest height {height(before.greatestHeightM)} to{" "}
      {height(after.greatestHeightM)}.{" "}
      {notes.map((note) => searchNoteWords(note, unitsOf(unitSystem.value))).join(" ")}
    </p>
  );
}
