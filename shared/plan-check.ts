import * as v from "valibot";
import { failureOf, type Outcome } from "./failure.ts";
import { LEAVE } from "./leave.ts";
import { CULVERT, DRAIN, POSSIBLE_CULVERT } from "./pipes/pipe-schema.ts";
import type { Plan } from "./plan.ts";
import type { BadPlanValue, PlanComplaint, PlanList } from "./plan-complaints.ts";
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
import { cameOf, cleanText } from "./plan-text.ts";
import { ROAD } from "./roads/road-schema.ts";
import { SURVEY } from "./survey/survey-schema.ts";
import { WORK_PLACE } from "./work-places/work-place-schema.ts";

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
const OPTIONAL: ReadonlySet<PlanList> = new Set([
  "sources",
  "culverts",
  "drains",
  "possibleCulverts",
  "roads",
  "workPlaces",
  "progress",
]);
/** Lists whose entries have no identifier. */
const WITHOUT_ID: ReadonlySet<PlanList> = new Set(["terrain", "progress"]);
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
  const complaint =
    typeof value !== "object" || value === null || Array.isArray(value)
      ? { is: "no-plan" as const, came: cameOf(value) }
      : complaintOf(value as Record<string, unknown>, before);
  if (complaint === null) return { ok: true, value: value as Plan };
  return { ok: false, failure: failureOf("plan/invalid", complaint) };
}

function complaintOf(
  after: Record<string, unknown>,
  before: Readonly<Record<string, unknown>>,
): PlanComplaint | null {
  return (
    unknownKey(after) ??
    firstOf(Object.keys(SINGLES), (key) => singleComplaint(key, after[key], before[key], before)) ??
    firstOf(Object.keys(LISTS), (key) => listComplaint(key as PlanList, after[key], before[key])) ??
    chosenComplaint(after as unknown as Plan)
  );
}

function unknownKey(after: Record<string, unknown>): PlanComplaint | null {
  const key = Object.keys(after).find((candidate) => !KNOWN.has(candidate));
  return key === undefined ? null : { is: "unknown-entry", key: cleanText(key, 40) };
}

function singleComplaint(
  key: string,
  after: unknown,
  before: unknown,
  whole: Readonly<Record<string, unknown>>,
): PlanComplaint | null {
  if (after === before && whole !== NOTHING) return null;
  return valueComplaint(SINGLES[key as keyof typeof SINGLES], after, null);
}

function listComplaint(list: PlanList, after: unknown, before: unknown): PlanComplaint | null {
  if (after === before && after !== undefined) return null;
  if (after === undefined && OPTIONAL.has(list)) return null;
  if (!Array.isArray(after)) return { is: "no-list", list, came: cameOf(after) };
  const [most, came] = [MAX_COUNT[list], after.length];
  if (came > most) return { is: "too-many", list, most, came };
  const proven = new Set<unknown>(Array.isArray(before) ? before : []);
  const wrong = firstOf([...after.entries()], ([index, item]) =>
    proven.has(item)
      ? null
      : valueComplaint(LISTS[list], item, { list, called: called(item, index) }),
  );
  return wrong ?? (WITHOUT_ID.has(list) ? null : sameId(after, list));
}

function called(item: unknown, index: number): string | number {
  const name = (item as { name?: unknown } | null)?.name;
  return (typeof name === "string" && cleanText(name, 40)) || index + 1;
}

function sameId(items: readonly { readonly id: string }[], list: PlanList): PlanComplaint | null {
  const seen = new Set<string>();
  for (const { id } of items) {
    if (seen.has(id)) return { is: "same-id", list, id: cameOf(id) };
    seen.add(id);
  }
  return null;
}

function chosenComplaint({ chosenId, alignments }: Plan): PlanComplaint | null {
  if (chosenId === null || alignments.some((alignment) => alignment.id === chosenId)) return null;
  return { is: "no-chosen", chosenId: cameOf(chosenId) };
}

function valueComplaint(
  schema: v.GenericSchema,
  value: unknown,
  of: BadPlanValue["of"],
): PlanComplaint | null {
  const result = v.safeParse(schema, value, { abortEarly: true, abortPipeEarly: true });
  if (result.success) return null;
  const issue = result.issues[0];
  const step = issue.path?.findLast((item) => typeof item.key === "number");
  const corner = step === undefined ? null : (step.key as number) + 1;
  return { is: "value", of, corner, said: issue.message };
}

function firstOf<T>(
  items: readonly T[],
  complaint: (item: T) => PlanComplaint | null,
): PlanComplaint | null {
  for (const item of items) {
    const found = complaint(item);
    if (found !== null) return found;
  }
  return null;
}
