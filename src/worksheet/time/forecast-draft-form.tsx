import { useId } from "preact/hooks";
import { lengthUnit } from "../../../shared/units.ts";
import {
  draftFailure,
  draftLevels,
  draftText,
  isDrafting,
  type Levels,
  levelsNow,
  openForecastFile,
  takeDraft,
} from "../../live/forecast-draft.ts";
import { unitSystem } from "../../live/screen.ts";
import { FailureText } from "../../ui/failure-text.tsx";
import { FileButton } from "../../ui/file-button.tsx";

const LEVELS: readonly { readonly levels: Levels; readonly label: string }[] = [
  { levels: "stage", label: "Stage at the gauge" },
  { levels: "elevation", label: "Elevation" },
];
const ROWS = 7;

/** Where a forecast is typed or pasted, row by row, or taken from a file. What is refused stays as typed. */
export function ForecastDraft({ replaces }: { readonly replaces: boolean }) {
  const id = useId();
  const failure = draftFailure.value;
  const unit = lengthUnit(unitSystem.value);
  return (
    <div class="forecast-draft">
      <fieldset class="choice">
        <legend class="unseen">What the levels are</legend>
        {LEVELS.map(({ levels, label }) => (
          <label key={levels}>
            <input
              type="radio"
              name="forecast-levels"
              checked={levelsNow() === levels}
              onChange={() => {
                draftLevels.value = levels;
              }}
            />
            {label}
          </label>
        ))}
      </fieldset>
      <label for={id}>One row for each time: time, level, and low and high if given</label>
      <textarea
        id={id}
        rows={ROWS}
        spellcheck={false}
        autocomplete="off"
        value={draftText.value}
        placeholder={`time, stage_${unit}, low_${unit}, high_${unit}\n2026-04-06 07:00 -05:00, 22.6, 22.4, 22.9`}
        aria-invalid={failure !== null}
        aria-describedby={failure ? `${id}-why` : undefined}
        onInput={(event) => {
          draftText.value = event.currentTarget.value;
        }}
      />
      {failure && (
        <p id={`${id}-why`} class="field-why" role="alert">
          <FailureText failure={failure} system={unitSystem.value} /> What you typed is kept
          {replaces ? "; until then the earlier forecast is used." : "."}
        </p>
      )}
      <p class="tool-row">
        <button type="button" class="tool-button" onClick={takeDraft}>
          Take this forecast
        </button>
        <FileButton
          label="Forecast file"
          accept=".csv,.txt,text/csv,text/plain"
          onFiles={([file]) => void openForecastFile(file!)}
        >
          Open a CSV file
        </FileButton>
        {replaces && (
          <button type="button" class="text-button" onClick={close}>
            Keep the earlier one
          </button>
        )}
      </p>
    </div>
  );
}

function close(): void {
  isDrafting.value = false;
  draftFailure.value = null;
  draftText.value = "";
}
