import { asFailure, type Outcome, Refusal } from "./failure.ts";
import type { LonLat, Structure, VerticalUnit } from "./plan.ts";
import { type Entries, entriesOf } from "./plan-feature.ts";
import { refuseOtherCrs } from "./plan-file.ts";
import { badGeometry, path, rounded } from "./plan-geometry.ts";
import { parseBounded } from "./plan-json.ts";
import { naming, numbered } from "./plan-names.ts";
import { MAX_CORNERS } from "./plan-schema.ts";
import { cleanLabel, cleanText, shown } from "./plan-text.ts";
import { metresPer } from "./vertical-unit.ts";

/** An outline on the ground, with the columns that its file has for it. */
export interface Footprint {
  readonly corners: readonly LonLat[];
  readonly middle: LonLat;
  readonly columns: Entries;
}

/**
 * In what the coordinates of a file are: longitude and latitude; a grid that no one names (they are no degrees); or
 * what its `crs` member names, e.g. `EPSG:26851`.
 */
type FootprintReference =
  | { readonly kind: "degrees" }
  | { readonly kind: "grid" }
  | { readonly kind: "named"; readonly name: string };

/** Outlines as a file has them. */
export interface FootprintFile {
  readonly reference: FootprintReference;
  /** Corners in the file's own coordinates, of each outline. */
  readonly outlines: readonly {
    readonly corners: readonly (readonly [number, number])[];
    readonly columns: Entries;
  }[];
  /** What was left out or cut, each in one sentence for the person. */
  readonly notes: readonly string[];
}

/** Outlines on the ground that is open. */
export interface Footprints {
  readonly footprints: readonly Footprint[];
  readonly notes: readonly string[];
}

/** West, south, east, north, degrees. */
type Bounds = readonly [number, number, number, number];

/** Columns that say what a building is called and where its lowest floor is; null = none does. */
export interface FootprintColumns {
  readonly name: string | null;
  readonly floor: string | null;
  /** Of the floors; null until someone has said it: then no floor is taken. */
  readonly floorUnit: VerticalUnit | null;
}

/** Most characters a footprint file may have. */
export const MAX_FOOTPRINT_CHARACTERS = 40_000_000;
const EXPECTED = { words: "a footprint file", maxCharacters: MAX_FOOTPRINT_CHARACTERS };
/** No degree is larger. */
const MOST_DEGREES = 360;
/** Columns are looked for in so many outlines. */
const LOOKED_AT = 500;

/**
 * Building outlines from GeoJSON text: a FeatureCollection, Feature, Polygon, MultiPolygon or GeometryCollection.
 * Parts become outlines of their own; holes and other geometry are left out with a note. Failures:
 * `plan/not-json`, `plan/truncated`, `plan/too-large`, `plan/too-deep`, `plan/hostile-key`,
 * `plan/bad-geometry`, `footprints/none`.
 */
export function readFootprints(text: string): Outcome<FootprintFile> {
  return outcomeOf(() => {
    const value = parseBounded(text, EXPECTED);
    const notes: string[] = [];
    const polygons = polygonsOf(value);
    const reference = referenceOf(entriesOf(value)?.crs, polygons, notes);
    const outlines = outlinesIn(polygons, reference.kind === "degrees", notes);
    if (outlines.length === 0) throw none(value);
    return { reference, outlines, notes };
  });
}

/**
 * The outlines that lie on the ground that is open.
 * @param places the corners of all outlines one after the other in longitude and latitude; null = the file has them so
 * @param within bounds of the ground; null = all are taken
 */
export function placeFootprints(
  { outlines, notes }: FootprintFile,
  places: readonly LonLat[] | null,
  within: Bounds | null,
): Outcome<Footprints> {
  return outcomeOf(() => {
    let next = 0;
    const all = outlines.map(({ corners, columns }): Footprint => {
      const at = places ? places.slice(next, next + corners.length) : corners;
      next += corners.length;
      const rings = at.map(([lon, lat]): LonLat => [rounded(lon), rounded(lat)]);
      return { corners: rings, middle: middleOf(rings), columns };
    });
    const near = within ? all.filter(({ middle }) => isWithin(middle, within)) : all;
    if (near.length === 0) throw elsewhere(all.length);
    const left = all.length - near.length;
    const said = left > 0 ? [`${left} footprints outside the elevation data are left out.`] : [];
    return { footprints: near, notes: [...notes, ...said] };
  });
}

/** Buildings of a plan out of footprints; identifiers and names that it has are not given again. */
export function buildingsOf(
  taken: readonly Footprint[],
  present: readonly Structure[],
  columns: FootprintColumns,
): Structure[] {
  const names = naming("structure-", numbered("Building "));
  for (const { id, name } of present) names.state(id, name);
  for (const footprint of taken) names.state(null, nameOf(footprint, columns));
  return taken.map((footprint) => ({
    id: names.giveId(null),
    name: names.giveName(nameOf(footprint, columns)),
    outline: footprint.corners,
    floorM: floorOf(footprint, columns),
  }));
}

/** What the chosen column calls a building; null when it says nothing. */
export function nameOf({ columns }: Footprint, { name }: FootprintColumns): string | null {
  const value = name === null ? null : columns[name];
  return typeof value === "string" || typeof value === "number" ? cleanLabel(String(value)) : null;
}

/** Its lowest floor as the chosen column has it, metres; null when it says nothing or nobody has said the unit. */
export function floorOf(
  { columns }: Footprint,
  { floor, floorUnit }: FootprintColumns,
): number | null {
  const value = floor === null ? null : columns[floor];
  if (floorUnit === null || value === null || value === undefined || value === "") return null;
  const figure = Number(value);
  const floorM = figure * metresPer(floorUnit);
  return floorM >= -500 && floorM <= 9000 && figure !== 0 ? floorM : null;
}

/** The columns of footprints, those that hold figures alone apart. */
export function columnsOf(footprints: readonly Footprint[]): {
  readonly all: readonly string[];
  readonly figures: readonly string[];
} {
  const values = new Map<string, unknown[]>();
  for (const { columns } of footprints.slice(0, LOOKED_AT)) {
    for (const [name, value] of Object.entries(columns)) {
      if (typeof value !== "string" && typeof value !== "number") continue;
      values.set(name, [...(values.get(name) ?? []), value]);
    }
  }
  const all = [...values.keys()];
  const isFigure = (value: unknown) => value !== "" && Number.isFinite(Number(value));
  return { all, figures: all.filter((name) => values.get(name)!.every(isFigure)) };
}

interface Polygon {
  readonly where: string;
  readonly rings: readonly unknown[];
  readonly columns: Entries;
}

function polygonsOf(value: unknown): {
  readonly parts: readonly Polygon[];
  readonly other: number;
} {
  let other = 0;
  const parts = featuresIn(value).flatMap((feature, index) => {
    const columns = entriesOf(feature.properties) ?? {};
    const name = typeof columns.name === "string" ? cleanLabel(columns.name) : null;
    const where = name === null ? `Footprint ${index + 1}` : `Footprint "${name}"`;
    const found = polygonsIn(feature.geometry);
    if (found.length === 0) other += 1;
    return found.map((rings): Polygon => ({ where, rings, columns }));
  });
  return { parts, other };
}

function referenceOf(
  crs: unknown,
  { parts }: ReturnType<typeof polygonsOf>,
  notes: string[],
): FootprintReference {
  const named = entriesOf(entriesOf(crs)?.properties)?.name;
  if (typeof named === "string") {
    try {
      refuseOtherCrs(crs, notes);
    } catch {
      const code = /EPSG:+(\d+)$/i.exec(named)?.[1];
      return { kind: "named", name: code ? `EPSG:${code}` : cleanText(named, 80) };
    }
    return { kind: "degrees" };
  }
  const isFar = (at: unknown) =>
    Array.isArray(at) &&
    at.some((n, i) => i < 2 && typeof n === "number" && Math.abs(n) > MOST_DEGREES);
  const isGrid = parts.some(({ rings: [outer] }) => Array.isArray(outer) && outer.some(isFar));
  return { kind: isGrid ? "grid" : "degrees" };
}

function outlinesIn(
  { parts, other }: ReturnType<typeof polygonsOf>,
  areDegrees: boolean,
  notes: string[],
): FootprintFile["outlines"] {
  const left = { unfit: 0, holes: 0 };
  const found = parts.flatMap(({ where, rings, columns }) => {
    const corners = areDegrees ? path(rings[0], where, true) : gridPath(rings[0], where);
    if (rings.length > 1) left.holes += 1;
    const fits = corners.length >= 3 && corners.length <= MAX_CORNERS;
    if (!fits) left.unfit += 1;
    return fits ? [{ corners, columns }] : [];
  });
  if (other > 0) notes.push(`${other} features that are not polygons are left out.`);
  if (left.holes > 0) notes.push(`${left.holes} footprints had holes: only outlines are used.`);
  if (left.unfit > 0) {
    notes.push(
      `${left.unfit} footprints with fewer than 3 or over ${MAX_CORNERS} corners are left out.`,
    );
  }
  return found;
}

/** Corners of a ring in a grid, without neighbours at the same place nor the first one again. */
function gridPath(value: unknown, where: string): (readonly [number, number])[] {
  if (!Array.isArray(value)) {
    throw badGeometry(where, `Expected coordinates as a list of corners; came ${shown(value)}.`);
  }
  const all = value.map((at): readonly [number, number] => {
    const [x, y] = Array.isArray(at) ? at : [];
    if (Number.isFinite(x) && Number.isFinite(y)) return [x, y];
    throw badGeometry(where, `Expected [x, y] in the grid of the file; came ${shown(at)}.`);
  });
  const isSame = (a: readonly [number, number], b: readonly [number, number] | undefined) =>
    b !== undefined && a[0] === b[0] && a[1] === b[1];
  return all.filter(
    (at, index) =>
      !isSame(at, all[index === 0 ? all.length : index - 1]) &&
      !(index === all.length - 1 && index > 0 && isSame(at, all[0])),
  );
}

function featuresIn(value: unknown): Entries[] {
  const object = entriesOf(value) ?? {};
  if (object.type === "Feature") return [object];
  if (object.type !== "FeatureCollection") return [{ geometry: value }];
  return Array.isArray(object.features)
    ? object.features.map((feature) => entriesOf(feature) ?? {})
    : [];
}

function polygonsIn(value: unknown): unknown[][] {
  const geometry = entriesOf(value);
  const listOf = (found: unknown) => (Array.isArray(found) ? found : []);
  if (geometry?.type === "Polygon") return [listOf(geometry.coordinates)];
  if (geometry?.type === "MultiPolygon") return listOf(geometry.coordinates).map(listOf);
  if (geometry?.type !== "GeometryCollection") return [];
  return listOf(geometry.geometries).flatMap(polygonsIn);
}

function middleOf(corners: readonly LonLat[]): LonLat {
  const lons = corners.map(([lon]) => lon);
  const lats = corners.map(([, lat]) => lat);
  return [(Math.min(...lons) + Math.max(...lons)) / 2, (Math.min(...lats) + Math.max(...lats)) / 2];
}

function isWithin([lon, lat]: LonLat, [west, south, east, north]: Bounds): boolean {
  return lon >= west && lon <= east && lat >= south && lat <= north;
}

function none(value: unknown): Refusal {
  const came = entriesOf(value)?.type;
  return new Refusal(
    "footprints/none",
    `Expected building outlines as Polygons in GeoJSON; came ${came === undefined ? shown(value) : `${shown(came)} without any`}.`,
    "Export the outlines as polygons, in GeoJSON.",
  );
}

function elsewhere(count: number): Refusal {
  return new Refusal(
    "footprints/elsewhere",
    `Expected footprints on the elevation data that is open; none of the ${count} in the file lies on it.`,
    "Check that the file is of this place, in longitude and latitude or in the grid of the elevation data.",
  );
}

function outcomeOf<T>(work: () => T): Outcome<T> {
  try {
    return { ok: true, value: work() };
  } catch (thrown) {
    if (thrown instanceof Refusal) return { ok: false, failure: asFailure(thrown) };
    throw thrown;
  }
}
