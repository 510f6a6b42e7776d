import type { BuildingRow } from "../../../shared/buildings/rows.ts";
import { cellWords, rowName } from "../../../shared/words/buildings-table.ts";
import { lowBehindNames, lowBehindWords } from "../../../shared/words/low-behind.ts";
import {
  depthHead,
  moreNotRinged,
  RING_LIST,
  whyNotRinged,
} from "../../../shared/words/ring-list.ts";
import type { RingList } from "../../live/buildings/ring-list.ts";
import { byHand } from "../../live/buildings/stock.ts";
import { clockOffsetMin } from "../../live/buildings/times.ts";
import { unitSystem } from "../../live/screen.ts";
import type { Piece } from "../sheet-pages.tsx";

/** More rows than these stay out of the paper: they are in the CSV file. */
const MOST_ROWS = 600;
const { heads } = RING_LIST;

/** Buildings that flood, or may, and are in no line: with why, the first to get wet first. */
export function notRingedPieces({ notRinged, lowBehind }: RingList): readonly Piece[] {
  return [...notRingedTable(notRinged), ...(lowBehind.length > 0 ? [lowPiece(lowBehind)] : [])];
}

/** Buildings that the water does not reach over the ground and that lie lower: not flooded is not the last word of them. */
function lowPiece(names: readonly string[]): Piece {
  return (
    <div key="low">
      <h2>{RING_LIST.lowBehind}</h2>
      <p class="ring-list-note">{lowBehindWords(names.length)}</p>
      <p class="ring-list-note">{lowBehindNames(names)}</p>
    </div>
  );
}

function notRingedTable(notRinged: RingList["notRinged"]): readonly Piece[] {
  if (notRinged.length === 0) {
    return [
      <div key="none">
        <h2>{RING_LIST.notRinged}</h2>
        <p>
          {RING_LIST.notRingedNone} {RING_LIST.notFlooded}
        </p>
      </div>,
    ];
  }
  const more = notRinged.length - MOST_ROWS;
  return [
    {
      rows: notRinged.slice(0, MOST_ROWS).map((row) => <NotRinged key={row.id} row={row} />),
      around: (rows, goesOn) => (
        <>
          <h2>
            {RING_LIST.notRinged} {goesOn && <small>continued</small>}
          </h2>
          <table class="ring-list-table ring-list-not">
            <thead>
              <tr>
                <th class="ring-list-name">{heads.building}</th>
                <th>{depthHead(unitSystem.value)}</th>
                <th>{heads.firstWet}</th>
                <th class="ring-list-why">{heads.why}</th>
              </tr>
            </thead>
            <tbody data-rows>{rows}</tbody>
          </table>
        </>
      ),
    },
    <p key="after" class="ring-list-note">
      {more > 0 && `${moreNotRinged(more)} `}
      {RING_LIST.notFlooded}
    </p>,
  ];
}

function NotRinged({ row }: { readonly row: BuildingRow }) {
  const about = { system: unitSystem.value, offsetMin: clockOffsetMin.value };
  const isOff = byHand.value.get(row.id) === false;
  return (
    <tr>
      <td class="ring-list-name">{rowName(row)}</td>
      <td>{cellWords(row, "depth", about)}</td>
      <td>{cellWords(row, "first-wet", about)}</td>
      <td class="ring-list-why">
        {whyNotRinged(row, { priority: row.priority, isOff }, about.system)}
      </td>
    </tr>
  );
}
