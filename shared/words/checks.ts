import type { CheckFinding } from "../checks/findings.ts";
import type { Check } from "../sizing-types.ts";
import type { UnitSystem } from "../units.ts";
import { BAG_RULES, BAG_TEXT } from "./checks/bags.ts";
import { BRIEFS, type Brief } from "./checks/brief.ts";
import { CLOSURE_RULES, CLOSURE_TEXT } from "./checks/closures.ts";
import { GROUND_RULES, GROUND_TEXT } from "./checks/ground.ts";
import { HEIGHT_RULES, HEIGHT_TEXT, WATER_RULES, WATER_TEXT } from "./checks/height.ts";
import { LEAVE_RULES, LEAVE_TEXT } from "./checks/leave.ts";
import { TYPE_RULES, TYPE_TEXT } from "./checks/levee-types.ts";
import { PIPE_RULES, PIPE_TEXT } from "./checks/pipes.ts";
import { PLACE_RULES, PLACE_TEXT } from "./checks/place.ts";
import { POSSIBLE_CULVERT_RULES, POSSIBLE_CULVERT_TEXT } from "./checks/possible-culverts.ts";
import { ROAD_RULES, ROAD_TEXT } from "./checks/roads.ts";
import { STABILITY_RULES, STABILITY_TEXT } from "./checks/stability.ts";
import type { FindingText, RulesOf, TextOf } from "./checks/text.ts";
import { TIME_RULES, TIME_TEXT } from "./checks/time.ts";
import { TRACED_RULES, TRACED_TEXT } from "./checks/traced-water.ts";
import { type Units, unitsOf } from "./units.ts";
import { whereWords } from "./where.ts";

const TEXT: TextOf<CheckFinding["kind"]> = {
  ...HEIGHT_TEXT,
  ...WATER_TEXT,
  ...BAG_TEXT,
  ...GROUND_TEXT,
  ...PLACE_TEXT,
  ...PIPE_TEXT,
  ...POSSIBLE_CULVERT_TEXT,
  ...CLOSURE_TEXT,
  ...ROAD_TEXT,
  ...TYPE_TEXT,
  ...STABILITY_TEXT,
  ...TIME_TEXT,
  ...LEAVE_TEXT,
  ...TRACED_TEXT,
};

const RULES: RulesOf<Check["id"]> = {
  ...HEIGHT_RULES,
  ...WATER_RULES,
  ...BAG_RULES,
  ...GROUND_RULES,
  ...PLACE_RULES,
  ...PIPE_RULES,
  ...POSSIBLE_CULVERT_RULES,
  ...CLOSURE_RULES,
  ...ROAD_RULES,
  ...TYPE_RULES,
  ...STABILITY_RULES,
  ...TIME_RULES,
  ...LEAVE_RULES,
  ...TRACED_RULES,
};

/** A check as a person reads it. */
export interface CheckWords {
  /** Where along the line, to stand before `what`; null when it speaks of the whole plan. */
  readonly where: string | null;
  readonly what: string;
  /** Place and what was found, as one sentence. */
  readonly message: string;
  readonly remedy: string;
  readonly rule: string;
  readonly source: string;
}

/** A check in the words of one unit system. */
export function checkWords(
  { id, where: place, finding }: Pick<Check, "id" | "where" | "finding">,
  system: UnitSystem,
): CheckWords {
  const units = unitsOf(system);
  const where = place && whereWords(place, units);
  const { what, remedy, source } = findingText(finding, units);
  const { rule, source: ruleSource } = RULES[id](units);
  const message = where === null ? what : `${where}: ${what}`;
  return { where, what, message, remedy, rule, source: source ?? ruleSource };
}

/** A check in one line: where, the number, one thing to do; null where it is only said in full. */
export function checkBrief(
  { where, finding }: Pick<Check, "where" | "finding">,
  system: UnitSystem,
): (Brief & { readonly where: string | null }) | null {
  const units = unitsOf(system);
  const make = BRIEFS[finding.kind] as ((finding: CheckFinding, units: Units) => Brief) | undefined;
  return make ? { where: where && whereWords(where, units), ...make(finding, units) } : null;
}

function findingText<F extends CheckFinding>(finding: F, units: Units): FindingText {
  const text = TEXT[finding.kind] as (finding: F, units: Units) => FindingText;
  return text(finding, units);
}

/** What a rule requires, and where that comes from. */
export function ruleWords(id: Check["id"], system: UnitSystem): { rule: string; source: string } {
  return RULES[id](unitsOf(system));
}
