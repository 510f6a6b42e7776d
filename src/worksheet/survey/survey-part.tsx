import "./survey.css";
import { useId } from "preact/hooks";
import type { Plan } from "../../../shared/plan.ts";
import type { SizedLine } from "../../../shared/sizing-types.ts";
import { surveyOf } from "../../../shared/survey/leveling.ts";
import { meanDifferenceM } from "../../../shared/survey/mean-difference.ts";
import { shownInstrument } from "../../../shared/survey/rod.ts";
import { LONGEST_ROD_M } from "../../../shared/survey/survey-schema.ts";
import { lengthUnit } from "../../../shared/units.ts";
import { correctionWords } from "../../../shared/words/ground-chances.ts";
import { surveyedWords } from "../../../shared/words/stakes-page.ts";
import {
  correctedWords,
  instrumentWords,
  meanDifferenceWords,
  readingCountWords,
  readingExample,
} from "../../../shared/words/survey.ts";
import { changeSetting } from "../../document/edits/settings.ts";
import { removeReadings, setLeveling } from "../../document/edits/survey.ts";
import { tell } from "../../document/notices.ts";
import { plan } from "../../document/store.ts";
import {
  openReadingsFile,
  readingsAs,
  readingsFailure,
  readingsText,
  takeReadingsTyped,
} from "../../live/readings-draft.ts";
import { chosenLine } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import { readPlace } from "../../live/typed-place.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { FailureText } from "../../ui/failure-text.tsx";
import { FileButton } from "../../ui/file-button.tsx";
import { NumberField } from "../../ui/number-field.tsx";
import { ELEVATION } from "../../ui/quantity.ts";
import { TextField } from "../../ui/text-field.tsx";

const ROWS = 5;
const AS = [
  { as: "rod", label: "Rod readings" },
  { as: "ground", label: "Ground elevations" },
] as const;

/** Benchmark and backsight for the stakes, and ground read in the field. */
export function SurveyPart() {
  const survey = surveyOf(plan.value);
  const { readings } = survey;
  const system = unitSystem.value;
  const notes = surveyedWords(chosenLine.value?.surveyed, system);
  return (
    <Disclosure
      id="ground-survey"
      title="Survey"
      level="part"
      summary={readingCountWords(readings.length)}
    >
      <Leveling />
      <p class="hint">{instrumentWords(shownInstrument(plan.value, system), system)}</p>
      <ReadingsForm />
      {notes.map((note) => (
        <p key={note} class="hint" data-survey="used">
          {note}
        </p>
      ))}
      <Correction />
      {readings.length > 0 && (
        <button type="button" class="text-button" onClick={removeReadings}>
          Remove the readings
        </button>
      )}
    </Disclosure>
  );
}

/** How the readings differ from the elevation data on average, and a way to correct all of it; never by itself. */
function Correction() {
  const system = unitSystem.value;
  const surveyed = chosenLine.value?.surveyed;
  const meanM = meanDifferenceM(surveyed);
  const { correctionM } = plan.value.ground;
  const words = correctedWords(correctionM, system);
  const nextM = meanM === null ? null : correctionM + meanM;
  return (
    <>
      {words && (
        <p class="hint" data-survey="corrected">
          {words}
        </p>
      )}
      {nextM !== null && meanM !== null && (
        <>
          <p class="hint" data-survey="difference">
            {meanDifferenceWords(meanM, readCount(surveyed), system)}
          </p>
          <button
            type="button"
            class="tool-button"
            onClick={() => changeSetting("ground.correctionM", CORRECTION, nextM)}
          >
            Correct all elevations by {correctionWords(nextM, system)}
          </button>
        </>
      )}
    </>
  );
}

function readCount(surveyed: SizedLine["surveyed"]): number {
  return (surveyed?.readings.length ?? 0) + (surveyed?.beside?.length ?? 0);
}

const CORRECTION = "the correction of all elevations";

function Leveling() {
  const { benchmark, backsightM } = surveyOf(plan.value);
  const system = unitSystem.value;
  const known = benchmark ?? { name: "", elevationM: null, at: null };
  return (
    <div class="survey-leveling">
      <NumberField
        system={system}
        label="Benchmark elevation"
        value={known.elevationM}
        quantity={ELEVATION}
        range={{ least: -500, most: 9000 }}
        blank="not set"
        onValue={(elevationM) => {
          const next = elevationM === null ? null : { ...known, elevationM };
          setLeveling(next ? "Set the benchmark" : "Remove the benchmark", { benchmark: next });
          return undefined;
        }}
      />
      {benchmark && <BenchmarkFields benchmark={benchmark} />}
      <NumberField
        system={system}
        label="Backsight on it"
        value={backsightM}
        quantity={ELEVATION}
        range={{ least: 0, most: LONGEST_ROD_M }}
        blank="not set"
        onValue={(value) => {
          setLeveling("Set the backsight", { backsightM: value });
          return undefined;
        }}
      />
    </div>
  );
}

type Benchmark = NonNullable<NonNullable<Plan["survey"]>["benchmark"]>;

function BenchmarkFields({ benchmark }: { readonly benchmark: Benchmark }) {
  const { at } = benchmark;
  const place = async (text: string) => {
    const read = text === "" ? null : await readPlace(text);
    if (read && !read.ok) return tell("error", read.failure);
    setLeveling("Place the benchmark", { benchmark: { ...benchmark, at: read?.value ?? null } });
  };
  return (
    <>
      <TextField
        label="Benchmark name"
        value={benchmark.name}
        placeholder="BM 1, brass cap, well pad"
        onText={(name) => setLeveling("Name the benchmark", { benchmark: { ...benchmark, name } })}
      />
      <TextField
        label="Its place: lon, lat or grid x, y"
        value={at ? at.map((degrees) => degrees.toFixed(7)).join(", ") : ""}
        placeholder="not placed"
        onText={(text) => void place(text)}
      />
    </>
  );
}

function ReadingsForm() {
  const id = useId();
  const failure = readingsFailure.value;
  const unit = lengthUnit(unitSystem.value);
  return (
    <div class="survey-readings">
      <fieldset class="choice">
        <legend class="unseen">What the figures are</legend>
        {AS.map(({ as, label }) => (
          <label key={as}>
            <input
              type="radio"
              name="readings-as"
              checked={readingsAs.value === as}
              onChange={() => {
                readingsAs.value = as;
              }}
            />
            {label}
          </label>
        ))}
      </fieldset>
      <label for={id}>
        Readings from the field: station and reading, one row for each stake; for ground beside the
        line name the columns station, offset, {readingsAs.value} (offset 12 L, 12 R, or + to the
        right)
      </label>
      <textarea
        id={id}
        rows={ROWS}
        spellcheck={false}
        autocomplete="off"
        value={readingsText.value}
        placeholder={`station, ${readingsAs.value}_${unit}\n${readingExample(readingsAs.value, unitSystem.value)}`}
        aria-invalid={failure !== null}
        aria-describedby={failure ? `${id}-why` : undefined}
        onInput={(event) => {
          readingsText.value = event.currentTarget.value;
        }}
      />
      {failure && (
        <p id={`${id}-why`} class="field-why" role="alert">
          <FailureText failure={failure} system={unitSystem.value} /> What you typed is kept; no
          reading was taken.
        </p>
      )}
      <p class="tool-row">
        <button type="button" class="tool-button" onClick={takeReadingsTyped}>
          Take these readings
        </button>
        <FileButton
          label="Readings file"
          accept=".csv,.txt,text/csv,text/plain"
          onFiles={([file]) => void openReadingsFile(file!)}
        >
          Open a CSV file
        </FileButton>
      </p>
    </div>
  );
}
