import { type Failure, failureOf, type Outcome, refusal, refused } from "./failure.ts";
import type { Carried, Plan } from "./plan.ts";
import { validatePlan } from "./plan-check.ts";
import { type Entries, entriesOf, isRole, without } from "./plan-feature.ts";
import { parseBounded } from "./plan-json.ts";
import { readFeatures } from "./plan-roles.ts";
import { PLAN_VERSION } from "./plan-schema.ts";
import { readSettings } from "./plan-settings.ts";
import { cameOf, cleanText } from "./plan-text.ts";

export { writePlanFile } from "./plan-write.ts";

/** Most characters a plan file may have. */
export const MAX_PLAN_CHARACTERS = 8_000_000;

/** A plan as read from a file. */
export interface ReadPlan {
  readonly plan: Plan;
  /** False when the file states no water level: nothing can be sized until someone does. */
  readonly waterStated: boolean;
  /** What was repaired, left out or assumed. */
  readonly notes: readonly Failure[];
}

/** Each turns a whole collection of the version it is filed under into the next version's. */
const UPGRADERS: ReadonlyMap<number, (collection: Entries) => Entries> = new Map();

const MEMBERS = new Set(["type", "features", "drystead", "bbox", "crs"]);
const MAX_NOTES = 20;
/** How far NAD 83 and WGS 84 lie apart in North America, at most. */
const NAD83_OFF_M = 2;
const EXPECTED = { file: "plan", maxCharacters: MAX_PLAN_CHARACTERS } as const;

/**
 * Reads a plan file: a GeoJSON FeatureCollection (RFC 7946) with our settings in the member `drystead`.
 * What the file leaves out takes its default; what is not ours is carried in the plan. Failures:
 * `plan/not-json`, `plan/truncated`, `plan/too-large`, `plan/too-deep`, `plan/hostile-key`, `plan/foreign`,
 * `plan/newer-version`, `plan/bad-version`, `plan/other-crs`, `plan/bad-feature`, `plan/bad-geometry`,
 * `plan/bad-value`.
 */
export function readPlanFile(text: string): Outcome<ReadPlan> {
  try {
    return read(upgraded(collectionOf(parseBounded(text, EXPECTED))));
  } catch (thrown) {
    return refused(thrown);
  }
}

function collectionOf(value: unknown): Entries {
  const collection = entriesOf(value);
  if (collection?.type !== "FeatureCollection") {
    throw refusal("plan/foreign", {
      how: "no-collection",
      came: cameOf(collection?.type ?? value),
    });
  }
  if (!Array.isArray(collection.features)) {
    throw refusal("plan/no-features", { came: cameOf(collection.features) });
  }
  if (collection.drystead === undefined) {
    const roles = collection.features.some((item) => isRole(entriesOf(item?.properties)?.role));
    throw refusal("plan/foreign", roles ? { how: "settings-lost" } : { how: "no-settings" });
  }
  return collection;
}

function upgraded(collection: Entries): Entries {
  let current = collection;
  for (let version = versionOf(current); version < PLAN_VERSION; version++) {
    const upgrade = UPGRADERS.get(version);
    if (!upgrade) throw refusal("plan/bad-version", { came: version, most: PLAN_VERSION });
    current = upgrade(current);
  }
  return current;
}

function versionOf(collection: Entries): number {
  const settings = entriesOf(collection.drystead);
  if (!settings) {
    throw refusal("plan/bad-value", { how: "no-settings", came: cameOf(collection.drystead) });
  }
  const { version } = settings;
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1) {
    throw refusal("plan/bad-version", { came: cameOf(version), most: PLAN_VERSION });
  }
  if (version <= PLAN_VERSION) return version;
  throw refusal("plan/newer-version", { version, known: PLAN_VERSION });
}

function read(collection: Entries): Outcome<ReadPlan> {
  const notes: Failure[] = [];
  refuseOtherCrs(collection.crs, notes);
  const settings = readSettings(collection.drystead as Entries, notes);
  const { carried, ...parts } = readFeatures(collection.features as unknown[], notes);
  const rest: Carried = {
    ...carried,
    members: without(collection, MEMBERS),
    settings: settings.unused,
  };
  const others = carried.features.length;
  if (others > 0) notes.push(failureOf("plan/other-roles-kept", { count: others }));
  const plan: Plan = { ...settings.plan, ...parts, ...(isEmpty(rest) ? {} : { carried: rest }) };
  return checked({ ...plan, chosenId: chosenOf(plan, notes) }, settings.waterStated, notes);
}

function checked(plan: Plan, waterStated: boolean, notes: readonly Failure[]): Outcome<ReadPlan> {
  const valid = validatePlan(plan);
  if (valid.ok) return { ok: true, value: { plan, waterStated, notes: shortened(notes) } };
  const failure = failureOf("plan/bad-value", { how: "invalid", why: valid.failure });
  return { ok: false, failure };
}

function shortened(notes: readonly Failure[]): readonly Failure[] {
  const more = notes.length - MAX_NOTES;
  if (more <= 0) return notes;
  return [...notes.slice(0, MAX_NOTES), failureOf("plan/more-notes", { count: more })];
}

function chosenOf(plan: Plan, notes: Failure[]): string | null {
  const { chosenId, alignments } = plan;
  if (typeof chosenId !== "string" || alignments.some(({ id }) => id === chosenId)) return chosenId;
  notes.push(failureOf("plan/no-chosen", { chosenId: cleanText(chosenId, 40) }));
  return null;
}

function isEmpty(carried: Carried): boolean {
  return Object.values(carried).every((part) => Object.keys(part).length === 0);
}

/**
 * Refuses coordinates that an old-style `crs` member says are not longitude and latitude; NAD 83 is taken
 * with a note.
 */
export function refuseOtherCrs(crs: unknown, notes: Failure[]): void {
  if (crs === undefined || crs === null) return;
  const name = entriesOf(entriesOf(crs)?.properties)?.name;
  const text = typeof name === "string" ? name : "";
  if (/CRS84$|EPSG:+(4326|4979)$/i.test(text)) return;
  if (/CRS83$|EPSG:+4269$/i.test(text)) {
    notes.push(failureOf("plan/nad83-taken", { offM: NAD83_OFF_M }));
    return;
  }
  const named = cleanText(text, 80);
  throw refusal("plan/other-crs", named === "" ? { came: cameOf(crs) } : { named });
}
