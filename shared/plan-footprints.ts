import { asFailure, type Outcome, Refusal } from "./failure.ts";
import type { LonLat, Structure } from "./plan.ts";
import { type Entries, entriesOf } from "./plan-feature.ts";
import { refuseOtherCrs } from "./plan-file.ts";
import { path } from "./plan-geometry.ts";
import { parseBounded } from "./plan-json.ts";
import { freeNumbered, naming } from "./plan-names.ts";
import { MAX_CORNERS } from "./plan-schema.ts";
import { cleanLabel, shown } from "./plan-text.ts";

/** Footprints as read from a file. */
export interface Footprints {
  readonly structures: readonly Structure[];
  /** What was left out or cut, each in one sentence for the person. */
  readonly notes: readonly string[];
}

/** West, south, east, north, degrees. */
type Bounds = readonly [number, number, number, number];

export interface FootprintOptions {
  /** Structures that the plan has: their identifiers and names are not given again. */
  readonly present: readonly Structure[];
  /** Bounds of the ground: only footprints whose middle lies in it are taken. Null = all. */
  readonly within: Bounds | null;
}

/** Most characters a footprint file may have. */
export const MAX_FOOTPRINT_CHARACTERS = 20_000_000;
/** Most footprints taken from one file: those nearest to the middle of the ground. */
const MAX_TAKEN = 50;
const EXPECTED = { words: "a footprint file", maxCharacters: MAX_FOOTPRINT_CHARACTERS };

interface Outline {
  readonly name: string | null;
  readonly corners: readonly LonLat[];
  readonly middle: LonLat;
}

/**
 * Building outlines from GeoJSON text: a FeatureCollection, Feature, Polygon, MultiPolygon or GeometryCollection.
 * Parts become structures of their own; holes and other geometry are left out with a note. Failures:
 * `plan/not-json`, `plan/truncated`, `plan/too-large`, `plan/too-deep`, `plan/hostile-key`, `plan/other-crs`,
 * `plan/bad-geometry`, `footprints/none`, `footprints/too-many`.
 */
export function importFootprints(text: string, options: FootprintOptions): Outcome<Footprints> {
  try {
    return { ok: true, value: read(parseBounded(text, EXPECTED), options) };
  } catch (thrown) {
    if (thrown instanceof Refusal) return { ok: false, failure: asFailure(thrown) };
    throw thrown;
  }
}

function read(value: unknown, { present, within }: FootprintOptions): Footprints {
  const notes: string[] = [];
  refuseOtherCrs(entriesOf(value)?.crs, notes);
  const found = outlinesIn(value, notes);
  if (found.length === 0) throw none(value);
  const near = within ? found.filter(({ middle }) => isWithin(middle, within)) : found;
  if (near.length === 0) throw elsewhere(found.length);
  if (near.length < found.length) {
    notes.push(`${found.length - near.length} footprints outside the ground are left out.`);
  }
  return { structures: named(nearest(near, within, notes), present), notes };
}

function outlinesIn(value: unknown, notes: string[]): Outline[] {
  const left = { other: 0, unfit: 0, holes: 0 };
  const found = featuresIn(value).flatMap((feature, index) => {
    const name = nameOf(entriesOf(feature.properties)?.name);
    const where = name === null ? `Footprint ${index + 1}` : `Footprint "${name}"`;
    const parts = polygonsIn(feature.geometry);
    if (parts.length === 0) left.other += 1;
    return parts.flatMap((rings) => {
      const corners = path(rings[0], where, true);
      if (rings.length > 1) left.holes += 1;
      const fits = corners.length >= 3 && corners.length <= MAX_CORNERS;
      if (!fits) left.unfit += 1;
      return fits ? [{ name, corners, middle: middleOf(corners) }] : [];
    });
  });
  if (left.other > 0) notes.push(`${left.other} features that are not polygons are left out.`);
  if (left.holes > 0) notes.push(`${left.holes} footprints had holes: only outlines are used.`);
  if (left.unfit > 0) {
    notes.push(
      `${left.unfit} footprints with fewer than 3 or over ${MAX_CORNERS} corners are left out.`,
    );
  }
  return found;
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

function nearest(
  found: readonly Outline[],
  within: FootprintOptions["within"],
  notes: string[],
): readonly Outline[] {
  if (found.length <= MAX_TAKEN) return found;
  if (!within) throw tooMany(found.length);
  const [west, south, east, north] = within;
  const middle: LonLat = [(west + east) / 2, (south + north) / 2];
  notes.push(
    `Of ${found.length} footprints the ${MAX_TAKEN} nearest to the middle of the ground are taken.`,
  );
  return [...found]
    .map((outline) => ({ outline, far: distance(outline.middle, middle) }))
    .sort((a, b) => a.far - b.far)
    .slice(0, MAX_TAKEN)
    .map(({ outline }) => outline);
}

function named(found: readonly Outline[], present: readonly Structure[]): Structure[] {
  const names = naming("structure-", (taken) => freeNumbered(taken, "Building "));
  for (const { id, name } of present) names.state(id, name);
  for (const { name } of found) names.state(null, name);
  return found.map(({ name, corners }) => ({
    id: names.giveId(null),
    name: names.giveName(name),
    outline: corners,
    floorM: null,
  }));
}

function nameOf(value: unknown): string | null {
  return typeof value === "string" || typeof value === "number" ? cleanLabel(String(value)) : null;
}

function middleOf(corners: readonly LonLat[]): LonLat {
  const lons = corners.map(([lon]) => lon);
  const lats = corners.map(([, lat]) => lat);
  return [(Math.min(...lons) + Math.max(...lons)) / 2, (Math.min(...lats) + Math.max(...lats)) / 2];
}

function isWithin([lon, lat]: LonLat, [west, south, east, north]: Bounds): boolean {
  return lon >= west && lon <= east && lat >= south && lat <= north;
}

function distance([lonA, latA]: LonLat, [lonB, latB]: LonLat): number {
  return Math.hypot((lonA - lonB) * Math.cos((latB * Math.PI) / 180), latA - latB);
}

function none(value: unknown): Refusal {
  const came = entriesOf(value)?.type;
  return new Refusal(
    "footprints/none",
    `Expected building outlines as Polygons in GeoJSON; came ${came === undefined ? shown(value) : `${shown(came)} without any`}.`,
    "Export the outlines as polygons, in GeoJSON and EPSG:4326.",
  );
}

function elsewhere(count: number): Refusal {
  return new Refusal(
    "footprints/elsewhere",
    `Expected footprints on the ground that is open; none of the ${count} in the file lies on it.`,
    "Check that the file is of this place, in longitude and latitude.",
  );
}

function tooMany(count: number): Refusal {
  return new Refusal(
    "footprints/too-many",
    `Expected at most ${MAX_TAKEN} footprints while no ground is open; came ${count}.`,
    "Open the ground first, so that only the footprints on it are taken, or cut the file down.",
  );
}
