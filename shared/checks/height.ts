import { FOOT_M } from "../constants.ts";
import { builtAt, leastHeight } from "../cut-walk.ts";
import { reserveM } from "../sections/built-reach.ts";
import type { EmergencySection } from "../sections/types.ts";
import { PYRAMID } from "../sections.ts";
import { type Listed, listInOne, listStretches } from "./listed.ts";
import { type CheckContext, type Finding, ofStretch, type Rule } from "./rule.ts";
import { type Stretch, stretchesOf } from "./stretch.ts";

/** Above this a levee on grass can slide. Source: NDSU-11, NDSU-97. */
export const BOND_TRENCH_OVER_M = 3 * FOOT_M;
/** No emergency levee is as high: such a height tells of the data, not of the place. Source: judgement. */
const UNLIKELY_M = 30 * FOOT_M;
const SLACK_M = 1e-9;
/** A reserve that is short by less than this is not short: no survey knows ground better. */
const RESERVE_SLACK_M = 0.01;

/** Metres. */
export type HeightFinding =
  | {
      readonly kind: "over-limit";
      readonly heightM: number;
      readonly limitM: number;
      readonly lengthM: number;
      /** True where no emergency levee is as high: the data is more likely wrong than the place. */
      readonly doubtsData: boolean;
    }
  | { readonly kind: "bond-trench"; readonly overM: number; readonly lengthM: number }
  | {
      readonly kind: "raise-over-limit";
      readonly raiseM: number;
      readonly limitM: number;
      readonly raisedHeightM: number;
    }
  | {
      readonly kind: "raise-too-narrow";
      readonly raiseM: number;
      readonly carriesM: number;
      readonly raisedHeightM: number;
      readonly leastBaseRatio: number;
    };

/** Stretches of the reaches chosen whose greatest height passes a level. */
function higherThan(
  context: CheckContext,
  levelM: number,
  isOf: (section: EmergencySection) => boolean,
): Stretch[] {
  const { plan, line, samples, cuts } = context;
  const excessM = (i: number) =>
    isOf(builtAt(cuts, i).section) ? leastHeight(context.cuts, i) - levelM - SLACK_M : 0;
  return stretchesOf(samples, line.closed, plan.practice.stationIntervalM, excessM);
}

/** A pyramid, or one that is raised. */
function isPyramid(section: EmergencySection): boolean {
  return section === PYRAMID || section.earlierInto !== undefined;
}

/** Heights over the limit. */
export const overLimit: Rule = {
  id: "over-limit",
  find: (context) => {
    const { limitM } = context.plan.practice;
    const stretches = higherThan(context, limitM, ({ limitM }) => limitM === null);
    const heightAt = (i: number) => leastHeight(context.cuts, i);
    const doubtsData = stretches.some(({ worst }) => heightAt(worst) > UNLIKELY_M);
    const listed = doubtsData ? listInOne(stretches, heightAt) : listStretches(stretches, heightAt);
    return listed.map((each) => {
      const heightM = heightAt(each.stretch.worst);
      const figures = { heightM, limitM, lengthM: each.lengthM, doubtsData };
      return ofStretch("stop", each, { kind: "over-limit", ...figures });
    });
  },
};

/** Heights that require a bond trench and stripped sod. */
export const bondTrench: Rule = {
  id: "bond-trench",
  find: (context) =>
    listStretches(higherThan(context, BOND_TRENCH_OVER_M, isPyramid), (i) =>
      leastHeight(context.cuts, i),
    ).map((listed) => {
      const { lengthM } = listed;
      const figures = { overM: BOND_TRENCH_OVER_M, lengthM };
      return ofStretch("caution", listed, { kind: "bond-trench", ...figures });
    }),
};

/** Whether the levee could follow a higher forecast. */
export const roomToRaise: Rule = {
  id: "room-to-raise",
  find: (context) => [...tooHighToRaise(context), ...tooNarrowToRaise(context)],
};

function tooHighToRaise(context: CheckContext): Finding[] {
  const { plan, line, samples, cuts } = context;
  const { limitM, raiseM, stationIntervalM } = plan.practice;
  const severityAt = (i: number) => {
    const greatestM = cuts.greatestHeightM[i]!;
    return greatestM > limitM + SLACK_M ? 0 : built(context, i, greatestM + raiseM - limitM);
  };
  const stretches = stretchesOf(samples, line.closed, stationIntervalM, severityAt);
  return listRoomToRaise(stretches, raiseM, severityAt).map((listed) => {
    const raisedHeightM = cuts.greatestHeightM[listed.stretch.worst]! + raiseM;
    const figures = { raiseM, limitM, raisedHeightM };
    return ofStretch("caution", listed, { kind: "raise-over-limit", ...figures });
  });
}

function tooNarrowToRaise(context: CheckContext): Finding[] {
  const { plan, line, samples, cuts } = context;
  const { section, practice } = plan;
  const { raiseM, limitM } = practice;
  const reachM = (i: number) =>
    reserveM(builtAt(cuts, i), cuts.heightM[i]!, cuts.greatestHeightM[i]!, plan);
  const severityAt = (i: number) => {
    if (cuts.greatestHeightM[i]! + raiseM > limitM + RESERVE_SLACK_M) return 0;
    return built(context, i, cuts.heightM[i]! + raiseM - reachM(i));
  };
  const stretches = stretchesOf(samples, line.closed, practice.stationIntervalM, severityAt);
  return listRoomToRaise(stretches, raiseM, severityAt).map((listed) => {
    const { worst } = listed.stretch;
    const figures = {
      raiseM,
      carriesM: reachM(worst),
      raisedHeightM: cuts.heightM[worst]! + raiseM,
    };
    const { leastBaseRatio } = section;
    return ofStretch("note", listed, { kind: "raise-too-narrow", ...figures, leastBaseRatio });
  });
}

/** Stretches without room to raise in one; none where no raise is required. */
function listRoomToRaise(
  stretches: readonly Stretch[],
  raiseM: number,
  severityAt: (sample: number) => number,
): Listed[] {
  return raiseM > 0 ? listInOne(stretches, severityAt) : [];
}

/** How much too high or too narrow; 0 where nothing is built that may be raised by its base. */
function built(context: CheckContext, sample: number, excessM: number): number {
  const { section } = builtAt(context.cuts, sample);
  const counts = context.cuts.heightM[sample]! > 0 && isPyramid(section);
  return counts ? excessM - RESERVE_SLACK_M : 0;
}
