import { useState } from "preact/hooks";
import { asFailure } from "../../../shared/failure.ts";
import { loadPart } from "../../../shared/load-part.ts";
import type { VerticalUnit } from "../../../shared/plan.ts";
import { floorOf, nameOf } from "../../../shared/plan-footprints.ts";
import { formatCount, formatElevation } from "../../../shared/units.ts";
import { failureWords } from "../../../shared/words/failure.ts";
import { HEIGHT_UNIT_WORDS } from "../../../shared/words/ground-line.ts";
import { tell } from "../../document/notices.ts";
import {
  type FootprintLayer,
  footprintColumns,
  footprintLayer,
  isTaken,
  keepsOff,
  nearestFootprints,
  pick,
  placeMarked,
} from "../../live/footprints.ts";
import { footprintNotes } from "../../live/import-shapes.ts";
import { lookedAt } from "../../live/looked-at.ts";
import { unitSystem } from "../../live/screen.ts";
import { PickRow } from "../../ui/pick-row.tsx";

/** Most footprints listed at a time: the map shows all. */
const LISTED = 8;

const UNITS: readonly VerticalUnit[] = ["foot", "us-survey-foot", "metre"];

/** The imported footprints in words: which columns count, and those nearest to the middle of the map to pick from. */
export function FootprintList() {
  const layer = footprintLayer.value;
  const [text, setText] = useState("");
  if (!layer) return null;
  const at = placeMarked.value ?? lookedAt.value;
  const found = nearestFootprints(layer, at, text, LISTED);
  return (
    <fieldset class="footprints">
      <legend>
        {formatCount(layer.footprints.length)} footprints, {layer.name}
      </legend>
      {footprintNotes.value.map((note) => (
        <p key={note.code} class="hint">
          {failureWords(note, unitSystem.value).message}
        </p>
      ))}
      <Columns layer={layer} />
      <label class="footprint-filter">
        Address or other text
        <input type="search" value={text} onInput={(event) => setText(event.currentTarget.value)} />
      </label>
      <ul aria-label="Footprints, nearest first">
        {found.map((footprint) => {
          const floorM = floorOf(footprint, footprintColumns.value);
          const [lon, lat] = footprint.middle;
          return (
            <li key={`${lon} ${lat}`}>
              <label class="check-line">
                <input
                  type="checkbox"
                  checked={isTaken(footprint)}
                  onChange={() => pick(footprint)}
                />
                {nameOf(footprint, footprintColumns.value) ??
                  `at ${lon.toFixed(5)}, ${lat.toFixed(5)}`}
                {floorM !== null && `, floor ${formatElevation(floorM, unitSystem.value)}`}
              </label>
            </li>
          );
        })}
      </ul>
      {found.length === 0 && <p class="hint">No footprint has that text.</p>}
      <label class="check-line">
        <input
          type="checkbox"
          checked={keepsOff.value}
          onChange={(event) => {
            keepsOff.value = event.currentTarget.checked;
          }}
        />
        Keep found lines off the others
      </label>
      <button type="button" class="text-button" onClick={remove}>
        Remove these footprints
      </button>
    </fieldset>
  );
}

function remove(): void {
  void loadPart("the view of all buildings", () => import("../../live/buildings/listed.ts")).then(
    ({ removeFootprints }) => removeFootprints(),
    (thrown) => tell("error", asFailure(thrown)),
  );
}

function Columns({ layer }: { readonly layer: FootprintLayer }) {
  const { all, figures } = layer.columns;
  const chosen = footprintColumns.value;
  const change = (next: Partial<typeof chosen>) => {
    footprintColumns.value = { ...footprintColumns.peek(), ...next };
  };
  if (all.length === 0) return null;
  return (
    <div class="footprint-columns">
      <PickRow
        class=""
        label="Name from"
        none="no column"
        value={chosen.name}
        options={all}
        onPick={(name) => change({ name })}
      />
      {figures.length > 0 && (
        <PickRow
          class=""
          label="Floor from"
          none="no column"
          value={chosen.floor}
          options={figures}
          onPick={(floor) => change({ floor })}
        />
      )}
      {chosen.floor !== null && (
        <PickRow
          class=""
          label="Floors are in"
          none="choose the unit"
          value={chosen.floorUnit}
          options={UNITS}
          words={(unit) => HEIGHT_UNIT_WORDS[unit]}
          onPick={(floorUnit) => change({ floorUnit })}
        />
      )}
    </div>
  );
}
