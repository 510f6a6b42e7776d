import type { OnGrid } from "../messages.ts";
import type { LonLat } from "../plan.ts";
import type { Station } from "../sizing-types.ts";
import { lineStakes } from "../stakes/stakes.ts";
import { rodReading, shownInstrument } from "../survey/rod.ts";
import { lengthIn, lengthUnit } from "../units.ts";
import { foundWords, groundFromWords, tapeFigure } from "../words/stake-place.ts";
import type { WriteRows } from "./csv.ts";
import type { Exported, Named } from "./exported.ts";
import { recordsCsv } from "./records-csv.ts";
import { decimals } from "./rounded.ts";
import { stakeGrid } from "./stake-grid.ts";
import { fileName, stationColumns } from "./station-columns.ts";

/** The figures of one stake under the names that all files have for them; null where there is no elevation data. */
export function stakeFigures(station: Station, exported: Exported): Named {
  const { line, system } = exported;
  const figures = Object.fromEntries(
    stationColumns(line).map((column) => {
      const value = column.value(station, system);
      const known = column.isNumber && value !== null ? Number(value) : value;
      return [fileName(column, system), known];
    }),
  );
  return { ...figures, ...placeFigures(station, exported) };
}

/**
 * How a crew finds a stake and sets its mark: ties or what stands for them, tape and bearing from the stake before,
 * whose ground it is, and the rod readings where a level is set up.
 */
function placeFigures(station: Station, { plan, line, system }: Exported): Named {
  const stake = lineStakes(plan, line)[line.stations.indexOf(station)];
  if (!stake) return {};
  const { found, fromBefore } = stake;
  const unit = lengthUnit(system);
  const instrument = shownInstrument(plan, system);
  const rod = (m: number | null) =>
    instrument === null || m === null ? null : rodReading(instrument, m, system);
  const [first, second] = found.by === "ties" ? found.ties : [];
  const tape = (m: number | undefined) => (m === undefined ? null : Number(tapeFigure(m, system)));
  return {
    tie_1: first?.corner ?? null,
    [`tie_1_${unit}`]: tape(first?.distanceM),
    tie_2: second?.corner ?? null,
    [`tie_2_${unit}`]: tape(second?.distanceM),
    without_ties: foundWords(found, system),
    [`from_stake_before_${unit}`]:
      fromBefore && decimals(lengthIn(fromBefore.distanceM, system), system === "us" ? 1 : 2),
    bearing_from_stake_before_deg: fromBefore && decimals(fromBefore.bearingDeg, 1),
    ground_from: station.groundM === null ? null : groundFromWords(station),
    [`rod_for_top_of_levee_${unit}`]: rod(station.crestM),
    [`rod_for_ground_${unit}`]: rod(station.groundM),
  };
}

/**
 * The stakes of a line as CSV: one record a station; cells without elevation data are empty. East and north are on
 * the grid of the elevation data; where that is in degrees, on the UTM zone of the place. `write` makes text of the
 * rows otherwise than as CSV.
 */
export async function stakesCsv(
  exported: Exported,
  toGrid: (places: readonly LonLat[]) => Promise<OnGrid>,
  write?: WriteRows,
): Promise<string> {
  const { line, system } = exported;
  const columns = stationColumns(line);
  const grid = await gridFigures(line, toGrid);
  const records = line.stations.map(
    (station, i): Named => ({
      ...Object.fromEntries(
        columns.map((column) => [fileName(column, system), column.value(station, system)]),
      ),
      ...placeFigures(station, exported),
      ...grid[i],
    }),
  );
  return recordsCsv(exported, "Stake", Object.keys(records[0] ?? {}), records, write);
}

async function gridFigures(
  line: Exported["line"],
  toGrid: (places: readonly LonLat[]) => Promise<OnGrid>,
): Promise<readonly Named[]> {
  const grid = await stakeGrid(line, toGrid);
  if (!grid) return [];
  const named = grid.unit.replace("-", "_");
  return grid.xy.map(([east, north]) => ({
    grid: grid.name,
    [`grid_east_${named}`]: decimals(east, 2),
    [`grid_north_${named}`]: decimals(north, 2),
  }));
}
