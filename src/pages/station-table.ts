import type { SizedLine } from "../../shared/sizing-types.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { type Cell, csvText } from "./csv.ts";
import { lineStateCells, lineStateHead } from "./line-state-columns.ts";
import { stationColumns } from "./station-columns.ts";

/**
 * The stations of one alternative as CSV (RFC 4180): a head with the unit of each column, one row a station,
 * numbers rounded as on the screen; where reaches differ, what each station is built as. Cells without ground
 * data are empty.
 */
export function stationTableCsv(
  line: Pick<SizedLine, "name" | "stations" | "reaches" | "totals">,
  system: UnitSystem,
  mustFix: number,
): string {
  const columns = stationColumns(line);
  const head = columns.map((column) => {
    const unit = column.unit(system);
    return unit ? `${column.title} (${unit})` : column.title;
  });
  const rows = line.stations.map((station): Cell[] => [
    line.name,
    ...columns.map((column) => cellOf(column.value(station, system))),
    ...lineStateCells(line, mustFix, system),
  ]);
  return csvText([["Alternative", ...head, ...lineStateHead(system)], ...rows]);
}

/** A plain decimal stays a number, written as it was rounded; anything else is text. */
function cellOf(value: string | null): Cell {
  if (value === null) return null;
  return /^-\d+(?:\.\d+)?$/.test(value) ? Number(value) : value;
}
