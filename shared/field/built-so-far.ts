import type { BuildState, ProgressMark } from "../plan.ts";
import type { SizedLine } from "../sizing-types.ts";
import type { RiverClock } from "../time/river-clock.ts";
import type { WorkStretch } from "../time/types.ts";
import { type Built, builtOf, isToHeight, markOf } from "./progress.ts";
import { type Staked, type StakedStretch, stretchesOfStakes } from "./stakes.ts";

/** A stretch of a line with how far it is built. */
interface BuiltStretch extends Built {
  readonly stretch: StakedStretch;
}

/** What is built of a line so far, lengths in metres. */
export interface BuiltSoFar {
  readonly stretches: readonly BuiltStretch[];
  /** Length on which something is to be built. */
  readonly toBuildM: number;
  /** Length that each state was reached on, or more. */
  readonly reachedM: Readonly<Record<Exclude<BuildState, "not-begun">, number>>;
  /** Marks of this line that were made by another plan, of stretches that there are or not. */
  readonly ofOtherPlan: number;
}

/** Adds up what is marked on a line against the plan as it is. */
export function builtSoFar(
  line: Pick<SizedLine, "id" | "walk">,
  staked: Staked,
  progress: readonly ProgressMark[],
  planNumber: string,
): BuiltSoFar {
  const own = progress.filter(({ lineId }) => lineId === line.id);
  const stretches = stretchesOfStakes(staked)
    .filter((stretch) => isBuiltOn(line, stretch))
    .map((stretch) => ({ stretch, ...builtOf(markOf(own, line.id, stretch), planNumber) }));
  const lengthOf = (fits: (state: BuildState) => boolean) =>
    stretches
      .filter(({ state }) => fits(state))
      .reduce((sum, { stretch }) => sum + stretch.toM - stretch.fromM, 0);
  return {
    stretches,
    toBuildM: lengthOf(() => true),
    reachedM: {
      begun: lengthOf((state) => state !== "not-begun"),
      "to-height": lengthOf(isToHeight),
      "poly-on": lengthOf((state) => state === "poly-on" || state === "checked"),
      checked: lengthOf((state) => state === "checked"),
    },
    ofOtherPlan: own.filter((mark) => mark.planNumber !== planNumber).length,
  };
}

/** Whether anything is built on a stretch; where the height is not known, it is. */
function isBuiltOn({ walk }: Pick<SizedLine, "walk">, { fromM, toM }: StakedStretch): boolean {
  return walk.chainageM.some(
    (chainageM, i) => chainageM >= fromM && chainageM <= toM && !(walk.greatestHeightM[i]! <= 0),
  );
}

/** A stretch that is not up to height although the build sequence or the water say that it must be. */
export interface BehindStretch {
  readonly stretch: StakedStretch;
  /** When the build sequence has it up to height at the slow pace, hours from the start of work. */
  readonly dueH: number | null;
  /** Whether a part of it is in no step of the build sequence. */
  readonly hasNoHour: boolean;
  /** When the likely forecast reaches its lowest ground, hours from the start of work; null where it never does. */
  readonly wetH: number | null;
}

/** Stretches that are behind, along the line. */
export interface Behind {
  /** Due by now in the build sequence; null without one. */
  readonly late: readonly BehindStretch[] | null;
  /** For which the build sequence has no hour: on HOLD, or without elevation data. */
  readonly noHour: readonly BehindStretch[];
  /** Water is at their ground by now; null without a forecast. */
  readonly inWater: readonly BehindStretch[] | null;
  /** Of those not known to be in the water, the ones of which some ground is not known. */
  readonly noGround: readonly BehindStretch[];
  /** Of those not yet in the water, the one that is reached first; null where none is. */
  readonly next: BehindStretch | null;
}

/** What the work is measured by. Hours are counted from the start of work. */
export interface MeasuredBy {
  /** The build sequence; empty where the crew is not known. */
  readonly work: readonly Pick<WorkStretch, "fromM" | "toM" | "finishH">[];
  /** The likely forecast at the gauge; null without one. */
  readonly river: Pick<RiverClock, "levelAtH" | "fromH" | "toH"> | null;
  /** Water at the gauge that the plan is sized for, metres: the river's slope is that of the sized-for water. */
  readonly sizedForM: number;
  readonly nowH: number;
}

/** What is not up to height, against the build sequence and the water. */
export function behindNow(
  { walk }: Pick<SizedLine, "walk">,
  { stretches }: Pick<BuiltSoFar, "stretches">,
  { work, river, sizedForM, nowH }: MeasuredBy,
): Behind {
  const open = stretches
    .filter(({ state }) => !isToHeight(state))
    .map(({ stretch }) => ({
      stretch,
      ...dueOf(work, stretch),
      wetH: river && wetFromH(lowestAtGaugeM(walk, stretch, sizedForM), river),
    }));
  const isIn = ({ wetH }: BehindStretch) => wetH !== null && wetH <= nowH;
  const dryYet = open.filter((each) => each.wetH !== null && !isIn(each));
  return {
    late: work.length > 0 ? open.filter(({ dueH }) => dueH !== null && dueH <= nowH) : null,
    noHour: open.filter(({ hasNoHour }) => hasNoHour),
    inWater: river ? open.filter(isIn) : null,
    noGround: river ? open.filter((each) => !isIn(each) && lacksGround(walk, each.stretch)) : [],
    next: dryYet.sort((a, b) => a.wetH! - b.wetH!)[0] ?? null,
  };
}

/** When all that is built over a stretch is finished; no hour where a part never is. */
function dueOf(
  work: readonly Pick<WorkStretch, "fromM" | "toM" | "finishH">[],
  { fromM, toM }: StakedStretch,
): { readonly dueH: number | null; readonly hasNoHour: boolean } {
  const over = work.filter((each) => each.fromM < toM - 0.01 && each.toM > fromM + 0.01);
  const hasNoHour = over.some(({ finishH }) => finishH === null);
  if (over.length === 0 || hasNoHour) return { dueH: null, hasNoHour };
  return { dueH: Math.max(...over.map(({ finishH }) => finishH!)), hasNoHour };
}

/** Whether some ground under a stretch is not known. */
function lacksGround(
  { chainageM, lowestGroundM }: SizedLine["walk"],
  { fromM, toM }: StakedStretch,
): boolean {
  return chainageM.some((at, i) => at >= fromM && at <= toM && Number.isNaN(lowestGroundM[i]!));
}

/** The lowest ground of a stretch, less what the river falls from the gauge to there, metres. */
function lowestAtGaugeM(
  { chainageM, lowestGroundM, waterM }: SizedLine["walk"],
  { fromM, toM }: StakedStretch,
  sizedForM: number,
): number {
  let lowest = Number.POSITIVE_INFINITY;
  for (let i = 0; i < chainageM.length; i++) {
    if (chainageM[i]! < fromM || chainageM[i]! > toM) continue;
    const atGaugeM = lowestGroundM[i]! - (waterM[i]! - sizedForM);
    if (atGaugeM < lowest) lowest = atGaugeM;
  }
  return lowest;
}

const STEP_H = 0.25;

/** First quarter of an hour at which the forecast is at a level; null where it never is. */
function wetFromH(
  levelM: number,
  { levelAtH, fromH, toH }: Pick<RiverClock, "levelAtH" | "fromH" | "toH">,
): number | null {
  for (let hour = Math.min(0, fromH); hour <= toH; hour += STEP_H) {
    if (levelAtH(hour) >= levelM) return hour;
  }
  return null;
}
