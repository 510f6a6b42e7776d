import { builtAt, type CutWalk, leastHeight } from "../cut-walk.ts";
import type { LineSamples } from "../line-samples.ts";
import type { Closure, Plan } from "../plan.ts";
import { labourBagsFor } from "../quantities.ts";
import type { SectionShape } from "../sections/types.ts";

/** One lift of one stretch. Levels are metres above the design water. */
interface Lift {
  readonly topM: number;
  /** Not rounded. */
  readonly bags: number;
}

/**
 * A short stretch of what is built, the least that a crew's part or step is made of, with its lifts, lowest
 * first. Levels are metres above the design water.
 */
export interface LiftedStretch {
  readonly fromM: number;
  readonly toM: number;
  readonly lowestM: number;
  /** What stands already where a levee is raised; left out where work begins on the ground. */
  readonly standsM?: number;
  readonly crestM: number;
  /** Sample of the walk with its lowest ground. */
  readonly lowestSample: number;
  readonly lifts: readonly Lift[];
  /** True where it is over the height limit: nothing is built there before an engineer decides. */
  readonly isOnHold: boolean;
  readonly isOfBags: boolean;
  /** Place of the closure it is in, in their list; left out elsewhere. */
  readonly closure?: number;
}

/** Stretches are one station long, and longer where there would be more than so many. */
const MOST_STRETCHES = 60;
/** Lifts are made higher where a stretch would have more. */
const MOST_LIFTS = 40;
const SAME_M = 1e-6;

/**
 * Divides what is built into stretches and lifts: from stake to stake, and at both ends of what is over the
 * height limit. Lifts are counted down from the crest, which runs with the water: every lift of the same number
 * is level with its neighbors. Bags are those ordered, spares among them; sand and earth without bags as the
 * bags of their volume. A closure has stretches of its own. Stretches on which nothing is built, or no ground is known, are left out.
 */
export function stretchesFor(
  plan: Plan,
  samples: LineSamples,
  cuts: CutWalk,
  liftM: number,
  closed: boolean,
  closures: readonly Closure[] = [],
): LiftedStretch[] {
  const highestM = cuts.greatestHeightM.reduce((most, m) => Math.max(most, m || 0), 0);
  const eachM = Math.max(liftM, highestM / MOST_LIFTS);
  const over = overLimitSteps(samples, cuts, plan.practice.stationIntervalM, closed);
  const closureAt = (sample: number) => {
    const m = (samples.chainageM[sample]! + samples.chainageM[sample + 1]!) / 2;
    return closures.findIndex(({ fromM, toM }) => m >= fromM && m <= toM);
  };
  return stretchEnds(plan, samples, cuts, over, closureAt)
    .map((span) => stretchOf(plan, samples, cuts, eachM, span))
    .filter((stretch) => stretch !== null);
}

/** From one sample to another, and the stations that its ends go by. */
interface Span {
  readonly first: number;
  readonly last: number;
  readonly fromM: number;
  readonly toM: number;
  readonly isOnHold: boolean;
  /** Place of its closure in their list; -1 outside of all. */
  readonly closure: number;
}

/** Spans of the whole walk: they end at stakes, where the limit is passed, and where what is built changes. */
function stretchEnds(
  plan: Plan,
  samples: LineSamples,
  cuts: CutWalk,
  over: Uint8Array,
  closureAt: (sample: number) => number,
): Span[] {
  const { chainageM, count } = samples;
  const eachM = Math.max(plan.practice.stationIntervalM, chainageM[count - 1]! / MOST_STRETCHES);
  const spans: Span[] = [];
  let [first, fromM] = [0, 0];
  const end = (last: number, toM: number, next = last) => {
    const isOnHold = over[first] === 1;
    if (last > first) {
      spans.push({ ...{ first, last, fromM, toM, isOnHold }, closure: closureAt(first) });
    }
    [first, fromM] = [next, toM];
  };
  for (let i = 1; i < count - 1; i++) {
    const hereM = chainageM[i]!;
    const beforeM = (chainageM[i - 1]! + hereM) / 2;
    const afterM = (hereM + chainageM[i + 1]!) / 2;
    const markM = eachM * Math.round(hereM / eachM);
    const isNewReach = hereM === chainageM[i - 1] && cuts.reach[i] !== cuts.reach[i - 1];
    if (isNewReach) end(i - 1, hereM, i);
    else if (closureAt(i) !== closureAt(i - 1)) end(i, hereM);
    else if (over[i] !== over[i - 1]) end(i, over[i] ? afterM : beforeM);
    else if (!over[i] && markM > beforeM && markM <= afterM) end(i, markM);
  }
  end(count - 1, chainageM[count - 1]!);
  return spans;
}

/**
 * For each step from a sample to the next, 1 where either is over the height limit of what is built there; gaps
 * shorter than the distance between two stakes count with it, on a ring also over its closing point.
 */
function overLimitSteps(
  { chainageM, count }: LineSamples,
  cuts: CutWalk,
  gapM: number,
  closed: boolean,
): Uint8Array {
  const isOver = (i: number) => leastHeight(cuts, i) > builtAt(cuts, i).limitM + SAME_M;
  const found = Array.from({ length: count }, (_, i) => i).filter(isOver);
  const over = new Uint8Array(Math.max(0, count - 1));
  for (const [k, sample] of found.entries()) {
    const before = found[k - 1];
    const joins = before !== undefined && chainageM[sample]! - chainageM[before]! <= gapM;
    over.fill(1, joins ? before : Math.max(0, sample - 1), sample + 1);
  }
  const [head, tail] = [found[0], found.at(-1)];
  if (!closed || head === undefined || tail === undefined) return over;
  if (chainageM[head]! + chainageM[count - 1]! - chainageM[tail]! <= gapM) {
    over.fill(1, 0, head);
    over.fill(1, tail);
  }
  return over;
}

function stretchOf(
  plan: Plan,
  samples: LineSamples,
  cuts: CutWalk,
  liftM: number,
  { first, last, fromM, toM, isOnHold, closure }: Span,
): LiftedStretch | null {
  let lowest = -1;
  const lowAt = (i: number) => cuts.lowestGroundM[i]! - samples.waterM[i]!;
  for (let i = first; i <= last; i++) {
    if (cuts.areaM2[i]! > 0 && (lowest < 0 || lowAt(i) < lowAt(lowest))) lowest = i;
  }
  if (lowest < 0) return null;
  const crestM = samples.crestM[lowest]! - samples.waterM[lowest]!;
  const lowestM = lowAt(lowest);
  const count = Math.max(1, Math.ceil((crestM - lowestM) / liftM - SAME_M));
  const { fill } = builtAt(cuts, lowest).section;
  const standsM = Math.max(lowestM, crestM - earlierDropM(cuts, lowest));
  const bagsTo = (topM: number) => {
    const depthM = crestM - topM;
    let volumeM3 = 0;
    for (let i = first; i < last; i++) {
      const stepM = samples.chainageM[i + 1]! - samples.chainageM[i]!;
      const areaM2 = builtArea(cuts, i, depthM) + builtArea(cuts, i + 1, depthM);
      volumeM3 += (areaM2 / 2) * stepM || 0;
    }
    return labourBagsFor(fill, volumeM3, plan);
  };
  const lifts: Lift[] = [];
  let below = 0;
  for (let k = count - 1; k >= 0; k--) {
    const topM = crestM - k * liftM;
    if (k > 0 && topM <= standsM + SAME_M) continue;
    const upTo = bagsTo(topM);
    lifts.push({ topM, bags: upTo - below });
    below = upTo;
  }
  return {
    ...{ fromM, toM, lowestM, crestM, lowestSample: lowest, lifts, isOnHold },
    ...(standsM > lowestM ? { standsM } : {}),
    isOfBags: fill === "bags",
    ...(closure < 0 ? {} : { closure }),
  };
}

const SHAPE: SectionShape = { crownM: 0, runWater: 0, runLand: 0 };

/** How far below the crest the line stands already: the old levee, or higher ground where it ends. */
function earlierDropM(cuts: CutWalk, sample: number): number {
  const { section, figures } = builtAt(cuts, sample);
  const dropM = section.earlierInto?.(SHAPE, cuts.heightM[sample]!, figures);
  return dropM ?? Number.POSITIVE_INFINITY;
}

/**
 * Area of what is built once it stands to `depthM` below its crest: the whole less its upper part. Of a levee
 * that is raised, what stood before is in neither.
 */
function builtArea(cuts: CutWalk, i: number, depthM: number): number {
  const { section, figures } = builtAt(cuts, i);
  const heightM = cuts.heightM[i]!;
  section.shapeInto(SHAPE, heightM, figures);
  let upper = upperArea(SHAPE, depthM);
  if (section.earlierInto) {
    const dropM = section.earlierInto(SHAPE, heightM, figures);
    if (heightM > dropM) upper -= upperArea(SHAPE, Math.max(0, depthM - dropM));
  }
  return Math.max(0, cuts.areaM2[i]! - upper);
}

/** Area of a shape down to a depth below its crown. */
function upperArea({ crownM, runWater, runLand }: SectionShape, depthM: number): number {
  return (crownM + ((runWater + runLand) / 2) * depthM) * depthM;
}
