import type { Exported, Named } from "./exported.ts";
import { recordsCsv } from "./line-csv.ts";
import { lineStateProperties, pointCollection } from "./line-geojson.ts";
import { fileName, stationColumns } from "./station-columns.ts";

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

/** The stakes of a line as GeoJSON points (RFC 7946, WGS 84), each with the figures that the CSV file has. */
export function stakesGeoJson(exported: Exported): string {
  const { line, system } = exported;
  const state = lineStateProperties(exported);
  const columns = stationColumns(line);
  return pointCollection(
    line.stations.map((station) => {
      const figures = columns.map((column) => {
        const value = column.value(station, system);
        const known = column.isNumber && value !== null ? Number(value) : value;
        return [fileName(column, system), known];
      });
      return { at: station, properties: { ...Object.fromEntries(figures), ...state } };
    }),
  );
}
