import { DEFAULT_SETTINGS, EMPTY_PLAN } from "./defaults.ts";
import { type Failure, failureOf, type Given, type Refusal, refusal } from "./failure.ts";
import type { LeaveLevel, Plan, ProgressMark, Survey, TerrainRef, Water } from "./plan.ts";
import { type Entries, entriesOf } from "./plan-feature.ts";
import { cameOf, cleanLabel, cleanText, MAX_NOTE } from "./plan-text.ts";

/** The plan's settings as the file's `drystead` member states them, defaults for what it leaves out. */
export interface FoundSettings {
  readonly plan: Pick<
    Plan,
    | "title"
    | "water"
    | "ground"
    | "section"
    | "practice"
    | "holding"
    | "time"
    | "leave"
    | "survey"
    | "progress"
    | "terrain"
    | "chosenId"
  >;
  /** Whether the water's level is stated at all: no default stands for a forecast. */
  readonly waterStated: boolean;
  /** Entries that are not known, in their nesting. */
  readonly unused: Entries;
}

/**
 * Settings with defaults filled in. Ranges are not looked at here.
 * @param notes takes what was assumed
 * @throws Refusal `plan/bad-value` when a group of settings is not an object
 */
export function readSettings(stated: Entries, notes: Failure[]): FoundSettings {
  const unused: Entries = {};
  const waterStated = statesWater(stated.water);
  const { version: _version, title, terrain, chosenId, ...others } = stated;
  const { leave, survey, progress, ...groups } = others;
  const filled = fill(DEFAULT_SETTINGS, groups, [], unused, notes);
  if (!waterStated) notes.push(failureOf("plan/no-water-stated"));
  return {
    plan: {
      ...filled,
      water: {
        ...filled.water,
        by: ruling(stated.water, notes),
        given: waterStated ? filled.water.given : false,
      },
      title: optionalText(title, "title") ?? EMPTY_PLAN.title,
      leave: readLeave(leave, unused, notes),
      ...readSurvey(survey, unused, notes),
      ...readProgress(progress),
      terrain: readTerrain(terrain),
      chosenId: (chosenId ?? null) as string | null,
    },
    waterStated,
    unused,
  };
}

function statesWater(stated: unknown): boolean {
  const { by, elevationM, stageM, given } = (stated ?? {}) as Entries;
  if (given === false) return false;
  if (by === "stage") return stageM !== undefined;
  if (by === "elevation") return elevationM !== undefined;
  return elevationM !== undefined || stageM !== undefined;
}

function fill<T extends object>(
  defaults: T,
  given: unknown,
  steps: readonly string[],
  unused: Entries,
  notes: Failure[],
): T {
  if (given === undefined) return defaults;
  const stated = entriesOf(given);
  if (!stated) {
    throw badSetting(steps.join("."), { as: "object", keys: Object.keys(defaults) }, given);
  }
  const known = defaults as Entries;
  const result: Entries = { ...known };
  for (const [key, value] of Object.entries(stated)) {
    const path = [...steps, key];
    if (Object.hasOwn(known, key)) result[key] = fillOne(known[key], value, path, unused, notes);
    else keepUnused(unused, path, value, notes);
  }
  return result as T;
}

function fillOne(
  fallback: unknown,
  value: unknown,
  path: readonly string[],
  unused: Entries,
  notes: Failure[],
): unknown {
  if (entriesOf(fallback)) return fill(fallback as Entries, value, path, unused, notes);
  return typeof value === "string" ? cleanText(value, MAX_NOTE) : value;
}

function keepUnused(
  unused: Entries,
  path: readonly string[],
  value: unknown,
  notes: Failure[],
): void {
  let group = unused;
  for (const step of path.slice(0, -1)) {
    group[step] ??= {};
    group = group[step] as Entries;
  }
  group[path.at(-1) as string] = value;
  notes.push(failureOf("plan/setting-kept", { setting: cleanText(path.join("."), 80) }));
}

function ruling(stated: unknown, notes: Failure[]): Water["by"] {
  const water = (stated ?? {}) as Entries;
  if (water.by !== undefined) return water.by as Water["by"];
  const hasElevation = water.elevationM !== undefined;
  const hasStage = water.stageM !== undefined;
  if (hasElevation && hasStage) {
    notes.push(failureOf("plan/elevation-ruling"));
  }
  return hasStage && !hasElevation ? "stage" : "elevation";
}

const NO_LEAVE: Entries = { by: "stage", levelM: null, at: null, note: "" };

function readLeave(stated: unknown, unused: Entries, notes: Failure[]): LeaveLevel | null {
  if (stated === undefined || stated === null) return null;
  return fill(NO_LEAVE, stated, ["leave"], unused, notes) as unknown as LeaveLevel;
}

const NO_READINGS: Entries = { benchmark: null, backsightM: null, readings: [] };

/** The survey, left out where the file has none: a plan without one is written as it was. */
function readSurvey(stated: unknown, unused: Entries, notes: Failure[]): Pick<Plan, "survey"> {
  if (stated === undefined || stated === null) return {};
  const survey = fill(NO_READINGS, stated, ["survey"], unused, notes);
  return { survey: survey as unknown as Survey };
}

/** What is built, left out where the file has nothing of it; its texts are cleaned as all are. */
function readProgress(stated: unknown): Pick<Plan, "progress"> {
  if (stated === undefined || stated === null) return {};
  if (!Array.isArray(stated)) throw badSetting("progress", { as: "marks" }, stated);
  const progress = stated.map((item) => {
    const mark = entriesOf(item);
    if (!mark) throw badSetting("progress", { as: "mark-objects" }, item);
    return Object.fromEntries(
      Object.entries(mark).map(([key, value]) => [
        key,
        typeof value === "string" ? cleanText(value, MAX_NOTE) : value,
      ]),
    );
  });
  return progress.length > 0 ? { progress: progress as unknown as readonly ProgressMark[] } : {};
}

function readTerrain(stated: unknown): readonly TerrainRef[] {
  if (stated === undefined) return [];
  if (!Array.isArray(stated)) throw badSetting("terrain", { as: "files" }, stated);
  return stated.map((item: Entries | null, index) => ({
    name: optionalText(item?.name, `terrain ${index + 1}, name`, 255) ?? "unnamed",
    bytes: item?.bytes as number,
    ...(item?.address === undefined ? {} : { address: item.address as string }),
  }));
}

function optionalText(value: unknown, where: string, longest?: number): string | null {
  if (value === undefined || value === null) return null;
  if (typeof value !== "string") throw badSetting(where, { as: "text" }, value);
  return cleanLabel(value, longest);
}

type BadSetting = Extract<Given<"plan/bad-value">, { how: "setting" }>;

function badSetting(setting: string, expected: BadSetting["expected"], came: unknown): Refusal {
  return refusal("plan/bad-value", { how: "setting", setting, expected, came: cameOf(came) });
}
