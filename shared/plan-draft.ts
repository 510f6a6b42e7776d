import { type Failure, failureOf } from "./failure.ts";
import { letterOf } from "./line-letter.ts";
import type { Flow, Gauge, LonLat, Plan } from "./plan.ts";
import { badFeature, badGeometry } from "./plan-complaints.ts";
import { type Entries, type OurFeature, ROLE_WORDS, type Role, without } from "./plan-feature.ts";
import { isClockwise, partsOf, path, turned } from "./plan-geometry.ts";
import { type Naming, naming, numbered } from "./plan-names.ts";
import { MAX_COUNT } from "./plan-schema.ts";
import { cameOf, cleanText, MAX_NAME } from "./plan-text.ts";

/** The lists of a plan that are features of its file. */
export type FeatureList =
  | "structures"
  | "alignments"
  | "noGo"
  | "sources"
  | "culverts"
  | "drains"
  | "possibleCulverts"
  | "roads"
  | "workPlaces";

type Lists = { readonly [K in FeatureList]: NonNullable<Plan[K]>[number][] };

/** What the features read so far come to. */
export interface Draft extends Lists {
  gauge: Gauge | null;
  flow: Flow | null;
  readonly byFeature: { [key: string]: { properties: Entries; members: Entries } };
  readonly notes: Failure[];
  readonly naming: Record<Role, Naming>;
}

/** Properties that are read; all others are carried. */
const READ: Record<Role, ReadonlySet<string>> = {
  structure: new Set(["role", "name", "floorM", "protect", "direction"]),
  alignment: new Set([
    ...["role", "name", "reachBreaksM", "reachSections"],
    ...["pinned", "setbackM", "closures", "direction"],
  ]),
  "no-go": new Set(["role", "name", "direction"]),
  source: new Set(["role", "name"]),
  culvert: new Set(["role", "name", "invertsM", "sizeM", "gate", "plugged"]),
  drain: new Set(["role", "name", "kind", "joinsOutside", "plugged"]),
  "possible-culvert": new Set(["role", "name", "answer"]),
  road: new Set(["role", "name"]),
  "work-place": new Set(["role", "name", "kind"]),
  gauge: new Set(["role", "name"]),
  flow: new Set(["role"]),
};

export function newDraft(notes: Failure[]): Draft {
  return {
    structures: [],
    alignments: [],
    noGo: [],
    sources: [],
    culverts: [],
    drains: [],
    possibleCulverts: [],
    roads: [],
    workPlaces: [],
    gauge: null,
    flow: null,
    byFeature: {},
    notes,
    naming: {
      ...(Object.fromEntries(
        (Object.keys(ROLE_WORDS) as Role[]).map((role) => [
          role,
          naming(`${role}-`, numbered(`${ROLE_WORDS[role]} `)),
        ]),
      ) as Record<Role, Naming>),
      alignment: naming("alignment-", letterOf),
    },
  };
}

export function areas(feature: OurFeature, draft: Draft, list: "structures" | "noGo") {
  const parts = partsOf(feature.geometry);
  if (parts.length === 0) throw badGeometry(feature.at, { is: "no-outline" });
  refuseBeyond(list, draft[list].length + parts.length);
  const name = draft.naming[feature.role].giveName(feature.name);
  if (parts.length === 1) return [area(parts[0], giveId(feature, draft), name, feature, draft)];
  draft.notes.push(failureOf("plan/parts-apart", { at: feature.at, parts: parts.length }));
  return parts.map((part, index) => {
    const suffix = ` (${index + 1})`;
    const id = index === 0 ? giveId(feature, draft) : draft.naming[feature.role].giveId(null);
    return area(part, id, cleanText(name, MAX_NAME - suffix.length) + suffix, feature, draft);
  });
}

function area(part: unknown, id: string, name: string, feature: OurFeature, draft: Draft) {
  carryRest(feature, id, draft);
  return { id, name, outline: outline(part, feature, draft) };
}

export function outline(part: unknown, feature: OurFeature, draft: Draft): LonLat[] {
  if (!Array.isArray(part) || part.length === 0) {
    throw badGeometry(feature.at, { is: "no-polygon", came: cameOf(part) });
  }
  if (part.length > 1) draft.notes.push(failureOf("plan/holes-left-out", { at: feature.at }));
  const corners = path(part[0], feature.at, true);
  const turn = feature.properties.direction === "clockwise" && !isClockwise(corners);
  return turn ? turned(corners) : corners;
}

export function onlyPart(feature: OurFeature): unknown {
  const parts = partsOf(feature.geometry);
  if (parts.length === 1) return parts[0];
  const { type } = feature.geometry;
  throw badGeometry(feature.at, { is: "several-parts", type, parts: parts.length });
}

export function giveId(feature: OurFeature, draft: Draft): string {
  const id = draft.naming[feature.role].giveId(feature.id);
  if (feature.id !== null && id !== feature.id) {
    const was = cleanText(feature.id, 40);
    draft.notes.push(failureOf("plan/id-changed", { at: feature.at, was, now: id }));
  }
  return id;
}

/** Identifier and name of one more entry of a list, and what else of its feature is carried. */
export function named(
  feature: OurFeature,
  draft: Draft,
  list: "culverts" | "drains" | "possibleCulverts" | "roads" | "workPlaces",
): { readonly id: string; readonly name: string } {
  refuseBeyond(list, draft[list].length + 1);
  const id = giveId(feature, draft);
  const name = draft.naming[feature.role].giveName(feature.name);
  carryRest(feature, id, draft);
  return { id, name };
}

export function carryRest(feature: OurFeature, id: string, draft: Draft): void {
  const properties = without(feature.properties, READ[feature.role]);
  if (Object.keys(properties).length + Object.keys(feature.members).length === 0) return;
  draft.byFeature[`${feature.role}:${id}`] = { properties, members: feature.members };
}

export function refuseBeyond(what: FeatureList, came: number): void {
  const most = MAX_COUNT[what];
  if (came > most) throw badFeature({ of: "file" }, { is: "too-many", what, most, came });
}
