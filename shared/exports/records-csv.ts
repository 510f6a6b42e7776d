import { lengthUnit } from "../units.ts";
import { DISCLAIMER } from "../words/cautions.ts";
import { leaveWords } from "../words/leave.ts";
import { mustFixLead, mustFixOf, shortCautions } from "../words/line-state.ts";
import { type Cell, csvText, type WriteRows } from "./csv.ts";
import type { Exported, Named } from "./exported.ts";
import { lineFacts } from "./line-state.ts";

/** Facts of the line that stand in every row, before its own figures; others follow after them. */
const WHO = ["site", "line_letter", "line"];

/**
 * Records of a line as CSV (RFC 4180). The head names every column with its unit; the column `row` says what a
 * row is: what must be fixed and the cautions come first, each in `note`, then the records. `finding` is the kind
 * and figures of what must be fixed, SI, as JSON.
 * @param kind what a record is called in `row`
 * @param head names of a record's columns, also where there are none
 * @param write makes text of the rows; CSV when left out
 */
export function recordsCsv(
  exported: Exported,
  kind: string,
  head: readonly string[],
  records: readonly Named[],
  write: WriteRows = csvText,
): string {
  const { plan, checks, system } = exported;
  const facts = lineFacts(exported);
  const cells = (names: readonly string[]) => names.map((name) => cellOf(facts[name] ?? null));
  const mustFix = mustFixOf(checks, system);
  const blanks = head.map(() => null);
  const about = [
    "vertical_datum",
    `line_without_elevation_data_${lengthUnit(system)}`,
    "must_fix_count",
  ];
  const noted = (row: string, note: string, finding: string | null = null): Cell[] => [
    ...[row, ...cells(WHO), note, ...blanks],
    ...[...cells(about), finding],
  ];
  return write([
    [...["row", ...WHO, "note", ...head], ...[...about, "finding"]],
    ...(mustFix.length > 0 ? [noted("Must fix", mustFixLead(mustFix.length))] : []),
    ...mustFix.map(({ what, remedy, finding }) =>
      noted("Must fix", `${what} ${remedy}`, JSON.stringify(finding)),
    ),
    noted("Leave", leaveWords(plan, system)),
    ...shortCautions(exported).map((caution) => noted("Caution", caution)),
    noted("Note", DISCLAIMER),
    ...records.map((record): Cell[] => [
      ...[kind, ...cells(WHO), null, ...head.map((name) => cellOf(record[name] ?? null))],
      ...[...cells(about), null],
    ]),
  ]);
}

/** A plain decimal below zero is a number: as text it would read as a formula. */
function cellOf(value: Named[string]): Cell {
  if (typeof value === "boolean") return String(value);
  return typeof value === "string" && /^-\d+(?:\.\d+)?$/.test(value) ? Number(value) : value!;
}
