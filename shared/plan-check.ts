import * as v from "valibot";
import type { Outcome } from "./failure.ts";
import { LEAVE } from "./leave.ts";
import { CULVERT, DRAIN, POSSIBLE_CULVERT } from "./pipes/pipe-schema.ts";
import type { Plan } from "./plan.ts";
import {
  ALIGNMENT,
  CARRIED,
  CHOSEN,
  FLOW,
  GAUGE,
  MAX_COUNT,
  NO_GO,
  PROGRESS_MARK,
  SOURCE,
  STRUCTURE,
  TITLE,
} from "./plan-schema.ts";
import {
  GROUND,
  HOLDING,
  PRACTICE,
  SECTION,
  TERRAIN,
  TIME,
  WATER,
} from "./plan-settings-schema.ts";
import { cleanText, shown } from "./plan-text.ts";
import { ROAD } from "./roads/road-schema.ts";
import { SURVEY } from "./survey/survey-schema.ts";
import { WORK_PLACE } from "./work-places/work-place-schema.ts";

type ListKey = keyof typeof MAX_COUNT;

const LISTS = {
  structures: STRUCTURE,
  alignments: ALIGNMENT,
  noGo: NO_GO,
  sources: SOURCE,
  culverts: CULVERT,
  drains: DRAIN,
  possibleCulverts: POSSIBLE_CULVERT,
  roads: ROAD,
  workPlaces: WORK_PLACE,
  terrain: TERRAIN,
  progress: PROGRESS_MARK,
};
/** Lists that a plan may leave out. */
const OPTIONAL: ReadonlySet<ListKey> = new Set([
  "sources",
  "culverts",
  "drains",
  "possibleCulverts",
  "roads",
  "workPlaces",
  "progress",
]);
/** Lists whose entries have no identifier. */
const WITHOUT_ID: ReadonlySet<ListKey> = new Set(["terrain", "progress"]);
const LIST_WORDS = {
  structures: ["buildings", "Building"],
  alignments: ["lines", "Line"],
  noGo: ["no-go areas", "No-go area"],
  sources: ["sources", "Source"],
  culverts: ["culverts", "Culvert"],
  drains: ["drains", "Drain"],
  possibleCulverts: ["possible culverts", "Possible culvert"],
  roads: ["exit roads", "Road"],
  workPlaces: ["work places", "Work place"],
  terrain: ["elevation data files", "Elevation data file"],
  progress: ["marks of what is built (progress)", "Mark"],
} as const;
const SINGLES = {
  title: TITLE,
  gauge: GAUGE,
  flow: FLOW,
  water: WATER,
  ground: GROUND,
  section: SECTION,
  practice: PRACTICE,
  holding: HOLDING,
  time: TIME,
  leave: LEAVE,
  survey: SURVEY,
  chosenId: CHOSEN,
  carried: CARRIED,
};
const KNOWN = new Set([...Object.keys(LISTS), ...Object.keys(SINGLES)]);
const NOTHING: Readonly<Record<string, unknown>> = {};

/**
 * Whether a value is a plan: shape, ranges, counts, identifiers. The value itself is returned, not a copy.
 * The failure (`plan/invalid`) names the setting or corner, what was expected and what came.
 */
export function validatePlan(value: unknown): Outcome<Plan> {
  return check(value, NOTHING);
}

/** As {@link validatePlan}, for a plan made from `before`, which is valid: what both share is not looked at again. */
export function validateChange(before: Plan, after: unknown): Outcome<Plan> {
  return check(after, before as unknown as Readonly<Record<string, unknown>>);
}

function check(value: unknown, before: Readonly<Record<string, unknown>>): Outcome<Plan> {
  if (typeof value !== "object" || value === null || Array.isArray(value)) {
    return invalid(`Expected a plan; came ${shown(value)}.`);
  }
  const after = value as Record<string, unknown>;
  const complaint =
    unknownKey(after) ??
    firstOf(Object.keys(SINGLES), (key) => singleComplaint(key, after[key], before[key], before)) ??
    firstOf(Object.keys(LISTS), (key) => listComplaint(key as ListKey, after[key], before[key])) ??
    chosenComplaint(value as Plan);
  return complaint === null ? { ok: true, value: value as Plan } : invalid(complaint);
}

function unknownKey(after: Record<string, unknown>): string | null {
  const key = Object.keys(after).find((candidate) => !KNOWN.has(candidate));
  return key === undefined ? null : `Expected a plan without the unknown entry ${shown(key)}.`;
}

function singleComplaint(
  key: string,
  after: unknown,
  before: unknown,
  whole: Readonly<Record<string, unknown>>,
): string | null {
  if (after === before && whole !== NOTHING) return null;
  return complaintOf(SINGLES[key as keyof typeof SINGLES], after, "");
}

function listComplaint(key: ListKey, after: unknown, before: unknown): string | null {
  if (after === before && after !== undefined) return null;
  if (after === undefined && OPTIONAL.has(key)) return null;
  const [many, one] = LIST_WORDS[key];
  if (!Array.isArray(after)) return `Expected ${many} as a list; came ${shown(after)}.`;
  if (after.length > MAX_COUNT[key]) {
    return `Expected at most ${MAX_COUNT[key]} ${many}; came ${after.length}.`;
  }
  const proven = new Set<unknown>(Array.isArray(before) ? before : []);
  const wrong = firstOf([...after.entries()], ([index, item]) =>
    proven.has(item) ? null : complaintOf(LISTS[key], item, `${one} ${called(item, index)}`),
  );
  return wrong ?? (WITHOUT_ID.has(key) ? null : sameId(after, one));
}

function called(item: unknown, index: number): string {
  const name = (item as { name?: unknown } | null)?.name;
  const plain = typeof name === "string" ? cleanText(name, 40) : "";
  return plain === "" ? `${index + 1}` : `"${plain}"`;
}

function sameId(items: readonly { readonly id: string }[], one: string): string | null {
  const seen = new Set<string>();
  for (const item of items) {
    if (seen.has(item.id))
      return `${one}: expected identifiers that differ; ${shown(item.id)} came twice.`;
    seen.add(item.id);
  }
  return null;
}

function chosenComplaint(plan: Plan): string | null {
  const { chosenId, alignments } = plan;
  if (chosenId === null || alignments.some((alignment) => alignment.id === chosenId)) return null;
  return `Expected the chosen line (chosenId) among the lines; came ${shown(chosenId)}.`;
}

function complaintOf(schema: v.GenericSchema, value: unknown, where: string): string | null {
  const result = v.safeParse(schema, value, { abortEarly: true, abortPipeEarly: true });
  if (result.success) return null;
  const issue = result.issues[0];
  const step = issue.path?.findLast((item) => typeof item.key === "number");
  const corner = step === undefined ? "" : `corner ${(step.key as number) + 1}`;
  const place = [where, corner].filter((words) => words !== "").join(", ");
  return place === "" ? issue.message : `${place}: ${issue.message}`;
}

function firstOf<T>(items: readonly T[], complaint: (item: T) => string | null): string | null {
  for (const item of items) {
    const found = complaint(item);
    if (found !== null) return found;
  }
  return null;
}

function invalid(message: string): Outcome<Plan> {
  return {
    ok: false,
    failure: {
      code: "plan/invalid",
      message,
      remedy: "The plan is as it was. Give a value in the range named, then try again.",
    },
  };
}
