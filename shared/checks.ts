import { placeAt } from "./alignment.ts";
import { bagDensity, heavyBag, narrowBase } from "./checks/bag.ts";
import { closeBank } from "./checks/close-bank.ts";
import { closures } from "./checks/closures.ts";
import { incompleteTotals } from "./checks/complete.ts";
import { coarseRaster, crossSlope, narrowLow, noGround, openToe } from "./checks/ground.ts";
import { bondTrench, overLimit, roomToRaise } from "./checks/height.ts";
import { insideHoles, pumpFailure, pumps } from "./checks/inside.ts";
import { keptSetback } from "./checks/kept-setback.ts";
import { leave } from "./checks/leave.ts";
import { waterLevel } from "./checks/level.ts";
import { crossesItself, tieIn } from "./checks/line.ts";
import { basesOverlap } from "./checks/overlap.ts";
import { culvert, drain } from "./checks/pipes.ts";
import { enclosure, noGo, setback } from "./checks/place.ts";
import type { CheckContext, Finding, Rule } from "./checks/rule.ts";
import {
  bracingNotCalculated,
  carpentry,
  typeCautions,
  typeLimit,
  typesMeet,
} from "./checks/sections.ts";
import { creepRule, exitGradientRule } from "./checks/seep.ts";
import { overturning, sliding } from "./checks/stand.ts";
import { groundReading } from "./checks/survey.ts";
import { forecastCrest, forecastZero, inTime } from "./checks/time.ts";
import { datum, fallDirection, leastFreeboard } from "./checks/water.ts";
import type { LonLat } from "./plan.ts";
import { severityRank } from "./severity.ts";
import type { Check } from "./sizing-types.ts";

/** Rules that look at holding or time, which are not worked out while something is dragged. */
const AT_REST: readonly Rule[] = [
  sliding,
  overturning,
  exitGradientRule,
  creepRule,
  pumps,
  pumpFailure,
  insideHoles,
  inTime,
  closures,
  forecastCrest,
  forecastZero,
];

/** Every check there is. A new one is a rule in `checks/` and a name here. */
export const RULES: readonly Rule[] = [
  waterLevel,
  incompleteTotals,
  overLimit,
  typeLimit,
  noGround,
  openToe,
  crossesItself,
  basesOverlap,
  enclosure,
  setback,
  keptSetback,
  noGo,
  culvert,
  drain,
  tieIn,
  closeBank,
  narrowLow,
  crossSlope,
  bondTrench,
  roomToRaise,
  datum,
  fallDirection,
  leastFreeboard,
  leave,
  heavyBag,
  bagDensity,
  narrowBase,
  coarseRaster,
  groundReading,
  typesMeet,
  typeCautions,
  carpentry,
  bracingNotCalculated,
  ...AT_REST,
];

const AT_REST_IDS = new Set(AT_REST.map(({ id }) => id));

/** True for a check that is found only at rest: while a line is dragged, the one that is shown is a former one. */
export function isFoundAtRest({ id }: Pick<Check, "id">): boolean {
  return AT_REST_IDS.has(id);
}

/**
 * Checks of a line as it is dragged, with those of the last one at rest that are only found at rest: nothing
 * is left out that may still hold. Stretches past the end of the shorter line are dropped.
 */
export function checksWhileDragged(
  now: readonly Check[],
  atRest: readonly Check[],
  lengthM: number,
): Check[] {
  return [...now, ...atRest.filter((each) => isFoundAtRest(each) && each.toM <= lengthM)];
}

/** Runs every rule. The gravest come first, then by chainage. */
export function runChecks(context: CheckContext): Check[] {
  return RULES.flatMap((rule) =>
    rule.find(context).flatMap((finding) => checksOf(rule, finding, context)),
  ).sort((a, b) => severityRank(a) - severityRank(b) || a.fromM - b.fromM);
}

function checksOf({ id }: Rule, found: Finding, context: CheckContext): Check[] {
  const { severity, finding, where } = found;
  const pointM = found.chainageM ?? 0;
  const parts = found.stretch?.parts ?? [{ fromM: pointM, toM: pointM }];
  const check = { id, severity, finding, where };
  return parts.map((part, i) =>
    i === 0
      ? { ...check, ...part, at: markOf(found, context) }
      : { ...check, ...part, at: null, continued: true },
  );
}

function markOf({ at, sample }: Finding, { samples, line, plane }: CheckContext): LonLat | null {
  if (at) return at;
  if (sample === null) return null;
  const { xM, yM } = placeAt(line, samples.chainageM[sample]!);
  return plane.toLonLat(xM, yM);
}
