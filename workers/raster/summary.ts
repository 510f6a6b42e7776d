import { refusal } from "../../shared/failure.ts";
import type { GroundNote } from "../../shared/ground-notes.ts";
import type { GroundSummary } from "../../shared/messages.ts";
import type { LonLat, VerticalUnit } from "../../shared/plan.ts";
import { planPlane } from "../../shared/plan-plane.ts";
import { type Locator, outlineOf } from "./locate.ts";
import type { Mosaic } from "./mosaic.ts";
import type { HeightSurvey } from "./survey-heights.ts";

export interface UnitChoice {
  readonly unit: VerticalUnit;
  readonly from: "file" | "person";
}

/**
 * What a ground is, for the person to check.
 * @throws Refusal `raster/off-earth` when it does not lie on Earth, `ground/no-data` when it holds no height
 */
export function summarise(
  mosaic: Mosaic,
  heights: HeightSurvey,
  locator: Locator,
  choice: UnitChoice,
  notes: readonly GroundNote[],
): Omit<GroundSummary, "marks" | "marksAsked"> {
  const { corners, bounds } = placeOf(mosaic, locator);
  const [cellXM, cellYM] = cellsOnGround(mosaic, locator);
  const first = mosaic.parts[0]!.raster;
  if (!(cellXM <= MOST_CELL_M && cellYM <= MOST_CELL_M))
    throw refusal("raster/cell-size", { name: first.name, xM: cellXM, yM: cellYM });
  if (!(heights.lowestM <= heights.highestM) && !heights.fromOverview) {
    throw refusal("ground/no-data", { name: first.name });
  }
  const count = mosaic.parts.length;
  const coarsest = Math.max(...mosaic.grids.map(({ place }) => Math.max(place.across, place.down)));
  return {
    name: count === 1 ? first.name : `${first.name} and ${count - 1} more`,
    files: mosaic.parts.map(({ raster: { name, bytes, format } }) => ({ name, bytes, format })),
    corners: corners as unknown as GroundSummary["corners"],
    bounds,
    columns: mosaic.columns,
    rows: mosaic.rows,
    cellXM,
    cellYM,
    ...(coarsest > 1 && { coarsestCellM: Math.max(cellXM, cellYM) * coarsest }),
    crs: mosaic.reference.label,
    crsNote: mosaic.reference.note,
    verticalUnit: choice.unit,
    verticalUnitFrom: choice.from,
    verticalDatum: first.vertical.datum,
    ...heights,
    notes,
  };
}

/** Coarser than any elevation data a levee can be planned on, metres; common practice, no source. */
const MOST_CELL_M = 10_000;

/** Corners and bounds of a ground. @throws Refusal `raster/off-earth` when it does not lie on Earth */
export function placeOf(mosaic: Mosaic, locator: Locator) {
  const { corners, edge } = outlineOf(mosaic, locator);
  const onEarth = ([longitude, latitude]: LonLat) =>
    Math.abs(latitude) <= 90 && Number.isFinite(longitude);
  if (!edge.every(onEarth)) {
    throw refusal("raster/off-earth", {
      ...{ name: mosaic.parts[0]!.raster.name, reference: mosaic.reference.label },
    });
  }
  const longitudes = edge.map(([longitude]) => longitude);
  const latitudes = edge.map(([, latitude]) => latitude);
  const bounds = [
    Math.min(...longitudes),
    Math.min(...latitudes),
    Math.max(...longitudes),
    Math.max(...latitudes),
  ] as const;
  return { corners, bounds };
}

function cellsOnGround({ columns, rows }: Mosaic, locator: Locator): [number, number] {
  const [column, row] = [(columns - 1) / 2, (rows - 1) / 2];
  const { toPlane } = planPlane(locator.toLonLat(column, row));
  const right = toPlane(locator.toLonLat(column + 0.5, row));
  const left = toPlane(locator.toLonLat(column - 0.5, row));
  const below = toPlane(locator.toLonLat(column, row + 0.5));
  const above = toPlane(locator.toLonLat(column, row - 0.5));
  return [
    Math.hypot(right[0] - left[0], right[1] - left[1]),
    Math.hypot(above[0] - below[0], above[1] - below[1]),
  ];
}
