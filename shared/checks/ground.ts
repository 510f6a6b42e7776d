import { FOOT_M } from "../constants.ts";
import { builtAt } from "../cut-walk.ts";
import { turnsOf } from "../turns.ts";
import { LISTED_ALONE, listStretches, MOST_LISTED } from "./listed.ts";
import { type CheckContext, ofSample, ofStretch, ofWholePlan, type Rule } from "./rule.ts";
import { stretchesOf } from "./stretch.ts";
import { whereOf } from "./where.ts";

/** Larger cells do not show what a levee stands on. Judgement. */
export const COARSEST_CELL_M = 3;
/** A grid of 3 m is a little more or less on the ground: map projections change lengths by up to 1 in 100. */
const CELL_SLACK = 1.01;
const LOW_SPOT_M = 0.15;
/** Below this height the fall across the base is not judged. */
const LEAST_JUDGED_M = 0.5 * FOOT_M;

/** Metres. */
export type GroundFinding =
  | { readonly kind: "no-ground"; readonly lengthM: number }
  | { readonly kind: "open-toe" }
  | { readonly kind: "cross-slope"; readonly fallM: number; readonly heightM: number }
  | { readonly kind: "narrow-low"; readonly widthM: number; readonly depthM: number }
  | { readonly kind: "narrow-lows"; readonly count: number; readonly stationIntervalM: number }
  | { readonly kind: "coarse-raster"; readonly cellM: number };

/** Stretches without ground data. */
export const noGround: Rule = {
  id: "no-ground",
  find: ({ plan, line, samples, cuts }) =>
    stretchesOf(samples, line.closed, plan.practice.stationIntervalM, (i) =>
      Number.isNaN(cuts.areaM2[i]!) ? 1 : 0,
    ).map((stretch) => {
      const finding = { kind: "no-ground", lengthM: stretch.lengthM } as const;
      return ofStretch("stop", { stretch, where: whereOf(stretch) }, finding);
    }),
};

/** Sides that never reach the ground. */
export const openToe: Rule = {
  id: "open-toe",
  find: ({ plan, line, samples, cuts }) =>
    stretchesOf(samples, line.closed, plan.practice.stationIntervalM, (i) =>
      cuts.toeOpen[i] === 1 ? cuts.greatestHeightM[i]! : 0,
    ).map((stretch) =>
      ofStretch("stop", { stretch, where: whereOf(stretch) }, { kind: "open-toe" }),
    ),
};

/** Ground that falls across the line under the base. */
export const crossSlope: Rule = {
  id: "cross-slope",
  find: ({ plan, line, samples, cuts }) => {
    const { crossFallShare, stationIntervalM } = plan.practice;
    const fallM = (i: number) => Math.abs(cuts.dropLeftM[i]! - cuts.dropRightM[i]!);
    const isJudged = (i: number) =>
      cuts.heightM[i]! >= LEAST_JUDGED_M && builtAt(cuts, i).section.fill !== "earth";
    const severityAt = (i: number) =>
      isJudged(i) ? fallM(i) / cuts.heightM[i]! - crossFallShare : 0;
    const stretches = stretchesOf(samples, line.closed, stationIntervalM, severityAt);
    return listStretches(stretches, severityAt).map((listed) => {
      const { worst } = listed.stretch;
      const heightM = cuts.heightM[worst]!;
      return ofStretch("caution", listed, { kind: "cross-slope", fallM: fallM(worst), heightM });
    });
  },
};

/** A ditch, a culvert's trench or a wheel track between two stakes. */
export const narrowLow: Rule = {
  id: "narrow-low",
  find: (context) => {
    const { plan, line, cuts, totals } = context;
    const { stationIntervalM } = plan.practice;
    const lows = turnsOf(cuts.groundM, LOW_SPOT_M, line.closed)
      .filter((turn) => turn.kind === "low" && cuts.heightM[turn.index]! > 0)
      .map(({ index }) => ({ index, widthM: widthOfLow(context, index, totals.lengthM) }))
      .filter(({ widthM }) => widthM < stationIntervalM)
      .sort((a, b) => cuts.heightM[b.index]! - cuts.heightM[a.index]!);
    const alone = lows.length > MOST_LISTED ? lows.slice(0, LISTED_ALONE) : lows;
    const others = lows.slice(alone.length);
    const rest = { kind: "narrow-lows", count: others.length, stationIntervalM } as const;
    return [
      ...alone.map(({ index, widthM }) => {
        const finding = { kind: "narrow-low", widthM, depthM: LOW_SPOT_M } as const;
        return ofSample("caution", context, index, finding);
      }),
      ...others.slice(0, 1).map(({ index }) => ofSample("caution", context, index, rest)),
    ];
  },
};

/** Width of a low place at the depth that makes it one; infinite where a side does not rise that far. */
function widthOfLow({ line, samples, cuts }: CheckContext, low: number, lengthM: number): number {
  const rimM = cuts.groundM[low]! + LOW_SPOT_M;
  const reach = (direction: 1 | -1) => {
    const around = samples.count - 1;
    for (let k = 1; k < samples.count; k++) {
      const raw = low + direction * k;
      if (!line.closed && (raw < 0 || raw >= samples.count)) return Number.POSITIVE_INFINITY;
      const index = ((raw % around) + around) % around;
      const at = line.closed ? index : raw;
      if (Number.isNaN(cuts.groundM[at]!)) return Number.POSITIVE_INFINITY;
      if (cuts.groundM[at]! < rimM) continue;
      const alongM = direction * (samples.chainageM[at]! - samples.chainageM[low]!);
      return alongM < 0 ? alongM + lengthM : alongM;
    }
    return Number.POSITIVE_INFINITY;
  };
  return reach(1) + reach(-1);
}

/** Cells too coarse to show what a levee stands on. */
export const coarseRaster: Rule = {
  id: "coarse-raster",
  find: ({ cellM, totals }) =>
    cellM > COARSEST_CELL_M * CELL_SLACK && totals.lengthNoDataM < totals.lengthM
      ? ofWholePlan("caution", { kind: "coarse-raster", cellM })
      : [],
};
