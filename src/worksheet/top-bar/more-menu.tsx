import { useState } from "preact/hooks";
import { SHAPE_FILES } from "../../../shared/imports/shape-files.ts";
import { GROUND_FILES } from "../../../shared/raster-files.ts";
import { OFFLINE_WORDS } from "../../../shared/words/offline.ts";
import { roomWords } from "../../../shared/words/storage-room.ts";
import { storageRoom } from "../../document/storage-room.ts";
import { redo, redoNote, undo, undoNote } from "../../document/store.ts";
import { openAny, savePlan } from "../../live/actions.ts";
import { baseMap } from "../../live/base-map.ts";
import { openBuildings } from "../../live/buildings/open.ts";
import { openField } from "../../live/field.ts";
import { ground } from "../../live/ground.ts";
import { openLesson } from "../../live/lesson.ts";
import { startNewPlan } from "../../live/new-plan.ts";
import { askNextBuilding } from "../../live/next-building.ts";
import { loadNewVersion, offlineState } from "../../live/offline.ts";
import { chosenLine } from "../../live/results.ts";
import { flipTheme, showAll, theme } from "../../live/screen.ts";
import { Dialog } from "../../ui/dialog.tsx";
import { FileButton } from "../../ui/file-button.tsx";
import { Menu, MenuItem } from "../../ui/menu.tsx";
import { RowBody } from "../row-body.tsx";
import { BaseMapFields } from "./base-map-fields.tsx";
import { ExamplePlans } from "./example-plans.tsx";
import { Keys } from "./keys.tsx";
import { KEYS_BUTTON_ID, OPEN_BUTTON_ID } from "./shortcuts.ts";
import { UnitSwitch } from "./unit-switch.tsx";

const OPENABLE = `${SHAPE_FILES},${GROUND_FILES}`;

const DIALOGS = {
  examples: { title: "Example plans", Body: ExamplePlans },
  "base-map": { title: "Base map", Body: BaseMapFields },
  keys: { title: "Keys", Body: Keys },
  sources: { title: "Sources and limits", Body: () => <RowBody of="SourcesAndLimits" /> },
} as const;

/** What belongs to the whole of the plan and to the screen, behind one word. */
export function MoreMenu() {
  const [shown, setShown] = useState<keyof typeof DIALOGS | null>(null);
  const close = () => setShown(null);
  return (
    <>
      <Menu label="More" text="More" class="act act-more">
        <Steps />
        <hr />
        <PlanFiles onExamples={() => setShown("examples")} />
        <hr />
        <MenuItem onChoose={openBuildings}>All buildings</MenuItem>
        <MenuItem disabled={!chosenLine.value} onChoose={openField}>
          Field views
        </MenuItem>
        <MenuItem onChoose={openLesson}>Lesson: slope, height, bags</MenuItem>
        <hr />
        <UnitSwitch />
        <MenuItem hint={theme.value === "dark" ? "on" : "off"} onChoose={flipTheme}>
          Night screen
        </MenuItem>
        <MenuItem hint={showAll.value ? "on" : "off"} onChoose={flipShowAll}>
          All lines on the map
        </MenuItem>
        <MenuItem hint={baseMap.value.on ? "on" : "off"} onChoose={() => setShown("base-map")}>
          Base map
        </MenuItem>
        <hr />
        <MenuItem id={KEYS_BUTTON_ID} hint="?" onChoose={() => setShown("keys")}>
          Keys
        </MenuItem>
        <MenuItem onChoose={() => setShown("sources")}>Sources and limits</MenuItem>
        {loadNewVersion.value && (
          <MenuItem onChoose={loadNewVersion.value}>Load the new version</MenuItem>
        )}
        <p class="menu-note">{OFFLINE_WORDS[offlineState.value]}</p>
        {storageRoom.value && <p class="menu-note">{roomWords(storageRoom.value)}</p>}
      </Menu>
      {Object.entries(DIALOGS).map(([key, { title, Body }]) => (
        <Dialog key={key} title={title} open={shown === key} onClose={close}>
          <Body onDone={close} />
        </Dialog>
      ))}
    </>
  );
}

function Steps() {
  const undoing = undoNote.value;
  const redoing = redoNote.value;
  return (
    <>
      <MenuItem
        label={undoing ? `Undo: ${undoing}` : "Nothing to undo"}
        hint="Ctrl Z"
        disabled={undoing === null}
        onChoose={undo}
      >
        {undoing ? `Undo: ${undoing}` : "Undo"}
      </MenuItem>
      <MenuItem
        label={redoing ? `Redo: ${redoing}` : "Nothing to redo"}
        hint="Ctrl Shift Z"
        disabled={redoing === null}
        onChoose={redo}
      >
        {redoing ? `Redo: ${redoing}` : "Redo"}
      </MenuItem>
    </>
  );
}

function PlanFiles({ onExamples }: { readonly onExamples: () => void }) {
  return (
    <>
      <FileButton
        id={OPEN_BUTTON_ID}
        label="Plan or elevation data files"
        accept={OPENABLE}
        multiple
        class="menu-item"
        onFiles={(files) => void openAny(files)}
      >
        <span>Open plan or elevation data</span>
        <span class="menu-hint">Ctrl O</span>
      </FileButton>
      <MenuItem hint="Ctrl S" onChoose={savePlan}>
        Save plan
      </MenuItem>
      <MenuItem onChoose={startNewPlan}>New plan</MenuItem>
      <MenuItem disabled={!ground.value} onChoose={askNextBuilding}>
        Next building, same river
      </MenuItem>
      <MenuItem onChoose={onExamples}>Example plans</MenuItem>
    </>
  );
}

function flipShowAll(): void {
  showAll.value = !showAll.value;
}
