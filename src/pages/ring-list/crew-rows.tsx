import type { VNode } from "preact";
import type { CrewTurn } from "../../../shared/buildings/crew-list.ts";
import type { BuildingRow } from "../../../shared/buildings/rows.ts";
import { formatCount, grouped, lengthIn } from "../../../shared/units.ts";
import { rowName } from "../../../shared/words/buildings-table.ts";
import {
  crewTitle,
  heightHead,
  lateWords,
  lineMustFix,
  placeWords,
  RING_LIST,
  workHourWords,
} from "../../../shared/words/ring-list.ts";
import { listed } from "../../live/buildings/listed.ts";
import type { RingList } from "../../live/buildings/ring-list.ts";
import { workStart } from "../../live/buildings/times.ts";
import { unitSystem } from "../../live/screen.ts";
import type { Piece, Rows } from "../sheet-pages.tsx";

interface Turn {
  readonly row: BuildingRow;
  /** Null without crews. */
  readonly turn: CrewTurn | null;
  readonly people: number | null;
}

const { heads } = RING_LIST;

/** The chosen lines, a table for each crew in the order in which it builds them; one table without crews. */
export function crewPieces(list: RingList): readonly Piece[] {
  const rows = new Map(list.chosen.map((row) => [row.id, row]));
  if (list.crews.length === 0) {
    const turns = list.chosen.map((row): Turn => ({ row, turn: null, people: null }));
    return [tableOf(list, RING_LIST.order, RING_LIST.noPeople, turns)];
  }
  return list.crews.map(({ people, turns }, index) =>
    tableOf(
      list,
      crewTitle({ people, turns }, index, list.crews.length),
      index === 0 ? RING_LIST.crews : null,
      turns.map((turn): Turn => ({ row: rows.get(turn.id)!, turn, people })),
    ),
  );
}

function tableOf(list: RingList, title: string, note: string | null, turns: readonly Turn[]): Rows {
  return {
    rows: turns.map((turn) => <LineRow key={turn.row.id} {...turn} list={list} />),
    around: (rows, goesOn) => (
      <CrewTable title={title} note={goesOn ? null : note} goesOn={goesOn} rows={rows} />
    ),
  };
}

interface CrewTableProps {
  readonly title: string;
  readonly note: string | null;
  readonly goesOn: boolean;
  readonly rows: readonly VNode[];
}

function CrewTable({ title, note, goesOn, rows }: CrewTableProps) {
  return (
    <>
      <h2>
        {title} <small>{goesOn ? "continued" : RING_LIST.order}</small>
      </h2>
      {note && <p class="ring-list-note">{note}</p>}
      <table class="ring-list-table">
        <thead>
          <tr>
            <th class="ring-list-box">{heads.done}</th>
            <th class="ring-list-mark">{heads.mark}</th>
            <th class="ring-list-name">{heads.building}</th>
            <th>{heads.bags}</th>
            <th>{heads.people}</th>
            <th class="ring-list-time">{heads.start}</th>
            <th class="ring-list-time">
              {heads.begins}
              <br />
              {heads.doneBy}
            </th>
            <th class="ring-list-time">{heads.closed}</th>
            <th>{heightHead(unitSystem.value)}</th>
          </tr>
        </thead>
        <tbody data-rows>{rows}</tbody>
      </table>
    </>
  );
}

function LineRow({ row, turn, people, list }: Turn & { readonly list: RingList }) {
  const system = unitSystem.value;
  const start = workStart.value;
  const line = row.line!;
  const closeByH = list.closeByH.get(row.id);
  const late = turn ? lateWords(turn) : "";
  const mustFix = lineMustFix(line, system);
  const buildings = listed.value?.buildings.filter(({ id }) => row.members.includes(id)) ?? [];
  const [first] = buildings;
  const place = first?.parts[0]?.[0];
  return (
    <tr>
      <td class="ring-list-box">
        <span />
      </td>
      <td class="ring-list-mark">{row.mark}</td>
      <td class="ring-list-name">
        <b>{buildings.length > 1 ? buildings.map(({ name }) => name).join(", ") : rowName(row)}</b>
        {place && <small>{placeWords(place)}</small>}
        {mustFix && <em>{mustFix}</em>}
      </td>
      <td>{formatCount(line.bags)}</td>
      <td>{people === null ? "–" : formatCount(people)}</td>
      <td>
        <b>
          {turn === null || turn.latestH === null
            ? "not known"
            : workHourWords(turn.latestH, start, system, "down")}
        </b>
      </td>
      <td>
        {turn ? (
          <>
            {workHourWords(turn.beginsH, start, system, "down")}
            <br />
            {workHourWords(turn.doneH, start, system, "up")}
          </>
        ) : (
          "–"
        )}
      </td>
      <td>
        {closeByH === undefined ? "not known" : workHourWords(closeByH, start, system, "down")}
        {late && <em>{late}</em>}
      </td>
      <td>{grouped(lengthIn(line.greatestHeightM, system), system === "us" ? 1 : 2)}</td>
    </tr>
  );
}
