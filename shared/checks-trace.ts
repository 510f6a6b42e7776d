import { letInByPipe, reachedByPipe } from "./checks-trace/pipes.ts";
import { letInIfCulvert, possibleCulvert } from "./checks-trace/possible-culverts.ts";
import { exitRoad } from "./checks-trace/roads.ts";
import {
  checksFrom,
  type LineContext,
  type TraceRule,
  type WaterContext,
} from "./checks-trace/trace-rule.ts";
import {
  crossesWater,
  entersThroughHole,
  ifItFails,
  overtopsAt,
  sourceInside,
  structureWetAnyway,
  waterGetsIn,
} from "./checks-trace/way-in.ts";
import {
  coarseTrace,
  holeReached,
  idleSource,
  lowUnconnected,
  notReached,
  noWater,
  offGround,
} from "./checks-trace/whole-plan.ts";
import { severityRank } from "./severity.ts";
import type { Check } from "./sizing-types.ts";

/** Every check of one alternative that follows from the traced water. A new one is a rule and a name here. */
const LINE_RULES: readonly TraceRule<LineContext>[] = [
  waterGetsIn,
  letInByPipe,
  letInIfCulvert,
  entersThroughHole,
  sourceInside,
  crossesWater,
  ifItFails,
  structureWetAnyway,
  overtopsAt,
];

/** Every check of the whole plan that follows from the traced water. */
const WATER_RULES: readonly TraceRule<WaterContext>[] = [
  noWater,
  offGround,
  idleSource,
  notReached,
  reachedByPipe,
  possibleCulvert,
  exitRoad,
  holeReached,
  lowUnconnected,
  coarseTrace,
];

/** Ids of all of them. */
export const TRACE_RULE_IDS = [...new Set([...LINE_RULES, ...WATER_RULES].map(({ id }) => id))];

/** Checks of one alternative, the gravest first. */
export function alternativeChecks(context: LineContext): Check[] {
  return inOrder(LINE_RULES.flatMap((rule) => checksFrom(rule, context)));
}

/** Checks of the whole plan, the gravest first. */
export function wholePlanChecks(context: WaterContext): Check[] {
  return inOrder(WATER_RULES.flatMap((rule) => checksFrom(rule, context)));
}

function inOrder(checks: readonly Check[]): Check[] {
  return [...checks].sort((a, b) => severityRank(a) - severityRank(b));
}
