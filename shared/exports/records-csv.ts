import { mustFixCount } from "../completeness.ts";
import { letterOfLine } from "../line-letter.ts";
import { lengthIn, lengthUnit } from "../units.ts";
import { DISCLAIMER } from "../words/cautions.ts";
import { leaveWords } from "../words/leave.ts";
import { mustFixLead, mustFixOf, shortCautions } from "../words/line-state.ts";
import { type Cell, csvText } from "./csv.ts";
import type { Exported, Named } from "./exported.ts";

/**
 * Records of a line as CSV (RFC 4180). The head names every column with its unit; the column `row` says what a
 * row is: what must be fixed and the cautions come first, each in `note`, then the records. `finding` is the kind
 * and figures of what must be fixed, SI, as JSON.
 * @param kind what a record is called in `row`
 * @param head names of a record's columns, also where there are none
 */
export function recordsCsv(
  exported: Exported,
  kind: string,
  head: readonly string[],
  records: readonly Named[],
): string {
  const { plan, line, checks, verticalDatum, system } = exported;
  const who = [plan.title, letterOfLine(plan, line.id), line.name];
  const mustFix = mustFixOf(checks, system);
  const count = mustFixCount(checks);
  const noData = `line_without_elevation_data_${lengthUnit(system)}`;
  const noDataLength = Number(lengthIn(line.totals.lengthNoDataM, system).toFixed(1));
  const blanks = head.map(() => null);
  const noted = (row: string, note: string, finding: string | null = null): Cell[] => [
    ...[row, ...who, note, ...blanks],
    ...[verticalDatum, noDataLength, count, finding],
  ];
  return csvText([
    [
      ...["row", "site", "line_letter", "line", "note", ...head],
      ...["vertical_datum", noData, "must_fix_count", "finding"],
    ],
    ...(count > 0 ? [noted("Must fix", mustFixLead(count))] : []),
    ...mustFix.map(({ what, remedy, finding }) =>
      noted("Must fix", `${what} ${remedy}`, JSON.stringify(finding)),
    ),
    noted("Leave", leaveWords(plan, system)),
    ...shortCautions(checks, system).map((caution) => noted("Caution", caution)),
    noted("Note", DISCLAIMER),
    ...records.map((record): Cell[] => [
      ...[kind, ...who, null, ...head.map((name) => cellOf(record[name] ?? null))],
      ...[verticalDatum, noDataLength, count, null],
    ]),
  ]);
}

/** A plain decimal below zero is a number: as text it would read as a formula. */
function cellOf(value: Named[string]): Cell {
  if (typeof value === "boolean") return String(value);
  return typeof value === "string" && /^-\d+(?:\.\d+)?$/.test(value) ? Number(value) : value!;
}
