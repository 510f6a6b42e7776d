import { builtAt } from "../cut-walk.ts";
import { FOOT_M } from "../defaults.ts";
import { reserveM } from "../sections/built-reach.ts";
import type { EmergencySection } from "../sections/types.ts";
import { PYRAMID } from "../sections.ts";
import type { CheckContext, Finding, Rule } from "./rule.ts";
import { type Stretch, stretchesOf } from "./stretch.ts";
import { type Told, toldAsOne, toldOf } from "./told.ts";
import { distanceWords, lengthWords } from "./words.ts";

const BOND_TRENCH_OVER_M = 3 * FOOT_M;
/** No emergency levee is as high: such a height tells of the data, not of the place. Source: judgement. */
const UNHEARD_OF_M = 30 * FOOT_M;
const SLACK_M = 1e-9;
/** A reserve that is short by less than this is not short: no survey knows ground better. */
const RESERVE_SLACK_M = 0.01;

/** Greatest height at a sample; where a part of the ground under the base is missing, the least it can be. */
export function leastGreatestM({ cuts }: CheckContext, i: number): number {
  const greatestM = cuts.greatestHeightM[i]!;
  return Number.isNaN(greatestM) ? cuts.heightM[i]! : greatestM;
}

/** Stretches of the reaches asked for whose greatest height passes a level. */
function higherThan(
  context: CheckContext,
  levelM: number,
  isOf: (section: EmergencySection) => boolean,
): Stretch[] {
  const { plan, line, trace, cuts } = context;
  const excessM = (i: number) =>
    isOf(builtAt(cuts, i).section) ? leastGreatestM(context, i) - levelM - SLACK_M : 0;
  return stretchesOf(trace, line.closed, plan.practice.stationIntervalM, excessM);
}

/** A pyramid, or one that is raised. */
function isPyramid(section: EmergencySection): boolean {
  return section === PYRAMID || section.earlierInto !== undefined;
}

const HIGHER_GROUND =
  "Lead the line over higher ground here. If there is none, sandbags are not the section for this stretch: ask a licensed engineer.";
const DOUBT_THE_DATA =
  "No emergency levee is that high, so doubt the data first: a mark for missing data that the raster does not declare (-9999, 0), the vertical unit of the raster, and the datum and unit of the water. If all are right, sandbags are not the section here: ask a licensed engineer.";

/** Heights over the limit. */
export const overLimit: Rule = {
  id: "over-limit",
  rule: "Nowhere higher above the ground under it than the greatest safe height.",
  source: "common practice, no source; MO-2217: 3 ft preferred, 5 ft practical",
  find: (context) => {
    const { limitM } = context.plan.practice;
    const stretches = higherThan(context, limitM, ({ limit }) => limit.greatestM === null);
    const heightAt = (i: number) => leastGreatestM(context, i);
    const unheardOf = stretches.some(({ worst }) => heightAt(worst) > UNHEARD_OF_M);
    const told = unheardOf ? toldAsOne(stretches, heightAt) : toldOf(stretches, heightAt);
    return told.map(({ stretch, where, lengthM }) => ({
      severity: "stop",
      stretch,
      sample: stretch.worst,
      message: `${where}: up to ${lengthWords(heightAt(stretch.worst))} above the lowest ground under the base, over the limit of ${lengthWords(limitM)}, on ${distanceWords(lengthM)}.`,
      remedy: unheardOf ? DOUBT_THE_DATA : HIGHER_GROUND,
    }));
  },
};

/** Heights that ask for a bond trench and stripped sod. */
export const bondTrench: Rule = {
  id: "bond-trench",
  rule: "Over about 3 ft: a bond trench 4 to 6 in deep and 18 to 24 in wide, and the sod stripped.",
  source: "NDSU-11, NDSU-97",
  find: (context) =>
    toldOf(higherThan(context, BOND_TRENCH_OVER_M, isPyramid), (i) =>
      leastGreatestM(context, i),
    ).map(({ stretch, where, lengthM }) => ({
      severity: "caution",
      stretch,
      sample: stretch.worst,
      message: `${where}: over ${lengthWords(BOND_TRENCH_OVER_M)} high on ${distanceWords(lengthM)}, where a levee on grass can slide.`,
      remedy:
        "Strip the sod under the base and dig a bond trench, 4 to 6 in deep and 18 to 24 in wide, along the middle before the first course.",
    })),
};

/** Whether the levee could follow a higher forecast. */
export const raiseReserve: Rule = {
  id: "raise-reserve",
  rule: "The base can later carry the raise that the forecast may ask for, within the limit.",
  source: "NDSU-NR (base at least twice the height); common practice, no source (1 to 2 ft more)",
  find: (context) => [...tooHighToRaise(context), ...tooNarrowToRaise(context)],
};

function tooHighToRaise(context: CheckContext): Finding[] {
  const { plan, line, trace, cuts } = context;
  const { limitM, raiseM, stationIntervalM } = plan.practice;
  const severityAt = (i: number) => {
    const greatestM = cuts.greatestHeightM[i]!;
    return greatestM > limitM + SLACK_M ? 0 : built(context, i, greatestM + raiseM - limitM);
  };
  const stretches = stretchesOf(trace, line.closed, stationIntervalM, severityAt);
  return toldOfReserve(stretches, raiseM, severityAt).map(({ stretch, where }) => ({
    severity: "caution",
    stretch,
    sample: stretch.worst,
    message: `${where}: a raise of ${lengthWords(raiseM)} would take it past the limit of ${lengthWords(limitM)}, to ${lengthWords(cuts.greatestHeightM[stretch.worst]! + raiseM)} at worst.`,
    remedy:
      "If the river may go that much higher, choose higher ground now; later it cannot be raised safely.",
  }));
}

function tooNarrowToRaise(context: CheckContext): Finding[] {
  const { plan, line, trace, cuts } = context;
  const { section, practice } = plan;
  const { raiseM, limitM } = practice;
  const reachM = (i: number) =>
    reserveM(builtAt(cuts, i), cuts.heightM[i]!, cuts.greatestHeightM[i]!, plan);
  const severityAt = (i: number) => {
    if (cuts.greatestHeightM[i]! + raiseM > limitM + RESERVE_SLACK_M) return 0;
    return built(context, i, cuts.heightM[i]! + raiseM - reachM(i));
  };
  const stretches = stretchesOf(trace, line.closed, practice.stationIntervalM, severityAt);
  return toldOfReserve(stretches, raiseM, severityAt).map(({ stretch, where }) => ({
    severity: "note",
    stretch,
    sample: stretch.worst,
    message: `${where}: the base is too narrow for a raise of ${lengthWords(raiseM)}. At worst it can carry ${lengthWords(reachM(stretch.worst))} and would be asked for ${lengthWords(cuts.heightM[stretch.worst]! + raiseM)}.`,
    remedy: `If a raise is likely, lay the base for the raised height from the start: a levee cannot be raised without a base of at least ${section.leastBaseRatio} times its height.`,
  }));
}

/** Stretches without reserve as one thing to tell; nothing where no raise is asked for. */
function toldOfReserve(
  stretches: readonly Stretch[],
  raiseM: number,
  severityAt: (sample: number) => number,
): Told[] {
  return raiseM > 0 ? toldAsOne(stretches, severityAt) : [];
}

/** How much too high or too narrow; 0 where nothing is built that may be raised by its base. */
function built(context: CheckContext, sample: number, excessM: number): number {
  const { section } = builtAt(context.cuts, sample);
  const counts = context.cuts.heightM[sample]! > 0 && isPyramid(section);
  return counts ? excessM - RESERVE_SLACK_M : 0;
}
