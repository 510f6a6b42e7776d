import type { GroundSummary } from "../../../shared/messages.ts";
import {
  formatCount,
  formatElevation,
  formatLength,
  formatShare,
  type UnitSystem,
} from "../../../shared/units.ts";
import { datumDoubtWords } from "../../../shared/words/datum-doubt.ts";
import { HEIGHT_UNIT_WORDS } from "../../../shared/words/ground-line.ts";
import { groundNoteWords } from "../../../shared/words/ground-notes.ts";
import { askUnitAgain } from "../../live/open-ground.ts";
import { Fact } from "../../ui/fact.tsx";

/** What an opened raster says of itself. */
export function GroundFacts({ summary, system }: { summary: GroundSummary; system: UnitSystem }) {
  const { columns, rows, cellXM, cellYM, files } = summary;
  const wide = formatLength(columns * cellXM, system, 0);
  const high = formatLength(rows * cellYM, system, 0);
  const from = summary.verticalUnitFrom === "file" ? "as the file states" : "as you said";
  return (
    <>
      <dl class="facts">
        <Fact name={files.length === 1 ? "File" : "Files"}>
          {files.length === 1
            ? summary.name
            : `${files.length}, ${summary.coarsestCellM ? `cells up to ${formatLength(summary.coarsestCellM, system, 2)}` : "tiles on one grid"}`}
        </Fact>
        <Fact name="Extent">
          {wide} × {high}
        </Fact>
        <Fact name="Resolution">
          {formatLength(cellXM, system, 2)} × {formatLength(cellYM, system, 2)} ·{" "}
          {formatCount(columns)} × {formatCount(rows)}
        </Fact>
        <Fact name="Lowest, highest">
          {formatElevation(summary.lowestM, system)}, {formatElevation(summary.highestM, system)}
        </Fact>
        <Fact name="Heights are in">
          {HEIGHT_UNIT_WORDS[summary.verticalUnit]}, {from}{" "}
          {summary.verticalUnitFrom === "person" && (
            <button type="button" class="text-button" onClick={askUnitAgain}>
              Change
            </button>
          )}
        </Fact>
        <Fact name="Vertical datum">{summary.verticalDatum ?? "the file does not state it"}</Fact>
        <Fact name="Horizontal">{summary.crs}</Fact>
        <Fact name="Without data">
          {summary.fromOverview && summary.holeShare > 0 ? "about " : ""}
          {formatShare(summary.holeShare)}
        </Fact>
      </dl>
      {summary.crsNote && <p class="hint">{datumDoubtWords(summary.crsNote, system)}</p>}
      {summary.notes.map(groundNoteWords).map((words) => (
        <p key={words} class="hint">
          {words}
        </p>
      ))}
    </>
  );
}
