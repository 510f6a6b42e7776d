import { type Failure, failureOf, refusal } from "../failure.ts";
import { middleOf } from "../geo-box.ts";
import type { LonLat } from "../plan.ts";
import { path } from "../plan-geometry.ts";
import type { FoundShape, ShapeFile } from "./found-shapes.ts";

/** An outline or a path on Earth, with the columns that its file has for it. */
export interface PlacedShape {
  readonly corners: readonly LonLat[];
  readonly columns: FoundShape["columns"];
}

/** The shapes of a file that lie on the ground that is open. */
export interface PlacedShapes {
  readonly outlines: readonly PlacedShape[];
  readonly paths: readonly PlacedShape[];
  /** What was left out. */
  readonly notes: readonly Failure[];
}

/** West, south, east, north, degrees. */
export type Bounds = readonly [number, number, number, number];

/** The corners of all shapes, outlines before paths, one after the other: x and y in turn. */
export function cornersInTurn({ outlines, paths }: ShapeFile): Float64Array<ArrayBuffer> {
  return Float64Array.from([...outlines, ...paths].flatMap(({ corners }) => corners.flat()));
}

/**
 * The shapes that lie on the ground that is open.
 * @param places longitude and latitude of what {@link cornersInTurn} gives; null = the file has them so
 * @param within bounds of the ground; null = all are taken
 * @throws Refusal `footprints/elsewhere`, `shapes/axis-order`, `plan/bad-geometry`
 */
export function placeShapes(
  { outlines, paths, notes }: ShapeFile,
  places: readonly LonLat[] | null,
  within: Bounds | null,
): PlacedShapes {
  let next = 0;
  const place = ({ corners, columns }: FoundShape, closes: boolean): PlacedShape => {
    const at = places ? places.slice(next, next + corners.length) : corners;
    next += corners.length;
    return { corners: path(at, { of: "shape" }, closes), columns };
  };
  const areas = outlines
    .map((each) => place(each, true))
    .filter(({ corners }) => corners.length > 2);
  const lines = paths.map((each) => place(each, false)).filter(({ corners }) => corners.length > 1);
  const areaIsNear = ({ corners }: PlacedShape) => isWithin(middleOf(corners), within);
  const lineIsNear = ({ corners }: PlacedShape) => corners.some((at) => isWithin(at, within));
  const near = { outlines: areas.filter(areaIsNear), paths: lines.filter(lineIsNear) };
  const count = areas.length + lines.length;
  const left = count - near.outlines.length - near.paths.length;
  if (left === count) {
    const turned = [...areas, ...lines].some(({ corners }) =>
      corners.some(([lon, lat]) => isWithin([lat, lon], within)),
    );
    throw turned ? refusal("shapes/axis-order") : refusal("footprints/elsewhere", { count });
  }
  const said = left > 0 ? [failureOf("shapes/off-data-left-out", { shapes: left })] : [];
  return { ...near, notes: [...notes, ...said] };
}

function isWithin([lon, lat]: LonLat, within: Bounds | null): boolean {
  if (!within) return true;
  const [west, south, east, north] = within;
  return lon >= west && lon <= east && lat >= south && lat <= north;
}
