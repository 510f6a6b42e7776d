import { mustFixOf } from "../../shared/buildings/line-times.ts";
import type { BuildingRow } from "../../shared/buildings/rows.ts";
import { isFlooded } from "../../shared/buildings/shown-states.ts";
import type { Priority } from "../../shared/buildings/types.ts";
import { stateRemark } from "../../shared/words/building-states.ts";
import { chosenAtWords } from "../../shared/words/buildings-forecasts.ts";
import {
  cellWords,
  groupWords,
  openedWords,
  priorityChoice,
  priorityWords,
  RING_IT,
  rowName,
  TABLE,
  tickWords,
} from "../../shared/words/buildings-table.ts";
import { mustFixWords } from "../../shared/words/must-fix.ts";
import { bandChoices } from "../live/buildings/choosing.ts";
import { openInPlan } from "../live/buildings/in-plan.ts";
import { setPriority } from "../live/buildings/listed.ts";
import { byHand, tick } from "../live/buildings/stock.ts";
import { clockOffsetMin } from "../live/buildings/times.ts";
import { unitSystem } from "../live/screen.ts";

const ROW_PX = 27;
const SECOND_LINE_PX = 17;
const OPENED_PX = 22;
const CELLS = [
  "floor",
  "depth",
  "first-wet",
  "bags",
  "height",
  "person-hours",
  "latest-start",
] as const;
const PRIORITIES: readonly Priority[] = ["", "first", "never"];

/** Height of a row as {@link BuildingTableRow} draws it. */
export function rowHeightPx(row: BuildingRow, pickedId: string | null): number {
  const second = row.members.length > 1 ? SECOND_LINE_PX : 0;
  return ROW_PX + second + (row.id === pickedId ? OPENED_PX : 0);
}

/** Whether there is a line for the row that can be ticked. */
export function tickable({ state }: BuildingRow): boolean {
  return state === "chosen" || state === "can-be-ringed";
}

interface RowProps {
  readonly row: BuildingRow;
  /** It takes the focus when the table does. */
  readonly isActive: boolean;
  readonly isPicked: boolean;
  readonly onPick: () => void;
}

/** A building or the ring round a group, in figures. */
export function BuildingTableRow({ row, isActive, isPicked, onPick }: RowProps) {
  const about = { system: unitSystem.value, offsetMin: clockOffsetMin.value };
  const isGroup = row.members.length > 1;
  const mustFix = row.line && tickable(row) ? mustFixOf(row.line).length : 0;
  return (
    <tr
      class="county-row"
      tabIndex={isActive ? 0 : -1}
      aria-selected={isPicked}
      data-id={row.id}
      data-state={row.state}
      style={{ height: `${rowHeightPx(row, isPicked ? row.id : null)}px` }}
      onClick={onPick}
    >
      <th scope="row" class="county-col-name">
        <div class="county-name">
          <span class="county-mark">{row.mark}</span>
          <span class="county-named">
            <span class="county-called">
              <b title={rowName(row)}>{rowName(row)}</b>
              {mustFix > 0 && <i>{mustFixWords(mustFix)}</i>}
            </span>
            {isGroup && <small>{groupWords(row)}</small>}
            {isPicked && <Opened row={row} />}
          </span>
        </div>
      </th>
      {CELLS.map((column) => (
        <td key={column} class={`county-col-${column}`}>
          {cellWords(row, column, about)}
        </td>
      ))}
      <td class="county-col-priority">
        <PrioritySelect row={row} isActive={isActive} />
      </td>
      <td class="county-col-tick">
        <Tick row={row} isActive={isActive} />
      </td>
    </tr>
  );
}

function Opened({ row }: { readonly row: BuildingRow }) {
  const forecasts = bandChoices.value;
  const words = [
    ...openedWords(row, unitSystem.value),
    ...(forecasts && row.line ? [chosenAtWords(forecasts, row.id)] : []),
  ];
  return (
    <span class="county-opened">
      <small>{words.join(", ")}</small>
      {row.line && (
        <button
          type="button"
          class="county-open"
          onClick={(event) => {
            event.stopPropagation();
            openInPlan(row);
          }}
        >
          {TABLE.openInPlan} ›
        </button>
      )}
    </span>
  );
}

interface ControlProps {
  readonly row: BuildingRow;
  readonly isActive: boolean;
}

function PrioritySelect({ row, isActive }: ControlProps) {
  if (row.state === "dry" || row.members.length > 1) return <>{priorityWords(row.priority)}</>;
  return (
    <select
      aria-label={`Priority of ${row.name}`}
      data-set={row.priority !== ""}
      tabIndex={isActive ? 0 : -1}
      value={row.priority}
      onClick={(event) => event.stopPropagation()}
      onChange={(event) => {
        const wanted = event.currentTarget.value;
        setPriority(row.id, PRIORITIES.find((each) => each === wanted) ?? "");
      }}
    >
      {PRIORITIES.map((each) => (
        <option key={each} value={each}>
          {each === row.priority ? priorityWords(each) : priorityChoice(each)}
        </option>
      ))}
    </select>
  );
}

function Tick({ row, isActive }: ControlProps) {
  if (!tickable(row)) {
    return (
      <small>{isFlooded(row.state) || row.state === "no-data" ? stateRemark(row.state) : ""}</small>
    );
  }
  const hand = byHand.value;
  const isByHand = row.members.some((id) => hand.has(id));
  const isTicked = row.members.every((id) => hand.get(id) ?? row.state === "chosen");
  return (
    <input
      type="checkbox"
      aria-label={tickWords(row, isByHand)}
      title={isByHand ? TABLE.byHand : RING_IT.join(" ")}
      data-by-hand={isByHand}
      tabIndex={isActive ? 0 : -1}
      checked={isTicked}
      onClick={(event) => event.stopPropagation()}
      onChange={(event) => tick(row.members, event.currentTarget.checked)}
    />
  );
}
