import "./order.css";
import { isCounted } from "../../shared/completeness.ts";
import {
  deliveries,
  gearRows,
  materialRows,
  ORDER_WORDS,
  type OrderRow,
  orderedFor,
  pumpRows,
} from "../../shared/words/order-sheet.ts";
import { plugRows } from "../../shared/words/pipes.ts";
import { LevelNotice } from "../drawing/level-notice.tsx";
import { type Piece, type Rows, Sheet } from "./sheet.tsx";
import type { SheetFrame } from "./title-block.tsx";

/** Empty rows under the deliveries that are known, for loads that come in parts. */
const EMPTY_DELIVERIES = 19;

/** What to get for the line, and by which deliveries; no figure where the counts are no answer. */
export function OrderSheet(frame: SheetFrame) {
  return <Sheet {...frame} name="Order" short="Order" pieces={piecesOf(frame)} />;
}

function piecesOf({ of }: SheetFrame): Piece[] {
  const { plan, line, checks, system } = of;
  const plugs = plugRows(plan, checks, system);
  const tools = [
    table(ORDER_WORDS.pumps, pumpRows(line, system)),
    ...(plugs.length > 0 ? [table(ORDER_WORDS.plugs, plugs)] : []),
    table(ORDER_WORDS.gear, gearRows(plan, system)),
  ];
  const note = <p class="order-foot">{ORDER_WORDS.blanks}</p>;
  if (!isCounted(line)) {
    return [
      <LevelNotice doubt={line.levelDoubt} system={system} />,
      <p>{ORDER_WORDS.notKnown}</p>,
      ...tools,
      note,
    ];
  }
  return [
    <LevelNotice doubt={line.levelDoubt} system={system} />,
    table(
      `${ORDER_WORDS.materials}. ${orderedFor(line, system)}`,
      materialRows(plan, line, system),
    ),
    ...tools,
    note,
    deliveryRows(of),
  ];
}

function table(title: string, rows: readonly OrderRow[]): Rows {
  return {
    rows: rows.map(({ name, amount, note }) => (
      <tr key={name}>
        <th scope="row">{name}</th>
        <td class="order-amount" data-blank={amount === null}>
          {amount}
        </td>
        <td>{note}</td>
      </tr>
    )),
    around: (shown) => (
      <section aria-label={title}>
        <h2>{title}</h2>
        <table class="order-table">
          <tbody data-rows>{shown}</tbody>
        </table>
      </section>
    ),
  };
}

function deliveryRows({ plan, line, system }: SheetFrame["of"]): Rows {
  const known = deliveries(plan, line, system);
  const empty = { what: "", amount: "", loads: null };
  const rows = [...known, ...Array.from({ length: EMPTY_DELIVERIES }, () => empty)];
  return {
    rows: rows.map(({ what, amount, loads }, index) => (
      <tr key={index}>
        <th scope="row">{what}</th>
        <td>{amount}</td>
        <td>{loads}</td>
        <td />
        <td />
        <td />
        <td>
          <span class="order-box" />
        </td>
      </tr>
    )),
    around: (shown) => (
      <section aria-label={ORDER_WORDS.deliveries}>
        <h2>{ORDER_WORDS.deliveries}</h2>
        <p>{ORDER_WORDS.notPlaced}</p>
        <table class="order-deliveries">
          <thead>
            <tr>
              {ORDER_WORDS.columns.map((head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody data-rows>{shown}</tbody>
        </table>
      </section>
    ),
  };
}
