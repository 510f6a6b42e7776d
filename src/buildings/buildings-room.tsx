import "./buildings.css";
import type { ComponentType } from "preact";
import { useEffect, useRef } from "preact/hooks";
import type { BuildingRow } from "../../shared/buildings/rows.ts";
import { BUILDINGS, listWords } from "../../shared/words/buildings-answer.ts";
import { TABLE } from "../../shared/words/buildings-table.ts";
import { dismiss, notices } from "../document/notices.ts";
import { plan } from "../document/store.ts";
import { checkIsCurrent, keepChecked } from "../live/buildings/checking.ts";
import { choiceShown, keepChosen } from "../live/buildings/choosing.ts";
import { keepListed, listed } from "../live/buildings/listed.ts";
import { leaveBuildings, ringListOpen } from "../live/buildings/open.ts";
import { pickedId } from "../live/buildings/shown.ts";
import { reportOf } from "../live/report.ts";
import { flipTheme, theme, unitSystem } from "../live/screen.ts";
import { Mark } from "../ui/icons.tsx";
import { Menu, MenuItem } from "../ui/menu.tsx";
import { Notices } from "../ui/notices.tsx";
import { CurvePanel } from "./curve-panel.tsx";
import type { LentMap } from "./lent-map.ts";
import { MapPanel } from "./map-panel.tsx";
import { StateBar } from "./state-bar.tsx";
import { TablePanel } from "./table-panel.tsx";
import { BuildingsWorksheet } from "./worksheet.tsx";

interface BuildingsRoomProps {
  readonly map: LentMap;
  /** What is to be said of a file of shapes that came. */
  readonly Questions: ComponentType;
}

let kept = false;

/** Check and choice go on as long as the page does: a person who comes back finds them. */
function keepOnce(): void {
  if (kept) return;
  kept = true;
  keepListed();
  keepChecked();
  keepChosen();
}

/** All buildings of a county over the planning screen: which flood, which can be ringed, which to ring. */
export function BuildingsRoom({ map, Questions }: BuildingsRoomProps) {
  const room = useRef<HTMLDivElement>(null);
  useEffect(() => {
    keepOnce();
    room.current?.focus();
  }, []);
  const isEmpty = listed.value === null;
  const isStale = choiceShown.value?.isStale || !checkIsCurrent.value;
  const pick = (row: BuildingRow) => {
    pickedId.value = row.id;
  };
  return (
    <div
      class="county"
      ref={room}
      tabIndex={-1}
      role="dialog"
      aria-label={BUILDINGS.name}
      data-empty={isEmpty}
      data-stale={isStale}
      data-printing={ringListOpen.value}
      inert={ringListOpen.value}
    >
      <header class="county-head">
        <Brand />
        {isEmpty ? <div class="county-bar" /> : <StateBar />}
        <Acts />
      </header>
      <aside class="county-sheet-place" aria-label={BUILDINGS.question}>
        <BuildingsWorksheet />
      </aside>
      <main class="county-map-place" aria-label="Map">
        <MapPanel map={map} onPick={pick} />
        <div class="county-over-map">
          <Questions />
          <Notices
            notices={notices}
            onDismiss={dismiss}
            reportOf={reportOf}
            system={unitSystem.value}
          />
        </div>
      </main>
      {!isEmpty && <TablePanel onPick={pick} />}
      {!isEmpty && <CurvePanel />}
    </div>
  );
}

function Brand() {
  const total = listed.value?.buildings.length ?? null;
  return (
    <div class="county-brand">
      <Mark />
      <div>
        <h1>Drystead</h1>
        <p>{listWords(plan.value.title, total)}</p>
      </div>
    </div>
  );
}

function Acts() {
  const isDark = theme.value === "dark";
  return (
    <div class="county-acts">
      <button type="button" class="act" onClick={leaveBuildings}>
        {BUILDINGS.onePlan}
      </button>
      {listed.value && (
        <button
          type="button"
          class="act"
          disabled={!choiceShown.value || choiceShown.value.isStale || !checkIsCurrent.value}
          onClick={() => {
            ringListOpen.value = true;
          }}
        >
          {TABLE.print}
        </button>
      )}
      <Menu label="More" text="More" class="act act-more">
        <MenuItem
          hint={unitSystem.value === "us" ? "ft" : "m"}
          onChoose={() => {
            unitSystem.value = unitSystem.peek() === "us" ? "metric" : "us";
          }}
        >
          Units
        </MenuItem>
        <MenuItem hint={isDark ? "on" : "off"} onChoose={flipTheme}>
          Night screen
        </MenuItem>
      </Menu>
    </div>
  );
}
