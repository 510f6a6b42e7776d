import type { Station } from "../sizing-types.ts";
import type { Exported, Named } from "./exported.ts";
import { recordsCsv } from "./records-csv.ts";
import { fileName, stationColumns } from "./station-columns.ts";

/** The figures of one stake under the names that all files have for them; null where there is no elevation data. */
export function stakeFigures(station: Station, { line, system }: Exported): Named {
  return Object.fromEntries(
    stationColumns(line).map((column) => {
      const value = column.value(station, system);
      const known = column.isNumber && value !== null ? Number(value) : value;
      return [fileName(column, system), known];
    }),
  );
}

/** The stakes of a line as CSV: one record a station; cells without elevation data are empty. */
export function stakesCsv(exported: Exported): string {
  const columns = stationColumns(exported.line);
  const { system, line } = exported;
  const head = columns.map((column) => fileName(column, system));
  const records = line.stations.map(
    (station): Named =>
      Object.fromEntries(columns.map((column, i) => [head[i], column.value(station, system)])),
  );
  return recordsCsv(exported, "Stake", head, records);
}
