import type { Failure } from "./failure.ts";
import type {
  Carried,
  Closure,
  Culvert,
  Drain,
  Plan,
  PossibleCulvert,
  ReachSection,
  WorkPlace,
} from "./plan.ts";
import { badFeature, badGeometry } from "./plan-complaints.ts";
import {
  areas,
  carryRest,
  type Draft,
  type FeatureList,
  giveId,
  named,
  newDraft,
  onlyPart,
  outline,
  refuseBeyond,
} from "./plan-draft.ts";
import { entriesOf, type OurFeature, type Role, readFeature } from "./plan-feature.ts";
import { partsOf, path, position } from "./plan-geometry.ts";

/** What the features of a plan file hold; a list that a plan may be without is left out where it is empty. */
export interface FoundFeatures extends Pick<Plan, FeatureList | "gauge" | "flow"> {
  /** Features of other roles, and what else ours hold, by `role:id`. */
  readonly carried: Pick<Carried, "features" | "byFeature">;
}

const MAX_FEATURES = 20_000;
/**
 * The plan's parts from the features of a collection; identifiers and names are made where missing.
 * @param notes takes what was repaired
 * @throws Refusal `plan/bad-feature`, `plan/bad-geometry`
 */
export function readFeatures(features: readonly unknown[], notes: Failure[]): FoundFeatures {
  if (features.length > MAX_FEATURES) {
    const came = features.length;
    const most = MAX_FEATURES;
    throw badFeature({ of: "file" }, { is: "too-many", what: "features", most, came });
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

const TAKERS: Record<Role, (feature: OurFeature, draft: Draft) => void> = {
  structure(feature, draft) {
    const floorM = (feature.properties.floorM ?? null) as number | null;
    const found = areas(feature, draft, "structures");
    const protect = (feature.properties.protect ?? null) as boolean | null;
    const choice = protect === null ? {} : { protect };
    draft.structures.push(...found.map((area) => ({ ...area, floorM, ...choice })));
  },
  "no-go"(feature, draft) {
    draft.noGo.push(...areas(feature, draft, "noGo"));
  },
  alignment(feature, draft) {
    refuseBeyond("alignments", draft.alignments.length + 1);
    const part = onlyPart(feature);
    const kind = feature.geometry.type.endsWith("Polygon") ? "ring" : "line";
    const corners = kind === "ring" ? outline(part, feature, draft) : path(part, feature.at, false);
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
    if (parts.length === 0) throw badGeometry(feature.at, { is: "no-point" });
    refuseBeyond("sources", draft.sources.length + parts.length);
    for (const [index, part] of parts.entries()) {
      const at = position(part, feature.at);
      const id = index === 0 ? giveId(feature, draft) : draft.naming.source.giveId(null);
      const name = draft.naming.source.giveName(index === 0 ? feature.name : null);
      draft.sources.push({ id, name, at });
      if (index === 0) carryRest(feature, id, draft);
    }
  },
  culvert(feature, draft) {
    const { invertsM, sizeM, gate, plugged } = feature.properties;
    draft.culverts.push({
      ...named(feature, draft, "culverts"),
      path: path(onlyPart(feature), feature.at, false),
      invertsM: (invertsM ?? [null, null]) as Culvert["invertsM"],
      sizeM: (sizeM ?? null) as number | null,
      gate: (gate ?? null) as Culvert["gate"],
      plugged: (plugged ?? false) as boolean,
    });
  },
  drain(feature, draft) {
    const { kind, joinsOutside, plugged } = feature.properties;
    draft.drains.push({
      ...named(feature, draft, "drains"),
      at: position(onlyPart(feature), feature.at),
      kind: (kind ?? "floor-drain") as Drain["kind"],
      joinsOutside: (joinsOutside ?? null) as boolean | null,
      plugged: (plugged ?? false) as boolean,
    });
  },
  "possible-culvert"(feature, draft) {
    draft.possibleCulverts.push({
      ...named(feature, draft, "possibleCulverts"),
      path: path(onlyPart(feature), feature.at, false),
      answer: (feature.properties.answer ?? "look") as PossibleCulvert["answer"],
    });
  },
  road(feature, draft) {
    draft.roads.push({
      ...named(feature, draft, "roads"),
      path: path(onlyPart(feature), feature.at, false),
    });
  },
  "work-place"(feature, draft) {
    const made = named(feature, draft, "workPlaces");
    const part = onlyPart(feature);
    const isWay = feature.geometry.type.endsWith("LineString");
    const { kind } = feature.properties as Pick<WorkPlace, "kind">;
    const at = isWay ? path(part, feature.at, false) : [position(part, feature.at)];
    draft.workPlaces.push({ ...made, kind, path: at });
  },
  gauge(feature, draft) {
    if (draft.gauge) throw badFeature(feature.at, { is: "second", what: "gauge" });
    const isPlaced = partsOf(feature.geometry).length > 0;
    const at = isPlaced ? position(onlyPart(feature), feature.at) : null;
    draft.gauge = { name: feature.name ?? "Gauge", at };
    carryRest(feature, "", draft);
  },
  flow(feature, draft) {
    if (draft.flow) throw badFeature(feature.at, { is: "second", what: "flow" });
    const line = path(onlyPart(feature), feature.at, false);
    const [from, to] = [line[0], line.at(-1)];
    if (!from || !to || line.length < 2) {
      throw badGeometry(feature.at, { is: "no-way" });
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
