import { heightAccuracyWords } from "../../../shared/words/ground-chances.ts";
import { groundLine } from "../../../shared/words/ground-line.ts";
import { plan } from "../../document/store.ts";
import { accuracyNow, ground } from "../../live/ground.ts";
import { unitSystem } from "../../live/screen.ts";
import { simulatedLine } from "../../live/simulated.ts";
import { SurveyPart } from "../survey/survey-part.tsx";
import { AccuracyField } from "./accuracy-field.tsx";
import { AddressField } from "./address-field.tsx";
import { DatumNoteField } from "./datum-note-field.tsx";
import { ErrorFields } from "./error-fields.tsx";
import { GroundFacts } from "./ground-facts.tsx";
import { MarkAnswers } from "./mark-answers.tsx";
import { OpenGroundButton } from "./open-ground-button.tsx";

/** The elevation data that is open, its accuracy and the readings taken in the field. */
export function GroundBody() {
  const summary = ground.value;
  const system = unitSystem.value;
  return (
    <>
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
        {heightAccuracyWords(simulatedLine.value, accuracyNow.value.rmseM, system)}
      </p>
      <ErrorFields />
      <DatumNoteField />
      <SurveyPart />
    </>
  );
}
