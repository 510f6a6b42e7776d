import { asFailure, type Outcome, Refusal } from "./failure.ts";
import type { Carried, Plan } from "./plan.ts";
import { validatePlan } from "./plan-check.ts";
import { type Entries, entriesOf, isRole, without } from "./plan-feature.ts";
import { parseBounded } from "./plan-json.ts";
import { readFeatures } from "./plan-roles.ts";
import { PLAN_VERSION } from "./plan-schema.ts";
import { readSettings } from "./plan-settings.ts";
import { cleanText, shown } from "./plan-text.ts";

export { writePlanFile } from "./plan-write.ts";

/** Most characters a plan file may have. */
export const MAX_PLAN_CHARACTERS = 8_000_000;

/** A plan as read from a file. */
export interface ReadPlan {
  readonly plan: Plan;
  /** False when the file states no water level: nothing can be sized until someone does. */
  readonly waterStated: boolean;
  /** What was repaired, left out or assumed, each in one sentence for the person. */
  readonly notes: readonly string[];
}

/** Each turns a whole collection of the version it is filed under into the next version's. */
const UPGRADERS: ReadonlyMap<number, (collection: Entries) => Entries> = new Map();

const MEMBERS = new Set(["type", "features", "drystead", "bbox", "crs"]);
const MAX_NOTES = 20;
const EXPECTED = { words: "a plan file", maxCharacters: MAX_PLAN_CHARACTERS };

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
    if (thrown instanceof Refusal) return { ok: false, failure: asFailure(thrown) };
    throw thrown;
  }
}

function collectionOf(value: unknown): Entries {
  const collection = entriesOf(value);
  if (collection?.type !== "FeatureCollection") {
    throw foreign(`came ${shown(collection?.type ?? value)}.`);
  }
  if (!Array.isArray(collection.features)) {
    throw new Refusal(
      "plan/bad-feature",
      `Expected "features" as a list; came ${shown(collection.features)}.`,
      "The file is damaged: ask for it again, or open an earlier copy.",
    );
  }
  if (collection.drystead === undefined) {
    const roles = collection.features.some((item) => isRole(entriesOf(item?.properties)?.role));
    throw roles ? withoutSettings() : foreign("it has no such member.");
  }
  return collection;
}

function foreign(came: string): Refusal {
  return new Refusal(
    "plan/foreign",
    `Expected a plan: a GeoJSON FeatureCollection with the member "drystead"; ${came}`,
    "If it holds building footprints, import it as buildings in Line instead.",
  );
}

function withoutSettings(): Refusal {
  return new Refusal(
    "plan/foreign",
    'Expected a plan: a GeoJSON FeatureCollection with the member "drystead"; it has features of a plan, but its settings are missing.',
    'Another program may have dropped them. Copy the member "drystead" from the plan as it was saved here, or add "drystead": {"version": 1} to take every default.',
  );
}

function upgraded(collection: Entries): Entries {
  let current = collection;
  for (let version = versionOf(current); version < PLAN_VERSION; version++) {
    const upgrade = UPGRADERS.get(version);
    if (!upgrade) throw badVersion(version);
    current = upgrade(current);
  }
  return current;
}

function versionOf(collection: Entries): number {
  const settings = entriesOf(collection.drystead);
  if (!settings) {
    throw new Refusal(
      "plan/bad-value",
      `Expected the member "drystead" as an object with the settings; came ${shown(collection.drystead)}.`,
      'Put "drystead": {"version": 1} in the file to take every default.',
    );
  }
  const { version } = settings;
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1) {
    throw badVersion(version);
  }
  if (version <= PLAN_VERSION) return version;
  throw new Refusal(
    "plan/newer-version",
    `Expected a plan of version ${PLAN_VERSION}; this one has version ${version}, written by a newer Drystead.`,
    "Open it with the newer Drystead, or save it there for this one.",
  );
}

function badVersion(came: unknown): Refusal {
  return new Refusal(
    "plan/bad-version",
    `Expected the plan's version as a whole number from 1 to ${PLAN_VERSION}; came ${shown(came)}.`,
    `Put "version": ${PLAN_VERSION} first in the member "drystead".`,
  );
}

function read(collection: Entries): Outcome<ReadPlan> {
  const notes: string[] = [];
  refuseOtherCrs(collection.crs, notes);
  const settings = readSettings(collection.drystead as Entries, notes);
  const { carried, ...parts } = readFeatures(collection.features as unknown[], notes);
  const rest: Carried = {
    ...carried,
    members: without(collection, MEMBERS),
    settings: settings.unused,
  };
  if (carried.features.length > 0) {
    notes.push(
      `${carried.features.length} features of other roles are kept in the file but not used.`,
    );
  }
  const plan: Plan = { ...settings.plan, ...parts, ...(isEmpty(rest) ? {} : { carried: rest }) };
  return checked({ ...plan, chosenId: chosenOf(plan, notes) }, settings.waterStated, notes);
}

function checked(plan: Plan, waterStated: boolean, notes: readonly string[]): Outcome<ReadPlan> {
  const valid = validatePlan(plan);
  if (valid.ok) return { ok: true, value: { plan, waterStated, notes: shortened(notes) } };
  const { message = "" } = valid.failure;
  const remedy = "Correct it in the file, or leave it out. The present plan is as it was.";
  return { ok: false, failure: { code: "plan/bad-value", message, remedy } };
}

function shortened(notes: readonly string[]): readonly string[] {
  if (notes.length <= MAX_NOTES) return notes;
  return [...notes.slice(0, MAX_NOTES), `And ${notes.length - MAX_NOTES} more like these.`];
}

function chosenOf(plan: Plan, notes: string[]): string | null {
  const { chosenId, alignments } = plan;
  if (typeof chosenId !== "string" || alignments.some(({ id }) => id === chosenId)) return chosenId;
  notes.push(`The chosen line ${shown(chosenId)} is not in the file: none is chosen.`);
  return null;
}

function isEmpty(carried: Carried): boolean {
  return Object.values(carried).every((part) => Object.keys(part).length === 0);
}

/**
 * Refuses coordinates that an old-style `crs` member says are not longitude and latitude; NAD 83 is taken
 * with a note.
 */
export function refuseOtherCrs(crs: unknown, notes: string[]): void {
  if (crs === undefined || crs === null) return;
  const name = entriesOf(entriesOf(crs)?.properties)?.name;
  const text = typeof name === "string" ? name : "";
  if (/CRS84$|EPSG:+(4326|4979)$/i.test(text)) return;
  if (/CRS83$|EPSG:+4269$/i.test(text)) {
    notes.push(
      "Coordinates in NAD 83 are taken as WGS 84: places may be off by one or two meters.",
    );
    return;
  }
  throw new Refusal(
    "plan/other-crs",
    `Expected longitude and latitude in WGS 84 (RFC 7946); the file says its coordinates are in ${cleanText(text, 80) || shown(crs)}.`,
    "Export it again as GeoJSON in EPSG:4326.",
  );
}
