import { letterOf } from "./line-letter.ts";
import type {
  Alignment,
  Carried,
  Closure,
  Culvert,
  Drain,
  ExitRoad,
  Flow,
  Gauge,
  LonLat,
  NoGo,
  PossibleCulvert,
  ReachSection,
  Structure,
  WaterSource,
  WorkPlace,
} from "./plan.ts";
import {
  badFeature,
  type Entries,
  entriesOf,
  type OurFeature,
  ROLE_WORDS,
  type Role,
  readFeature,
  without,
} from "./plan-feature.ts";
import { badGeometry, isClockwise, partsOf, path, position, turned } from "./plan-geometry.ts";
import { type Naming, naming, numbered } from "./plan-names.ts";
import { MAX_COUNT } from "./plan-schema.ts";
import { cleanText, MAX_NAME, shown } from "./plan-text.ts";

/** What the features of a plan file hold. */
export interface FoundFeatures {
  readonly structures: readonly Structure[];
  readonly alignments: readonly Alignment[];
  readonly noGo: readonly NoGo[];
  /** Left out when the file holds none. */
  readonly sources?: readonly WaterSource[];
  readonly culverts?: readonly Culvert[];
  readonly drains?: readonly Drain[];
  readonly possibleCulverts?: readonly PossibleCulvert[];
  readonly roads?: readonly ExitRoad[];
  readonly workPlaces?: readonly WorkPlace[];
  readonly gauge: Gauge | null;
  readonly flow: Flow | null;
  /** Features of other roles, and what else ours hold, by `role:id`. */
  readonly carried: Pick<Carried, "features" | "byFeature">;
}

interface Draft {
  readonly structures: Structure[];
  readonly alignments: Alignment[];
  readonly noGo: NoGo[];
  readonly sources: WaterSource[];
  readonly culverts: Culvert[];
  readonly drains: Drain[];
  readonly possibleCulverts: PossibleCulvert[];
  readonly roads: ExitRoad[];
  readonly workPlaces: WorkPlace[];
  gauge: Gauge | null;
  flow: Flow | null;
  readonly byFeature: { [key: string]: { properties: Entries; members: Entries } };
  readonly notes: string[];
  readonly naming: Record<Role, Naming>;
}

const MAX_FEATURES = 20_000;
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

/**
 * The plan's parts from the features of a collection; identifiers and names are made where missing.
 * @param notes takes what was repaired
 * @throws Refusal `plan/bad-feature`, `plan/bad-geometry`
 */
export function readFeatures(features: readonly unknown[], notes: string[]): FoundFeatures {
  if (features.length > MAX_FEATURES) {
    const came = features.length;
    throw badFeature("The file", `Expected at most ${MAX_FEATURES} features; came ${came}.`);
  }
  const read = features.map((feature, index) => readFeature(feature, index, notes));
  const draft = newDraft(notes);
  for (const each of read) if (each) draft.naming[each.role].state(each.id, each.name);
  for (const each of read) if (each) TAKERS[each.role](each, draft);
  const { structures, alignments, noGo, sources, culverts, drains, possibleCulverts } = draft;
  const { roads, workPlaces, gauge, flow, byFeature } = draft;
  const others = features.filter((_, index) => read[index] === null);
  return {
    ...{ structures, alignments, noGo, gauge, flow },
    ...(sources.length > 0 ? { sources } : {}),
    ...(culverts.length > 0 ? { culverts } : {}),
    ...(drains.length > 0 ? { drains } : {}),
    ...(possibleCulverts.length > 0 ? { possibleCulverts } : {}),
    ...(roads.length > 0 ? { roads } : {}),
    ...(workPlaces.length > 0 ? { workPlaces } : {}),
    carried: { features: others, byFeature },
  };
}

function newDraft(notes: string[]): Draft {
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

const TAKERS: Record<Role, (feature: OurFeature, draft: Draft) => void> = {
  structure(feature, draft) {
    const floorM = (feature.properties.floorM ?? null) as number | null;
    const found = areas(feature, draft, draft.structures.length, MAX_COUNT.structures);
    const protect = (feature.properties.protect ?? null) as boolean | null;
    const choice = protect === null ? {} : { protect };
    draft.structures.push(...found.map((area) => ({ ...area, floorM, ...choice })));
  },
  "no-go"(feature, draft) {
    draft.noGo.push(...areas(feature, draft, draft.noGo.length, MAX_COUNT.noGo));
  },
  alignment(feature, draft) {
    refuseBeyond(MAX_COUNT.alignments, draft.alignments.length + 1, "alignments");
    const part = onlyPart(feature);
    const kind = feature.geometry.type.endsWith("Polygon") ? "ring" : "line";
    const corners =
      kind === "ring" ? outline(part, feature, draft) : path(part, feature.where, false);
    const reachBreaksM = (feature.properties.reachBreaksM ?? []) as number[];
    const pinned = (feature.properties.pinned ?? null) as number[] | null;
    const sections = feature.properties.reachSections ?? null;
    const setbackM = (feature.properties.setbackM ?? null) as number | null;
    const closures = feature.properties.closures ?? null;
    const id = giveId(feature, draft);
    const name = draft.naming.alignment.giveName(feature.name);
    draft.alignments.push({
      ...{ id, name, kind, corners, reachBreaksM },
      ...(pinned === null ? {} : { pinned }),
      ...(sections === null ? {} : { reachSections: withFigures(sections) }),
      ...(setbackM === null ? {} : { setbackM }),
      ...(closures === null ? {} : { closures: wholeClosures(closures) }),
    });
    carryRest(feature, id, draft);
  },
  source(feature, draft) {
    const parts = partsOf(feature.geometry);
    if (parts.length === 0) throw badGeometry(feature.where, "Expected a point; came none.");
    refuseBeyond(MAX_COUNT.sources, draft.sources.length + parts.length, "sources");
    for (const [index, part] of parts.entries()) {
      const at = position(part, feature.where);
      const id = index === 0 ? giveId(feature, draft) : draft.naming.source.giveId(null);
      const name = draft.naming.source.giveName(index === 0 ? feature.name : null);
      draft.sources.push({ id, name, at });
      if (index === 0) carryRest(feature, id, draft);
    }
  },
  culvert(feature, draft) {
    const { invertsM, sizeM, gate, plugged } = feature.properties;
    draft.culverts.push({
      ...named(feature, draft, "culverts", "culverts"),
      path: path(onlyPart(feature), feature.where, false),
      invertsM: (invertsM ?? [null, null]) as Culvert["invertsM"],
      sizeM: (sizeM ?? null) as number | null,
      gate: (gate ?? null) as Culvert["gate"],
      plugged: (plugged ?? false) as boolean,
    });
  },
  drain(feature, draft) {
    const { kind, joinsOutside, plugged } = feature.properties;
    draft.drains.push({
      ...named(feature, draft, "drains", "drains"),
      at: position(onlyPart(feature), feature.where),
      kind: (kind ?? "floor-drain") as Drain["kind"],
      joinsOutside: (joinsOutside ?? null) as boolean | null,
      plugged: (plugged ?? false) as boolean,
    });
  },
  "possible-culvert"(feature, draft) {
    draft.possibleCulverts.push({
      ...named(feature, draft, "possibleCulverts", "possible culverts"),
      path: path(onlyPart(feature), feature.where, false),
      answer: (feature.properties.answer ?? "look") as PossibleCulvert["answer"],
    });
  },
  road(feature, draft) {
    draft.roads.push({
      ...named(feature, draft, "roads", "roads"),
      path: path(onlyPart(feature), feature.where, false),
    });
  },
  "work-place"(feature, draft) {
    const made = named(feature, draft, "workPlaces", "work places");
    const part = onlyPart(feature);
    const isWay = feature.geometry.type.endsWith("LineString");
    const { kind } = feature.properties as Pick<WorkPlace, "kind">;
    const at = isWay ? path(part, feature.where, false) : [position(part, feature.where)];
    draft.workPlaces.push({ ...made, kind, path: at });
  },
  gauge(feature, draft) {
    if (draft.gauge) throw badFeature(feature.where, "Expected one gauge; this is the second.");
    const isPlaced = partsOf(feature.geometry).length > 0;
    const at = isPlaced ? position(onlyPart(feature), feature.where) : null;
    draft.gauge = { name: feature.name ?? "Gauge", at };
    carryRest(feature, "", draft);
  },
  flow(feature, draft) {
    if (draft.flow) throw badFeature(feature.where, "Expected one flow; this is the second.");
    const line = path(onlyPart(feature), feature.where, false);
    const [from, to] = [line[0], line.at(-1)];
    if (!from || !to || line.length < 2) {
      throw badGeometry(
        feature.where,
        "Expected a line from upstream to downstream; came a point.",
      );
    }
    draft.flow = { from, to };
    carryRest(feature, "", draft);
  },
};

/** Sections of reaches as the plan holds them: a reach without figures has none of its own. */
function withFigures(sections: unknown): ReachSection[] {
  if (!Array.isArray(sections)) return sections as ReachSection[];
  return sections.map((each) => {
    const entries = entriesOf(each);
    return (entries ? { figures: {}, ...entries } : each) as ReachSection;
  });
}

/** Closures as the plan has them: what a closure leaves out is not set. */
function wholeClosures(closures: unknown): Closure[] {
  if (!Array.isArray(closures)) return closures as Closure[];
  return closures.map((each) => {
    const entries = entriesOf(each);
    if (!entries) return each as Closure;
    const closeBy = { stageM: null, at: null, ...entriesOf(entries.closeBy) };
    return { people: null, ...entries, closeBy } as unknown as Closure;
  });
}

function areas(feature: OurFeature, draft: Draft, before: number, most: number) {
  const parts = partsOf(feature.geometry);
  if (parts.length === 0) throw badGeometry(feature.where, "Expected an outline; came none.");
  refuseBeyond(most, before + parts.length, `${ROLE_WORDS[feature.role].toLowerCase()}s`);
  const name = draft.naming[feature.role].giveName(feature.name);
  if (parts.length === 1) return [area(parts[0], giveId(feature, draft), name, feature, draft)];
  draft.notes.push(`${feature.where} has ${parts.length} parts: each is now on its own.`);
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

function outline(part: unknown, feature: OurFeature, draft: Draft): LonLat[] {
  if (!Array.isArray(part) || part.length === 0) {
    throw badGeometry(feature.where, `Expected a Polygon with an outline; came ${shown(part)}.`);
  }
  if (part.length > 1) {
    draft.notes.push(`${feature.where} has holes, which are left out: only its outline is used.`);
  }
  const corners = path(part[0], feature.where, true);
  const turn = feature.properties.direction === "clockwise" && !isClockwise(corners);
  return turn ? turned(corners) : corners;
}

function onlyPart(feature: OurFeature): unknown {
  const parts = partsOf(feature.geometry);
  if (parts.length === 1) return parts[0];
  const came = `${feature.geometry.type} of ${parts.length}`;
  throw badGeometry(feature.where, `Expected one part; came a ${came}. Make each part a feature.`);
}

function giveId(feature: OurFeature, draft: Draft): string {
  const id = draft.naming[feature.role].giveId(feature.id);
  if (feature.id !== null && id !== feature.id) {
    draft.notes.push(
      `${feature.where}: its identifier ${shown(feature.id)} was taken; it is now "${id}".`,
    );
  }
  return id;
}

/** Identifier and name of one more entry of a list, and what else of its feature is carried. */
function named(
  feature: OurFeature,
  draft: Draft,
  list: "culverts" | "drains" | "possibleCulverts" | "roads" | "workPlaces",
  words: string,
): { readonly id: string; readonly name: string } {
  refuseBeyond(MAX_COUNT[list], draft[list].length + 1, words);
  const id = giveId(feature, draft);
  const name = draft.naming[feature.role].giveName(feature.name);
  carryRest(feature, id, draft);
  return { id, name };
}

function carryRest(feature: OurFeature, id: string, draft: Draft): void {
  const properties = without(feature.properties, READ[feature.role]);
  if (Object.keys(properties).length + Object.keys(feature.members).length === 0) return;
  draft.byFeature[`${feature.role}:${id}`] = { properties, members: feature.members };
}

function refuseBeyond(most: number, came: number, words: string): void {
  if (came > most) throw badFeature("The file", `Expected at most ${most} ${words}; came ${came}.`);
}
