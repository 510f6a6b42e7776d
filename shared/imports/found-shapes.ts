import type { FeatureCollection } from "geojson";
import { type Failure, failureOf, Refusal } from "../failure.ts";
import { badGeometry, type FilePlace } from "../plan-complaints.ts";
import { type Entries, entriesOf } from "../plan-feature.ts";
import { refuseOtherCrs } from "../plan-file.ts";
import { path } from "../plan-geometry.ts";
import { MAX_CORNERS } from "../plan-schema.ts";
import { cameOf, cleanLabel, cleanText } from "../plan-text.ts";

/**
 * In what the coordinates of a file are: longitude and latitude; a grid that no one names (they are no degrees);
 * what its `crs` member names, e.g. `EPSG:26851`; what the file states in well-known text; or by a code of EPSG's.
 */
export type ShapeReference =
  | { readonly kind: "degrees" }
  | { readonly kind: "grid" }
  | { readonly kind: "named"; readonly name: string }
  | { readonly kind: "text"; readonly fileName: string; readonly text: string }
  | { readonly kind: "code"; readonly fileName: string; readonly epsg: number };

/** A file of features as GeoJSON in the coordinates of its own reference. */
export interface ReadFeatures {
  readonly value: FeatureCollection;
  readonly reference: ShapeReference;
}

/** An outline or a path as its file has it. */
export interface FoundShape {
  /** In the file's own coordinates; the first corner of an outline is not repeated. */
  readonly corners: readonly (readonly [number, number])[];
  readonly columns: Entries;
  /** Which feature of its file it is a part of, from 0. */
  readonly feature: number;
  /** The feature's own identifier, of GeoJSON and KML; null where it has none. */
  readonly ownId: string | null;
  /** Holes that are left out of an outline. */
  readonly holes: number;
}

/** A part of a feature that is not read: too few corners, too many, or coordinates that are none. */
export interface LeftOutShape {
  readonly feature: number;
  readonly why: "few-corners" | "many-corners" | "bad-coordinates";
}

/** The shapes of a file. */
export interface ShapeFile {
  readonly reference: ShapeReference;
  readonly outlines: readonly FoundShape[];
  readonly paths: readonly FoundShape[];
  /** Features that are neither, points for one. */
  readonly others: number;
  readonly leftOut: readonly LeftOutShape[];
  /** What is to be said of its reference. */
  readonly referenceNotes: readonly Failure[];
  /** The same, and what was left out or cut. */
  readonly notes: readonly Failure[];
}

/** No degree is larger. */
const MOST_DEGREES = 360;
const AREAS = ["Polygon", "MultiPolygon"];
const PATHS = ["LineString", "MultiLineString"];

/** A part of a feature: the rings of a polygon, or the one path of a line. */
interface Part {
  readonly at: FilePlace;
  readonly kind: "outline" | "path";
  readonly rings: readonly unknown[];
  readonly columns: Entries;
  readonly feature: number;
  readonly ownId: string | null;
}

/** How features are taken that are not as they should be. */
export interface ShapeOptions {
  /** The others are read when the coordinates of one are none; else the whole file is refused. */
  readonly leavesBad?: boolean;
}

/**
 * The outlines and paths of a GeoJSON value: a FeatureCollection, Feature or bare geometry. Parts become shapes of
 * their own; holes and third coordinates are left out.
 * @param stated what the coordinates are in; null = as the value itself says or shows
 * @throws Refusal `plan/bad-geometry`
 */
export function foundShapes(
  value: unknown,
  stated: ShapeReference | null = null,
  { leavesBad = false }: ShapeOptions = {},
): ShapeFile {
  const referenceNotes: Failure[] = [];
  let others = 0;
  const parts = featuresIn(value).flatMap((feature, index) => {
    const columns = { ...ownId(feature.id), ...entriesOf(feature.properties) };
    const name = typeof columns.name === "string" ? cleanLabel(columns.name) : null;
    const at = { of: "shape", ...(name === null ? { feature: index + 1 } : { name }) } as const;
    const found = partsIn(feature.geometry);
    if (found.length === 0) others += 1;
    const own = { feature: index, ownId: ownIdOf(feature.id) };
    return found.map((part): Part => ({ ...part, at, columns, ...own }));
  });
  const reference = stated ?? referenceOf(entriesOf(value)?.crs, parts, referenceNotes);
  const notes = [...referenceNotes];
  const areDegrees = reference.kind === "degrees";
  const leftOut: LeftOutShape[] = [];
  const shapesOf = (kind: Part["kind"], least: number) =>
    parts.flatMap((part): FoundShape[] => {
      if (part.kind !== kind) return [];
      const { columns, feature, ownId, rings } = part;
      const corners = leavesBad ? cornersOrNone(part, areDegrees) : cornersOf(part, areDegrees);
      const why = corners === null ? "bad-coordinates" : unfitBy(corners.length, least);
      if (corners !== null && why === null) {
        return [{ corners, columns, feature, ownId, holes: Math.max(0, rings.length - 1) }];
      }
      leftOut.push({ feature, why: why ?? "bad-coordinates" });
      return [];
    });
  const [outlines, paths] = [shapesOf("outline", 3), shapesOf("path", 2)];
  const withHoles = outlines.filter(({ holes }) => holes > 0).length;
  const unfit = leftOut.filter(({ why }) => why !== "bad-coordinates").length;
  const bad = leftOut.length - unfit;
  if (withHoles > 0) notes.push(failureOf("shapes/holes-left-out", { outlines: withHoles }));
  if (unfit > 0) {
    notes.push(failureOf("shapes/corners-left-out", { shapes: unfit, most: MAX_CORNERS }));
  }
  if (bad > 0) notes.push(failureOf("shapes/bad-left-out", { shapes: bad }));
  return { reference, outlines, paths, others, leftOut, referenceNotes, notes };
}

function unfitBy(corners: number, least: number): LeftOutShape["why"] | null {
  if (corners < least) return "few-corners";
  return corners > MAX_CORNERS ? "many-corners" : null;
}

function cornersOrNone(part: Part, areDegrees: boolean) {
  try {
    return cornersOf(part, areDegrees);
  } catch (thrown) {
    if (thrown instanceof Refusal) return null;
    throw thrown;
  }
}

function ownIdOf(id: unknown): string | null {
  return typeof id === "string" || typeof id === "number" ? cleanLabel(String(id)) : null;
}

/** The identifier that a feature has beside its properties (RFC 7946), as a column. */
function ownId(id: unknown): Entries {
  return typeof id === "string" || typeof id === "number" ? { id } : {};
}

function referenceOf(crs: unknown, parts: readonly Part[], notes: Failure[]): ShapeReference {
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

function cornersOf({ kind, rings, at }: Part, areDegrees: boolean) {
  const closes = kind === "outline";
  return areDegrees ? path(rings[0], at, closes) : gridPath(rings[0], at, closes);
}

type Spot = readonly [number, number];

/** Corners in a grid, without neighbours at the same place; `closes` drops the repeated first corner too. */
function gridPath(value: unknown, of: FilePlace, closes: boolean): Spot[] {
  if (!Array.isArray(value)) {
    throw badGeometry(of, { is: "no-corners", came: cameOf(value) });
  }
  const all = value.map((at): Spot => {
    const [x, y] = Array.isArray(at) ? at : [];
    if (Number.isFinite(x) && Number.isFinite(y)) return [x, y];
    throw badGeometry(of, { is: "no-pair", came: cameOf(at) });
  });
  const isSame = (a: Spot, b: Spot) => a[0] === b[0] && a[1] === b[1];
  const moved = all.filter((at, index) => index === 0 || !isSame(at, all[index - 1]!));
  while (closes && moved.length > 1 && isSame(moved[0]!, moved.at(-1)!)) moved.pop();
  return moved;
}

function featuresIn(value: unknown): Entries[] {
  const object = entriesOf(value) ?? {};
  if (object.type === "Feature") return [object];
  if (object.type !== "FeatureCollection") return [{ geometry: value }];
  return Array.isArray(object.features)
    ? object.features.map((feature) => entriesOf(feature) ?? {})
    : [];
}

function partsIn(value: unknown): Pick<Part, "kind" | "rings">[] {
  const geometry = entriesOf(value);
  const type = String(geometry?.type);
  if (type === "GeometryCollection") return listOf(geometry?.geometries).flatMap(partsIn);
  const several = type.startsWith("Multi");
  const coordinates = listOf(geometry?.coordinates);
  const each = several ? coordinates : [coordinates];
  if (AREAS.includes(type)) {
    return each.map((rings) => ({ kind: "outline" as const, rings: listOf(rings) }));
  }
  return PATHS.includes(type) ? each.map((corners) => ({ kind: "path", rings: [corners] })) : [];
}

function listOf(found: unknown): readonly unknown[] {
  return Array.isArray(found) ? found : [];
}
