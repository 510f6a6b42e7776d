import { useEffect, useId } from "preact/hooks";
import { timeOf } from "../../../shared/defaults.ts";
import { givenOf } from "../../../shared/failure.ts";
import { momentOf } from "../../../shared/time/forecast-time.ts";
import { lengthUnit, type UnitSystem } from "../../../shared/units.ts";
import { zoneWords } from "../../../shared/words/clock.ts";
import { plan } from "../../document/store.ts";
import {
  changeDraft,
  closeDraft,
  draftFailure,
  draftFile,
  draftLevels,
  draftRead,
  draftSeries,
  draftText,
  draftUnits,
  draftZone,
  type Levels,
  levelsNow,
  openForecastFile,
  takeDraft,
} from "../../live/forecast-draft.ts";
import { unitSystem } from "../../live/screen.ts";
import { FailureText } from "../../ui/failure-text.tsx";
import { FileButton } from "../../ui/file-button.tsx";
import { Understood } from "./forecast-understood.tsx";

const LEVELS: readonly { readonly levels: Levels; readonly label: string }[] = [
  { levels: "stage", label: "Stage at the gauge" },
  { levels: "elevation", label: "Elevation" },
];
const ROWS = 7;
const FILES = ".csv,.txt,.tsv,.rdb,.shef,.xml,.wml,text/csv,text/plain,text/xml";

/** Longer texts are read but not put before the person, characters. */
const MOST_SHOWN = 200_000;
const MOST_CHOICES = 12;

/**
 * Where a forecast is typed, pasted or opened from a file: what is understood of it is shown before it counts. What
 * is refused stays as typed.
 */
export function ForecastDraft({ replaces }: { readonly replaces: boolean }) {
  const id = useId();
  const system = unitSystem.value;
  const failure = draftFailure.value ?? refusedNow();
  const names = (failure && givenOf("forecast/which", failure)?.names) ?? [];
  const choices = names.slice(0, MOST_CHOICES);
  const unit = lengthUnit(system);
  const isLong = draftText.value.length > MOST_SHOWN;
  useEffect(() => {
    void changeDraft(() => {});
  }, []);
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
              onChange={() => set(() => (draftLevels.value = levels))}
            />
            {label}
          </label>
        ))}
      </fieldset>
      <div class="forecast-read-as">
        <ZoneField />
        <UnitField />
      </div>
      <label for={id}>One row for each time: time, level, and low and high if given</label>
      {isLong ? (
        <p class="hint">{draftFile.value} is too long to show here.</p>
      ) : (
        <textarea
          id={id}
          rows={ROWS}
          spellcheck={false}
          autocomplete="off"
          value={draftText.value}
          placeholder={`time, stage_${unit}\n04/06/2026 07:00 CDT, 22.6\nor SHEF, USGS RDB, WaterML 2.0`}
          aria-invalid={failure !== null}
          aria-describedby={failure ? `${id}-why` : undefined}
          onInput={(event) => {
            const { value } = event.currentTarget;
            set(() => (draftText.value = value));
          }}
        />
      )}
      {failure && (
        <p id={`${id}-why`} class="field-why" role="alert">
          <FailureText failure={failure} system={system} /> What you typed is kept
          {replaces ? "; until then the earlier forecast is used." : "."}
        </p>
      )}
      {choices.length > 0 && (
        <p class="tool-row">
          {choices.map((name) => (
            <button
              type="button"
              class="tool-button"
              key={name}
              onClick={() => set(() => (draftSeries.value = name))}
            >
              Use {name}
            </button>
          ))}
        </p>
      )}
      <Understood />
      <p class="tool-row">
        <button type="button" class="tool-button" onClick={() => void takeDraft()}>
          Take this forecast
        </button>
        <FileButton
          label="Forecast file"
          accept={FILES}
          onFiles={([file]) => void openForecastFile(file!)}
        >
          Open a file
        </FileButton>
        {replaces && (
          <button type="button" class="text-button" onClick={closeDraft}>
            Keep the earlier one
          </button>
        )}
      </p>
    </div>
  );
}

function set(change: () => void): void {
  void changeDraft(change);
}

/** What must be answered is asked while it is typed; other refusals wait until it is to be taken. */
function refusedNow() {
  const read = draftRead.value;
  if (!read || read.ok) return null;
  return ASKED.has(read.failure.code) ? read.failure : null;
}

const ASKED = new Set(["forecast/zone-needed", "forecast/which", "forecast/unit"]);

const ZONES: readonly (readonly [zone: string, label: string])[] = [
  ["America/New_York", "Eastern"],
  ["America/Chicago", "Central"],
  ["America/Denver", "Mountain"],
  ["America/Phoenix", "Arizona"],
  ["America/Los_Angeles", "Pacific"],
  ["America/Anchorage", "Alaska"],
  ["Pacific/Honolulu", "Hawaii"],
  ["America/Puerto_Rico", "Puerto Rico"],
  ["UTC", "UTC"],
];

function ZoneField() {
  const { startAt } = timeOf(plan.value);
  const start = startAt === null ? null : momentOf(startAt);
  const ofStart = start && zoneWords(start);
  const here = Intl.DateTimeFormat().resolvedOptions().timeZone;
  const isListed = ZONES.some(([zone]) => zone === here);
  return (
    <label>
      Clock of the times
      <select
        value={draftZone.value}
        onChange={(event) => {
          const { value } = event.currentTarget;
          set(() => (draftZone.value = value));
        }}
      >
        <option value="">as they say</option>
        {ofStart && <option value={ofStart}>{ofStart}, as the start of work</option>}
        {ZONES.map(([zone, label]) => (
          <option key={zone} value={zone}>
            {label}
          </option>
        ))}
        {!isListed && <option value={here}>{here}, as this device</option>}
      </select>
    </label>
  );
}

function UnitField() {
  return (
    <label>
      Unit where none is named
      <select
        value={draftUnits.value ?? ""}
        onChange={(event) => {
          const { value } = event.currentTarget;
          set(() => (draftUnits.value = value === "" ? null : (value as UnitSystem)));
        }}
      >
        <option value="">{lengthUnit(unitSystem.value)}, as the plan</option>
        <option value="us">ft</option>
        <option value="metric">m</option>
      </select>
    </label>
  );
}
