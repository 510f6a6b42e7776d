import { isCounted } from "../../../shared/completeness.ts";
import type { GroundSummary } from "../../../shared/messages.ts";
import type { SizedLine } from "../../../shared/sizing-types.ts";
import { formatCount, formatLength, type UnitSystem } from "../../../shared/units.ts";
import { groundLine } from "../../../shared/words/ground-line.ts";
import { plan } from "../../document/store.ts";
import { accuracyNow, ground } from "../../live/ground.ts";
import { chosenLine } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { SurveyPart } from "../survey/survey-part.tsx";
import { AccuracyField } from "./accuracy-field.tsx";
import { AddressField } from "./address-field.tsx";
import { DatumNoteField } from "./datum-note-field.tsx";
import { GroundFacts } from "./ground-facts.tsx";
import { MarkAnswers } from "./mark-answers.tsx";
import { OpenGroundButton } from "./open-ground-button.tsx";

/** What the heights come from, and what their accuracy does to the answer. */
export function GroundBlock() {
  const summary = ground.value;
  const system = unitSystem.value;
  return (
    <Disclosure
      id="ground"
      title="Elevation data"
      summary={summary ? oneLine(summary, system) : "none open"}
    >
      {!summary && (
        <p class="hint">
          Open the elevation data of the site: GeoTIFF, COG or ASCII grid, one file or the tiles of
          one survey. It stays on this machine.
        </p>
      )}
      {summary && <p class="ground-line">{groundLine(summary, plan.value, system)}</p>}
      <OpenGroundButton label="Elevation data files" />
      <AddressField />
      {summary && <GroundFacts summary={summary} system={system} />}
      {summary && <MarkAnswers summary={summary} />}
      <AccuracyField />
      <p class="hint">
        <AccuracyLine line={chosenLine.value} system={system} />
      </p>
      <DatumNoteField />
      <SurveyPart />
    </Disclosure>
  );
}

function oneLine(summary: GroundSummary, system: UnitSystem): string {
  const cellM = Math.max(summary.cellXM, summary.cellYM);
  return `${formatLength(cellM, system)} cells`;
}

function AccuracyLine({ line, system }: { line: SizedLine | null; system: UnitSystem }) {
  const { rmseM } = accuracyNow.value;
  const range = `±${formatLength(rmseM, system, 2)} in height`;
  const low = line?.totalsGroundHigh;
  const high = line?.totalsGroundLow;
  if (!low || !high || !isCounted(line)) return <>{range}</>;
  return (
    <>
      {range}: {formatCount(low.bags)} to {formatCount(high.bags)} bags
    </>
  );
}
