import { type Failure, failureOf } from "./failure.ts";
import { badFeature, badGeometry, type FilePlace } from "./plan-complaints.ts";
import type { FoundGeometry } from "./plan-geometry.ts";
import { cameOf, cleanLabel, cleanText, MAX_NAME } from "./plan-text.ts";

/** An object of a file, nothing about it proven. */
export type Entries = { [name: string]: unknown };

/** Roles of features that make up a plan; features of other roles are carried along. */
export type Role =
  | ("structure" | "alignment" | "no-go" | "source")
  | ("culvert" | "drain" | "possible-culvert" | "road" | "work-place" | "gauge" | "flow");

/** One feature of ours with its envelope proven; its coordinates are not. */
export interface OurFeature {
  readonly role: Role;
  /** Names the feature in messages. */
  readonly at: FilePlace;
  readonly id: string | null;
  readonly name: string | null;
  readonly geometry: FoundGeometry;
  readonly properties: Entries;
  /** Members other than those RFC 7946 defines. */
  readonly members: Entries;
}

const TYPES: Record<Role, readonly string[]> = {
  structure: ["Polygon", "MultiPolygon"],
  alignment: ["Polygon", "LineString", "MultiPolygon", "MultiLineString"],
  "no-go": ["Polygon", "MultiPolygon"],
  source: ["Point", "MultiPoint"],
  culvert: ["LineString", "MultiLineString"],
  drain: ["Point", "MultiPoint"],
  "possible-culvert": ["LineString", "MultiLineString"],
  road: ["LineString", "MultiLineString"],
  "work-place": ["Point", "MultiPoint", "LineString", "MultiLineString"],
  gauge: ["Point", "MultiPoint"],
  flow: ["LineString", "MultiLineString"],
};
/** Roles that plans of other programs may have used before they were ours: what does not fit is carried. */
const LATER_ROLES: ReadonlySet<Role> = new Set([
  ...(["culvert", "drain", "possible-culvert", "road", "work-place"] as const),
]);
/** A gauge off the map has no geometry. */
const UNLOCATED = { type: "MultiPoint", coordinates: [] };

const MEMBERS = new Set(["type", "id", "geometry", "properties", "bbox"]);

/** What each role is called in messages and made names. */
export const ROLE_WORDS: Record<Role, string> = {
  structure: "Building",
  alignment: "Line",
  "no-go": "No-go area",
  source: "Source",
  culvert: "Culvert",
  drain: "Drain",
  "possible-culvert": "Possible culvert",
  road: "Road",
  "work-place": "Work place",
  gauge: "Gauge",
  flow: "Flow",
};

/**
 * A feature of the collection; null when it is none of ours and is to be carried.
 * @param index place in the file, from 0 @param notes takes what was repaired
 * @throws Refusal `plan/bad-feature`, `plan/bad-geometry`
 */
export function readFeature(value: unknown, index: number, notes: Failure[]): OurFeature | null {
  const feature = entriesOf(value);
  const place = { of: "feature", feature: index + 1 } as const;
  if (feature?.type !== "Feature") {
    throw badFeature(place, { is: "no-feature", came: cameOf(feature?.type ?? value) });
  }
  const properties = entriesOf(feature.properties ?? {});
  if (!properties) {
    throw badFeature(place, { is: "no-properties", came: cameOf(feature.properties) });
  }
  const { role } = properties;
  if (!isRole(role)) return null;
  const name = readName(properties.name, place, notes);
  const at = { of: role, ...(name === null ? { feature: index + 1 } : { name }) };
  if (feature.geometry === null && role !== "gauge") {
    notes.push(failureOf("plan/kept-without-geometry", { at }));
    return null;
  }
  const { geometry } = feature;
  const type = entriesOf(geometry)?.type;
  if (LATER_ROLES.has(role) && typeof type === "string" && !TYPES[role].includes(type)) {
    const expected = TYPES[role];
    notes.push(failureOf("plan/kept-as-other-type", { at, type: cleanText(type, 20), expected }));
    return null;
  }
  return {
    role,
    at,
    id: readId(feature.id ?? properties.id),
    name,
    geometry: readGeometry(geometry === null ? UNLOCATED : geometry, role, at),
    properties,
    members: without(feature, MEMBERS),
  };
}

/** True for a role that makes up a plan. */
export function isRole(role: unknown): role is Role {
  return typeof role === "string" && Object.hasOwn(TYPES, role);
}

/** The entries whose names are not in `names`. */
export function without(entries: Entries, names: ReadonlySet<string>): Entries {
  return Object.fromEntries(Object.entries(entries).filter(([name]) => !names.has(name)));
}

/** The value as an object with entries; null for lists, nothing and plain values. */
export function entriesOf(value: unknown): Entries | null {
  const is = typeof value === "object" && value !== null && !Array.isArray(value);
  return is ? (value as Entries) : null;
}

function readName(value: unknown, at: FilePlace, notes: Failure[]): string | null {
  if (value === undefined || value === null) return null;
  if (typeof value !== "string" && typeof value !== "number") {
    throw badFeature(at, { is: "no-name", came: cameOf(value) });
  }
  const stated = String(value);
  if (stated.length > MAX_NAME) notes.push(failureOf("plan/name-cut", { at, most: MAX_NAME }));
  return cleanLabel(stated);
}

function readId(value: unknown): string | null {
  if (typeof value !== "string" && typeof value !== "number") return null;
  return cleanLabel(String(value), 80);
}

function readGeometry(value: unknown, role: Role, at: FilePlace): FoundGeometry {
  const geometry = entriesOf(value);
  const type = geometry?.type;
  if (typeof type !== "string" || !TYPES[role].includes(type)) {
    const came = cameOf(type ?? value);
    throw badGeometry(at, { is: "other-type", expected: TYPES[role], came });
  }
  const coordinates = geometry?.coordinates;
  if (!Array.isArray(coordinates)) {
    throw badGeometry(at, { is: "no-list", came: cameOf(coordinates) });
  }
  return { type, coordinates };
}
