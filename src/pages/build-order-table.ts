import type { SizedLine } from "../../shared/sizing-types.ts";
import { hourText, hourWords } from "../../shared/time/clock-words.ts";
import type { LineTime, WorkStretch } from "../../shared/time/types.ts";
import { formatStation, lengthIn, lengthUnit, type UnitSystem } from "../../shared/units.ts";
import { type Cell, csvText } from "./csv.ts";
import { lineStateCells, lineStateHead } from "./line-state-columns.ts";

/** One column of the order of building, the same on paper and in the file. */
export interface OrderColumn {
  readonly title: string;
  unit(system: UnitSystem): string;
  value(stretch: WorkStretch, time: LineTime, system: UnitSystem, on?: "paper" | "file"): Cell;
}

/** Title of the one column of heights, which are written to a tenth. */
export const AHEAD_TITLE = "Crest above water, least";

const none = () => "";

/** Columns of the order of building. */
export const ORDER_COLUMNS: readonly OrderColumn[] = [
  { title: "Order", unit: none, value: ({ order }) => order },
  { title: "From", unit: none, value: ({ fromM }, _, system) => formatStation(fromM, system) },
  { title: "To", unit: none, value: ({ toM }, _, system) => formatStation(toM, system) },
  { title: "Crew", unit: none, value: ({ crew }) => crew },
  { title: "First bag", unit: none, value: ({ startH }, time, _, on) => clock(startH, time, on) },
  { title: "Last bag", unit: none, value: ({ finishH }, time, _, on) => clock(finishH, time, on) },
  { title: "Bags", unit: none, value: ({ bags }) => Math.round(bags) },
  {
    title: "Wet",
    unit: none,
    value: ({ wetH }, time, _, on) =>
      wetH === null ? (time.verdicts.length > 0 ? "stays dry" : null) : clock(wetH, time, on),
  },
  {
    title: AHEAD_TITLE,
    unit: lengthUnit,
    value: ({ leastAheadM }, _, system) =>
      leastAheadM === null ? null : Number(lengthIn(leastAheadM, system).toFixed(1)) || 0,
  },
];

/** True where the crest of a stretch comes nearer to the water than is asked, before it is done. */
export function isBehind({ leastSpareM }: WorkStretch): boolean {
  return leastSpareM !== null && leastSpareM < 0;
}

/** Stretches in the order of building. */
export function inOrder({ stretches }: LineTime): WorkStretch[] {
  return [...stretches].sort((a, b) => a.order - b.order);
}

/** The order of building as CSV (RFC 4180): slow pace, times as the forecast writes them (ISO 8601). */
export function buildOrderCsv(
  line: Pick<SizedLine, "name" | "totals">,
  time: LineTime,
  system: UnitSystem,
  mustFix: number,
): string {
  const head = ORDER_COLUMNS.map(({ title, unit }) => {
    const words = unit(system);
    return words ? `${title} (${words})` : title;
  });
  const rows = inOrder(time).map((stretch): Cell[] => [
    line.name,
    ...ORDER_COLUMNS.map((column) => column.value(stretch, time, system, "file")),
    ...lineStateCells(line, mustFix, system),
  ]);
  return csvText([["Alternative", ...head, ...lineStateHead(system)], ...rows]);
}

function clock(
  hours: number | null,
  { startAt, missing }: LineTime,
  on: "paper" | "file" = "paper",
): string {
  if (hours === null) return missing.length > 0 ? "not known" : "not within a year";
  return on === "file" ? hourText(startAt, hours) : hourWords(startAt, hours, { long: true });
}
