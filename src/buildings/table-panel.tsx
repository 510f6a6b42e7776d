import "./table.css";
import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import type { BuildingRow } from "../../shared/buildings/rows.ts";
import { floodedCount } from "../../shared/buildings/shown-states.ts";
import { SORT_COLUMNS, type SortColumn } from "../../shared/buildings/sort-rows.ts";
import {
  type BuildingTab,
  chosenWords,
  columnWords,
  floodedSoFarWords,
  RING_IT,
  TABLE,
  tabWords,
} from "../../shared/words/buildings-table.ts";
import { checkingNow } from "../live/buildings/checking.ts";
import { choiceShown } from "../live/buildings/choosing.ts";
import { onOneLine } from "../live/buildings/crew.ts";
import { listed } from "../live/buildings/listed.ts";
import {
  countsNow,
  listsNow,
  pickedId,
  showTab,
  sortBy,
  sortingNow,
  stateFilter,
  sweepNow,
  type TableList,
  tabNow,
} from "../live/buildings/shown.ts";
import { byHand, clearByHand, tick } from "../live/buildings/stock.ts";
import { unitSystem } from "../live/screen.ts";
import { useSize } from "../ui/use-size.ts";
import { FileButtons } from "./file-buttons.tsx";
import { BuildingTableRow, rowHeightPx, tickable } from "./table-row.tsx";
import { rowHeights, rowsInSight, scrolledTo } from "./window-rows.ts";

const HEAD_PX = 27;
/** Height of the table's own head, which covers the upper rows when it is scrolled. */
const COLUMNS_PX = 38;

type Item = { readonly head: string } | { readonly row: BuildingRow };

/** The buildings in figures, with tabs, and files of them. */
export function TablePanel({ onPick }: { readonly onPick: (row: BuildingRow) => void }) {
  return (
    <section class="county-table-place" aria-label={TABLE.all}>
      <Head />
      <Table onPick={onPick} />
    </section>
  );
}

function Head() {
  const choice = choiceShown.value?.choice ?? null;
  const counts = countsNow.value;
  const tab = tabNow.value;
  const isChecking = checkingNow.value?.phase === "checking";
  const title = isChecking && tab !== "chosen" ? TABLE.soFar : TABLE[tab];
  const note =
    tab === "chosen" && choice
      ? chosenWords(choice.chosen.length, counts.chosen)
      : floodedSoFarWords(floodedCount(counts), sweepNow.value.checked.size);
  const tabs: readonly BuildingTab[] = [...(choice ? (["chosen"] as const) : []), "flooded", "all"];
  const total = listed.value?.buildings.length ?? 0;
  return (
    <div class="county-table-head">
      <h2>{title}</h2>
      <p>{note}</p>
      {byHand.value.size > 0 && (
        <button type="button" class="text-button" onClick={clearByHand}>
          {TABLE.clearHand}
        </button>
      )}
      <FileButtons />
      <div class="county-tabs">
        {tabs.map((each) => (
          <button
            key={each}
            type="button"
            aria-pressed={tab === each && stateFilter.value === null}
            onClick={() => showTab(each)}
          >
            {tabWords(each, total)}
          </button>
        ))}
      </div>
    </div>
  );
}

function Table({ onPick }: { readonly onPick: (row: BuildingRow) => void }) {
  const lists = listsNow.value;
  const picked = pickedId.value;
  const items = useMemo(() => itemsOf(lists), [lists]);
  const heights = useMemo(
    () =>
      rowHeights(items.map((item) => ("row" in item ? rowHeightPx(item.row, picked) : HEAD_PX))),
    [items, picked],
  );
  const [frame, size] = useSize<HTMLDivElement>();
  const [scrollTop, setScrollTop] = useState(0);
  const [activeId, setActiveId] = useState<string | null>(null);
  const focusNext = useRef(false);
  const rows = items.flatMap((item, index) => ("row" in item ? [{ index, row: item.row }] : []));
  const active = rows.find(({ row }) => row.id === activeId) ?? rows[0];
  const hasFloors = useMemo(() => rows.some(({ row }) => row.floorM !== null), [items]);
  const { first, end } = rowsInSight(heights, scrollTop, size?.heightPx ?? 0);

  const bringIn = (index: number) => {
    const element = frame.current;
    if (!element) return;
    const heightPx = element.clientHeight - COLUMNS_PX;
    element.scrollTop = scrolledTo(heights, index, { scrollTop: element.scrollTop, heightPx });
    setScrollTop(element.scrollTop);
  };
  useEffect(() => {
    const at = rows.find(({ row }) => row.id === picked);
    if (at) bringIn(at.index);
  }, [picked]);
  useEffect(() => {
    if (!focusNext.current) return;
    focusNext.current = false;
    frame.current?.querySelector<HTMLElement>('tr[tabindex="0"]')?.focus();
  });
  const goTo = (place: number) => {
    const next = rows[Math.min(rows.length - 1, Math.max(0, place))];
    if (!next) return;
    focusNext.current = true;
    setActiveId(next.row.id);
    bringIn(next.index);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (!(event.target instanceof HTMLTableRowElement) || !active) return;
    const at = rows.findIndex(({ row }) => row.id === active.row.id);
    const page = Math.max(1, Math.floor((size?.heightPx ?? 0) / HEAD_PX) - 2);
    const to = {
      ...{ ArrowDown: at + 1, ArrowUp: at - 1, PageDown: at + page, PageUp: at - page },
      ...{ Home: 0, End: rows.length - 1 },
    }[event.key];
    if (to !== undefined) goTo(to);
    else if (event.key === "Enter") onPick(active.row);
    else if (event.key === " " && tickable(active.row)) {
      tick(active.row.members, active.row.state !== "chosen");
    } else return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <div
      class="county-table-scroll"
      ref={frame}
      onScroll={(event) => setScrollTop(event.currentTarget.scrollTop)}
    >
      <table class="county-table" aria-rowcount={rows.length + 1} data-floors={hasFloors}>
        <Columns />
        <tbody onKeyDown={onKeyDown}>
          <Spacer heightPx={heights.tops[first]!} />
          {items.slice(first, end).map((item) =>
            "row" in item ? (
              <BuildingTableRow
                key={item.row.id}
                row={item.row}
                isActive={item.row.id === active?.row.id}
                isPicked={item.row.id === picked}
                onPick={() => {
                  setActiveId(item.row.id);
                  onPick(item.row);
                }}
              />
            ) : (
              <tr key={item.head} class="county-row-head">
                <th scope="rowgroup">
                  <b>{item.head}</b>, {TABLE.fewestFirst}
                </th>
              </tr>
            ),
          )}
          <Spacer heightPx={heights.tops.at(-1)! - heights.tops[end]!} />
        </tbody>
      </table>
      {rows.length === 0 && <p class="county-none">{TABLE.none}</p>}
    </div>
  );
}

function itemsOf(lists: readonly TableList[]): readonly Item[] {
  return lists.flatMap(({ kind, rows }): Item[] => {
    const items = rows.map((row) => ({ row }));
    return kind === "not-chosen" && rows.length > 0 ? [{ head: TABLE.notChosen }, ...items] : items;
  });
}

function Spacer({ heightPx }: { readonly heightPx: number }) {
  if (heightPx <= 0) return null;
  return (
    <tr>
      <td aria-hidden="true" style={{ height: `${heightPx}px`, padding: 0, border: 0 }} />
    </tr>
  );
}

function Columns() {
  const system = unitSystem.value;
  const { by, descending } = sortingNow.value;
  const people = onOneLine.value;
  return (
    <thead>
      <tr>
        {SORT_COLUMNS.map((column) => (
          <th
            key={column}
            scope="col"
            class={`county-col-${column}`}
            aria-sort={by === column ? (descending ? "descending" : "ascending") : undefined}
          >
            <ColumnHead
              {...{ column, system, people }}
              arrow={arrowOf(by === column, descending)}
            />
          </th>
        ))}
        <th scope="col" class="county-col-tick">
          {RING_IT[0]}
          <br />
          {RING_IT[1]}
        </th>
      </tr>
    </thead>
  );
}

function arrowOf(isSorted: boolean, descending: boolean): string {
  if (!isSorted) return "";
  return descending ? " ▼" : " ▲";
}

interface ColumnHeadProps {
  readonly column: SortColumn;
  readonly system: "us" | "metric";
  readonly people: number | null;
  readonly arrow: string;
}

function ColumnHead({ column, system, people, arrow }: ColumnHeadProps) {
  const [first, second] = columnWords(column, system, people);
  const single = first === "" || second === "";
  return (
    <button type="button" onClick={() => sortBy(column)}>
      {single ? (
        first + second
      ) : (
        <>
          {first}
          <br />
          {second}
        </>
      )}
      <span aria-hidden="true">{arrow}</span>
    </button>
  );
}
