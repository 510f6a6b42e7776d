import { builtAt } from "../cut-walk.ts";
import { FOOT_M } from "../defaults.ts";
import { OPEN_AFTER_RUNS } from "../section.ts";
import { turnsOf } from "../turns.ts";
import { type CheckContext, type Finding, ofWholePlan, type Rule } from "./rule.ts";
import { stretchesOf } from "./stretch.ts";
import { KEPT_APART, MOST_TOLD, toldOf } from "./told.ts";
import { distanceWords, lengthWords, stationWords, stretchWords } from "./words.ts";

const COARSEST_CELL_M = 3;
/** A grid of 3 m is a little more or less on the ground: map projections change lengths by up to 1 in 100. */
const CELL_SLACK = 1.01;
const LOW_SPOT_M = 0.15;
/** Below this height the fall across the base is not judged. */
const LEAST_JUDGED_M = 0.5 * FOOT_M;

/** Stretches without ground data. */
export const noGround: Rule = {
  id: "no-ground",
  rule: "Heights are known everywhere under the levee; a hole in the data is never taken as ground.",
  source: "judgement",
  find: ({ plan, line, trace, cuts }) =>
    stretchesOf(trace, line.closed, plan.practice.stationIntervalM, (i) =>
      Number.isNaN(cuts.areaM2[i]!) ? 1 : 0,
    ).map((stretch) => ({
      severity: "stop",
      stretch,
      sample: stretch.worst,
      message: `${stretchWords(stretch)}: no ground data under the levee on ${distanceWords(stretch.lengthM)}. Its bags and sand are not in the totals.`,
      remedy:
        "Open a raster that covers this stretch, lead the line round the hole, or level the ground there and add its bags by hand.",
    })),
};

/** Sides that never reach the ground. */
export const openToe: Rule = {
  id: "open-toe",
  rule: "Both sides of the levee meet the ground.",
  source: "judgement",
  find: ({ plan, line, trace, cuts }) =>
    stretchesOf(trace, line.closed, plan.practice.stationIntervalM, (i) =>
      cuts.toeOpen[i] === 1 ? cuts.greatestHeightM[i]! : 0,
    ).map((stretch) => ({
      severity: "stop",
      stretch,
      sample: stretch.worst,
      message: `${stretchWords(stretch)}: the ground falls away as steeply as the levee's side, which does not meet it within ${OPEN_AFTER_RUNS} times its width on level ground. Counted only that far: the real need is larger.`,
      remedy:
        "Move the line back from the bank, on to ground that is level enough to carry a base.",
    })),
};

/** Ground that falls across the line under the base. */
export const crossFall: Rule = {
  id: "cross-fall",
  rule: "The ground falls across the base by no more than the allowed share of the height.",
  source: "judgement",
  find: ({ plan, line, trace, cuts }) => {
    const { crossFallShare, stationIntervalM } = plan.practice;
    const fallM = (i: number) => Math.abs(cuts.dropLeftM[i]! - cuts.dropRightM[i]!);
    const isJudged = (i: number) =>
      cuts.heightM[i]! >= LEAST_JUDGED_M && builtAt(cuts, i).section.fill !== "earth";
    const severityAt = (i: number) =>
      isJudged(i) ? fallM(i) / cuts.heightM[i]! - crossFallShare : 0;
    const stretches = stretchesOf(trace, line.closed, stationIntervalM, severityAt);
    return toldOf(stretches, severityAt).map(({ stretch, where }) => ({
      severity: "caution",
      stretch,
      sample: stretch.worst,
      message: `${where}: the ground falls by up to ${lengthWords(fallM(stretch.worst))} from toe to toe under a levee ${lengthWords(cuts.heightM[stretch.worst]!)} high.`,
      remedy:
        "Move the line to more level ground, or step the base into the slope before the first course.",
    }));
  },
};

/** A ditch, a culvert's trench or a wheel track between two stakes. */
export const narrowLow: Rule = {
  id: "narrow-low",
  rule: "No low place along the line is narrower than the distance between two stations.",
  source: "judgement",
  find: (context) => {
    const { plan, line, trace, cuts, totals } = context;
    const { stationIntervalM } = plan.practice;
    const lows = turnsOf(cuts.groundM, LOW_SPOT_M, line.closed)
      .filter((turn) => turn.kind === "low" && cuts.heightM[turn.index]! > 0)
      .map(({ index }) => ({ index, widthM: widthOfLow(context, index, totals.lengthM) }))
      .filter(({ widthM }) => widthM < stationIntervalM)
      .sort((a, b) => cuts.heightM[b.index]! - cuts.heightM[a.index]!);
    const apart = lows.length > MOST_TOLD ? lows.slice(0, KEPT_APART) : lows;
    const others = lows.slice(apart.length);
    const findingAt = (index: number, message: string): Finding => ({
      severity: "caution",
      stretch: null,
      chainageM: trace.chainageM[index]!,
      sample: index,
      message,
      remedy:
        "Look at it on the ground: plug any pipe under the line, fill the low place with bags first, and set a stake in it.",
    });
    const placeOf = (index: number) => stationWords(trace.chainageM[index]!);
    return [
      ...apart.map(({ index, widthM }) =>
        findingAt(
          index,
          `${placeOf(index)}: a low place only ${lengthWords(widthM)} wide where it is ${lengthWords(LOW_SPOT_M)} deep, perhaps a ditch, a culvert or a wheel track, lies between stakes.`,
        ),
      ),
      ...others
        .slice(0, 1)
        .map(({ index }) =>
          findingAt(
            index,
            `${others.length} more low places narrower than the ${lengthWords(stationIntervalM)} between stakes, the levee highest at ${placeOf(index)}: perhaps ditches, culverts or wheel tracks.`,
          ),
        ),
    ];
  },
};

/** Width of a low place at the depth that makes it one; infinite where a side does not rise that far. */
function widthOfLow({ line, trace, cuts }: CheckContext, low: number, lengthM: number): number {
  const rimM = cuts.groundM[low]! + LOW_SPOT_M;
  const reach = (direction: 1 | -1) => {
    const around = trace.count - 1;
    for (let k = 1; k < trace.count; k++) {
      const raw = low + direction * k;
      if (!line.closed && (raw < 0 || raw >= trace.count)) return Number.POSITIVE_INFINITY;
      const index = ((raw % around) + around) % around;
      const at = line.closed ? index : raw;
      if (Number.isNaN(cuts.groundM[at]!)) return Number.POSITIVE_INFINITY;
      if (cuts.groundM[at]! < rimM) continue;
      const alongM = direction * (trace.chainageM[at]! - trace.chainageM[low]!);
      return alongM < 0 ? alongM + lengthM : alongM;
    }
    return Number.POSITIVE_INFINITY;
  };
  return reach(1) + reach(-1);
}

/** Cells too coarse to show what a levee stands on. */
export const coarseRaster: Rule = {
  id: "coarse-raster",
  rule: "Cells of the elevation raster are no larger than 3 m.",
  source: "judgement",
  find: ({ cellM, totals }) =>
    cellM > COARSEST_CELL_M * CELL_SLACK && totals.lengthNoDataM < totals.lengthM
      ? ofWholePlan(
          "caution",
          `The elevation raster has cells of ${lengthWords(cellM)}: ditches, curbs and banks narrower than that are not in it.`,
          "Use a finer raster if there is one, and level the line on the ground before the first bag.",
        )
      : [],
};
