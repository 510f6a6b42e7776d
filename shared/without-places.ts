import type { Plan } from "./plan.ts";

/** Settings whose text is one of a few words of ours; every other text may name a place or a person. */
const OUR_WORDS: ReadonlySet<string> = new Set([
  "by",
  "levels",
  "soil",
  "uplift",
  "verticalUnit",
  "is",
  "gate",
  "kind",
  "answer",
]);

/**
 * What a plan holds without saying where it is: counts of what is drawn, and settings. Nothing drawn is in it, no
 * coordinates, names, notes, files or times of day; what is not listed here stays out.
 */
export function withoutPlaces(plan: Plan) {
  const {
    structures,
    alignments,
    noGo,
    sources,
    culverts,
    drains,
    possibleCulverts,
    roads,
    workPlaces,
    gauge,
    flow,
    holding,
    time,
    leave,
    survey,
    progress,
  } = plan;
  return {
    buildings: structures.map(({ outline, floorM, protect }) => ({
      corners: outline.length,
      floorM,
      protect: protect ?? null,
    })),
    lines: alignments.map(({ kind, corners, reachBreaksM, pinned, reachSections, setbackM }) => ({
      kind,
      corners: corners.length,
      reachBreaksM,
      pinned: pinned ?? [],
      sections: reachSections?.map(({ section }) => section) ?? [],
      setbackM: setbackM ?? null,
    })),
    noGo: noGo.map(({ outline }) => ({ corners: outline.length })),
    sources: sources?.length ?? 0,
    roads: roads?.length ?? 0,
    workPlaces: (workPlaces ?? []).map(({ kind }) => ({ kind })),
    culverts: (culverts ?? []).map(({ path: _, ...rest }) => figuresOf(rest)),
    drains: (drains ?? []).map(({ at: _, ...rest }) => figuresOf(rest)),
    possibleCulverts: (possibleCulverts ?? []).map(({ path: _, ...rest }) => figuresOf(rest)),
    gauge: gauge !== null,
    flow: flow !== null,
    files: plan.terrain.length,
    water: figuresOf(plan.water),
    ground: figuresOf(plan.ground),
    section: figuresOf(plan.section),
    practice: figuresOf(plan.practice),
    holding: figuresOf(holding ?? null),
    time: figuresOf(time ?? null),
    leave: leave ? { by: leave.by, levelM: leave.levelM } : null,
    readings: survey?.readings.length ?? 0,
    marksOfWhatIsBuilt: progress?.length ?? 0,
  };
}

/** A setting with its numbers and our own words; other texts are left out. */
function figuresOf(setting: unknown): unknown {
  if (Array.isArray(setting)) return setting.map(figuresOf);
  if (typeof setting !== "object" || setting === null) return setting;
  const kept = Object.entries(setting).filter(
    ([key, value]) => typeof value !== "string" || OUR_WORDS.has(key),
  );
  return Object.fromEntries(kept.map(([key, value]) => [key, figuresOf(value)]));
}

/** Shorter names ("A", "7") are in every text. */
const LEAST_NAME = 3;

/**
 * A text without what may say where: the plan's own names, what stands in quotation marks, addresses (their last
 * part, the file of a stack's line, stays), numbers with decimals, and long ones that are no place in a stack.
 */
export function withoutNames(text: string, plan: Plan): string {
  const names = namesIn(plan).sort((a, b) => b.length - a.length);
  const unnamed = names.reduce((rest, name) => rest.replaceAll(name, "[name]"), text);
  return unnamed
    .replace(/"[^"]*"/g, '"[name]"')
    .replace(/\b(?:blob:)?(?:https?|file):\/\/[^\s)]*\//g, "")
    .replace(/-?\b\d+\.\d+\b|(?<![:\w])-?\d{5,}\b/g, "[number]");
}

function namesIn(plan: Plan): string[] {
  const {
    structures,
    alignments,
    noGo,
    sources = [],
    culverts = [],
    drains = [],
    possibleCulverts = [],
    roads = [],
    workPlaces = [],
    gauge,
    terrain,
    survey,
    progress = [],
  } = plan;
  const named = [
    ...structures,
    ...alignments,
    ...noGo,
    ...sources,
    ...culverts,
    ...drains,
    ...possibleCulverts,
    ...roads,
    ...workPlaces,
    ...terrain,
  ];
  const names = [
    plan.title,
    gauge?.name ?? "",
    survey?.benchmark?.name ?? "",
    ...progress.flatMap(({ by, clearedBy, note }) => [by, clearedBy, note]),
    ...named.map(({ name }) => name),
  ];
  return names.filter((name) => name.length >= LEAST_NAME);
}
