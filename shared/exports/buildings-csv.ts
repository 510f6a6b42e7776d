import {
  aboutRecord,
  buildingCautions,
  buildingRecords,
  type ExportedBuildings,
  lineRecords,
} from "./buildings-records.ts";
import { type Cell, csvText } from "./csv.ts";
import type { Named } from "./exported.ts";

/**
 * All checked buildings as CSV (RFC 4180): notes first, then one row for each chosen line, then one for each
 * building. The head names every column with its unit; the column `row` says what a row is.
 */
export function buildingsCsv(exported: ExportedBuildings): string {
  const about = aboutRecord(exported);
  const lines = lineRecords(exported).map(({ record }) => record);
  const buildings = buildingRecords(exported).map(({ record }) => record);
  const head = Object.keys(buildings[0] ?? lines[0] ?? {});
  const blanks = head.map(() => null);
  const facts = Object.values(about).map(cellOf);
  const noted = (row: string, note: string): Cell[] => [row, note, ...blanks, ...facts];
  const figures = (row: string, record: Named): Cell[] => [
    ...[row, null],
    ...head.map((name) => cellOf(record[name] ?? null)),
    ...facts,
  ];
  return csvText([
    ["row", "note", ...head, ...Object.keys(about)],
    ...buildingCautions(exported).map((caution) => noted("Caution", caution)),
    ...lines.map((record) => figures("Line", record)),
    ...buildings.map((record) => figures("Building", record)),
  ]);
}

function cellOf(value: Named[string]): Cell {
  return typeof value === "boolean" ? String(value) : value!;
}
