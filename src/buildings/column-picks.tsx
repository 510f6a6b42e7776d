import type { VerticalUnit } from "../../shared/plan.ts";
import { BUILDINGS, fileWords } from "../../shared/words/buildings-answer.ts";
import { takeInWords } from "../../shared/words/footprint-notes.ts";
import { HEIGHT_UNIT_WORDS } from "../../shared/words/ground-line.ts";
import {
  idColumn,
  listedDoubtful,
  listedNotes,
  pickIdColumn,
  pickPriorityColumn,
  priorityColumn,
  takeIn,
  takenIn,
} from "../live/buildings/listed.ts";
import { footprintColumns, footprintLayer } from "../live/footprints.ts";
import { Disclosure } from "../ui/disclosure.tsx";
import { PickRow } from "../ui/pick-row.tsx";
import { ImportButton } from "./import-footprints.tsx";

const UNITS: readonly VerticalUnit[] = ["foot", "us-survey-foot", "metre"];

/** Which columns of the file say id, name, floor and priority, and what of it was left out, to be taken in. */
export function ColumnPicks() {
  const layer = footprintLayer.value;
  const picked = footprintColumns.value;
  const notes = listedNotes.value;
  const change = (next: Partial<typeof picked>) => {
    footprintColumns.value = { ...footprintColumns.peek(), ...next };
  };
  if (!layer) {
    return (
      <section class="county-pane county-columns">
        <ImportButton class="tool-button" words={BUILDINGS.importTitle} />
      </section>
    );
  }
  return (
    <section class="county-pane county-columns">
      <Disclosure
        id="county-columns"
        title={BUILDINGS.columns}
        level="part"
        summary={fileWords(layer.name, notes.length)}
      >
        <PickRow
          label={BUILDINGS.idFrom}
          none={BUILDINGS.ownIds}
          value={idColumn.value}
          options={layer.columns.all}
          onPick={pickIdColumn}
        />
        <PickRow
          label={BUILDINGS.nameFrom}
          value={picked.name}
          options={layer.columns.all}
          onPick={(name) => change({ name })}
          none={BUILDINGS.noColumn}
        />
        <PickRow
          label={BUILDINGS.floorFrom}
          value={picked.floor}
          options={layer.columns.figures}
          onPick={(floor) => change({ floor })}
          none={BUILDINGS.noColumn}
        />
        {picked.floor !== null && (
          <PickRow
            label={BUILDINGS.floorsIn}
            none={BUILDINGS.chooseUnit}
            value={picked.floorUnit}
            options={UNITS}
            words={(unit) => HEIGHT_UNIT_WORDS[unit as VerticalUnit]}
            onPick={(unit) => change({ floorUnit: UNITS.find((each) => each === unit) ?? null })}
          />
        )}
        <PickRow
          label={BUILDINGS.priorityFrom}
          value={priorityColumn.value}
          options={layer.columns.all}
          onPick={pickPriorityColumn}
          none={BUILDINGS.noColumn}
        />
        <p class="hint">{BUILDINGS.priorityHint}</p>
        {notes.map((note) => (
          <p key={note} class="hint">
            {note}
          </p>
        ))}
        {[...listedDoubtful.value].map(([kind, count]) => (
          <label key={kind} class="check-line">
            <input
              type="checkbox"
              checked={takenIn.value.has(kind)}
              onChange={(event) => takeIn(kind, event.currentTarget.checked)}
            />
            {takeInWords(kind, count)}
          </label>
        ))}
        <ImportButton class="tool-button" words={BUILDINGS.importAgain} />
      </Disclosure>
    </section>
  );
}
