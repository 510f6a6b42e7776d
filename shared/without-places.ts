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
    ([key, value]) => (typeof value !== "string" && !key.endsWith("AtS")) || OUR_WORDS.has(key),
  );
  return Object.fromEntries(kept.map(([key, value]) => [key, figuresOf(value)]));
}

/** Shorter names ("A", "7") are in every text. */
const LEAST_NAME = 3;

/**
 * A text without what may say where: every text of the plan, what stands in quotation marks, addresses (of a stack's
 * line the script stays), numbers with decimals, and long ones that are no place in a stack.
 */
export function withoutNames(text: string, plan: Plan): string {
  const names = [...new Set(textsIn(plan))].filter((name) => name.length >= LEAST_NAME);
  const unnamed = names
    .sort((a, b) => b.length - a.length)
    .reduce((rest, name) => rest.replaceAll(name, "[name]"), text);
  return unnamed
    .replace(/"[^"]*"/g, '"[name]"')
    .replace(/\b(?:blob:)?(?:https?|file):\/\/[^\s)]*/g, scriptOf)
    .replace(/-?\b\d+\.\d+(?:e[+-]?\d+)?\b|(?<![:\w])-?\d{5,}\b/gi, "[number]");
}

function scriptOf(address: string): string {
  return /[^/]*\.m?[jt]sx?(?::\d+)*$/.exec(address)?.[0] ?? "[address]";
}

/** All that a person or a file wrote into a plan, with the hosts of its addresses. */
function textsIn(part: unknown): string[] {
  if (typeof part === "string") return [part, /^\w+:\/\/([^/]+)/.exec(part)?.[1] ?? ""];
  if (typeof part !== "object" || part === null) return [];
  return Object.entries(part).flatMap(([key, value]) => (OUR_WORDS.has(key) ? [] : textsIn(value)));
}
