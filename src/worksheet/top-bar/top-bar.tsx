import { GROUND_FILES } from "../../../shared/raster-files.ts";
import "./top-bar.css";
import { useState } from "preact/hooks";
import { edit } from "../../document/edits/alternatives.ts";
import { plan, redo, redoNote, undo, undoNote } from "../../document/store.ts";
import { openAny, savePlan } from "../../live/actions.ts";
import { flipTheme, pagesOpen, theme, unitSystem } from "../../live/screen.ts";
import { chooseUnits } from "../../live/units-choice.ts";
import { FileButton } from "../../ui/file-button.tsx";
import { IconButton } from "../../ui/icon-button.tsx";
import { Icon, Mark } from "../../ui/icons.tsx";
import { TextField } from "../../ui/text-field.tsx";
import { Alternatives } from "./alternatives.tsx";
import { KeysDialog } from "./keys-dialog.tsx";

const OPENABLE = `.geojson,.json,${GROUND_FILES}`;

/** The bar across the top: whose plan this is, its alternatives, and what belongs to the whole of it. */
export function TopBar() {
  return (
    <header class="top-bar">
      <div class="brand">
        <Mark />
        <h1>Drystead</h1>
        <TextField
          class="plan-title"
          label="Title of the plan"
          labelHidden
          value={plan.value.title}
          placeholder="Untitled plan"
          onText={(title) => {
            if (title === "") return;
            edit({ note: "Rename the plan", change: (now) => ({ ...now, title }) });
          }}
        />
      </div>
      <Alternatives />
      <Acts />
    </header>
  );
}

function Acts() {
  const [keys, setKeys] = useState(false);
  const undoing = undoNote.value;
  const redoing = redoNote.value;
  const isDay = theme.value === "light";
  return (
    <div class="acts">
      <IconButton
        icon="undo"
        label={undoing ? `Undo: ${undoing}` : "Nothing to undo"}
        keys="Control+Z"
        disabled={undoing === null}
        onPress={undo}
      />
      <IconButton
        icon="redo"
        label={redoing ? `Redo: ${redoing}` : "Nothing to redo"}
        keys="Control+Shift+Z"
        disabled={redoing === null}
        onPress={redo}
      />
      <FileButton
        label="Plan or elevation data files"
        accept={OPENABLE}
        multiple
        class="icon-button"
        tip="Open a plan or elevation data"
        onFiles={(files) => void openAny(files)}
      >
        <Icon name="open" />
      </FileButton>
      <IconButton icon="save" label="Save the plan" keys="Control+S" onPress={savePlan} />
      <UnitSwitch />
      <button type="button" class="text-button" onClick={flipTheme}>
        {isDay ? "Night" : "Day"}
      </button>
      <button
        type="button"
        class="text-button"
        onClick={() => {
          pagesOpen.value = true;
        }}
      >
        Pages
      </button>
      <IconButton icon="keys" label="Keys" onPress={() => setKeys(true)} />
      <KeysDialog open={keys} onClose={() => setKeys(false)} />
    </div>
  );
}

function UnitSwitch() {
  const choices = [
    { system: "us", label: "ft", name: "Feet and pounds" },
    { system: "metric", label: "m", name: "Meters and kilograms" },
  ] as const;
  return (
    <fieldset class="unit-switch">
      <legend class="unseen">Units</legend>
      {choices.map(({ system, label, name }) => (
        <label key={system} title={name}>
          <input
            type="radio"
            name="unit-system"
            aria-label={name}
            checked={unitSystem.value === system}
            onChange={() => chooseUnits(system)}
          />
          <span>{label}</span>
        </label>
      ))}
    </fieldset>
  );
}
