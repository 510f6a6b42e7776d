import { builtAt, type CutWalk } from "../cut-walk.ts";
import type { Plan } from "../plan.ts";
import { labourBagsFor } from "../quantities.ts";
import type { SectionShape } from "../sections/types.ts";
import type { Trace } from "../trace.ts";

/** One lift of one stretch: what a crew takes on at a time. Levels are metres above the design water. */
interface Lift {
  readonly topM: number;
  readonly bags: number;
}

/** A stretch between stakes with its lifts, lowest first. Levels are metres above the design water. */
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
}

/** Stretches are at most this many stations long, and at most so many in all. */
const STATIONS_LONG = 2;
const MOST_STRETCHES = 120;
/** Lifts are made higher where a stretch would have more. */
const MOST_LIFTS = 40;
const SAME_M = 1e-6;

/**
 * Divides what is built into stretches and lifts. Lifts are counted down from the crest, which runs with the
 * water: every lift of the same number is level with its neighbours. Bags are those ordered, spares among
 * them; sand and earth without bags as the bags of their volume. Stretches on which nothing is built, or no ground is known, are left out.
 */
export function stretchesFor(
  plan: Plan,
  trace: Trace,
  cuts: CutWalk,
  liftM: number,
): LiftedStretch[] {
  const lengthM = trace.chainageM[trace.count - 1]!;
  const widestM = Math.max(
    STATIONS_LONG * plan.practice.stationIntervalM,
    lengthM / MOST_STRETCHES,
  );
  const highestM = cuts.greatestHeightM.reduce((most, m) => Math.max(most, m || 0), 0);
  const eachM = Math.max(liftM, highestM / MOST_LIFTS);
  return trace.pieces
    .flatMap(({ first, last }) => {
      const pieceM = trace.chainageM[last]! - trace.chainageM[first]!;
      const parts = Math.max(1, Math.ceil(pieceM / widestM - 1e-9));
      const steps = last - first;
      return Array.from({ length: Math.min(parts, steps) }, (_, k) => {
        const count = Math.min(parts, steps);
        const from = first + Math.round((steps * k) / count);
        const to = first + Math.round((steps * (k + 1)) / count);
        return stretchOf(plan, trace, cuts, eachM, from, to);
      });
    })
    .filter((stretch) => stretch !== null);
}

function stretchOf(
  plan: Plan,
  trace: Trace,
  cuts: CutWalk,
  liftM: number,
  first: number,
  last: number,
): LiftedStretch | null {
  let lowest = -1;
  const lowAt = (i: number) => cuts.lowestGroundM[i]! - trace.waterM[i]!;
  for (let i = first; i <= last; i++) {
    if (cuts.areaM2[i]! > 0 && (lowest < 0 || lowAt(i) < lowAt(lowest))) lowest = i;
  }
  if (lowest < 0) return null;
  const crestM = trace.crestM[lowest]! - trace.waterM[lowest]!;
  const lowestM = lowAt(lowest);
  const count = Math.max(1, Math.ceil((crestM - lowestM) / liftM - SAME_M));
  const { fill } = builtAt(cuts, lowest).section;
  const standsM = Math.max(lowestM, crestM - earlierDropM(cuts, lowest));
  const bagsTo = (topM: number) => {
    const depthM = crestM - topM;
    let volumeM3 = 0;
    for (let i = first; i < last; i++) {
      const stepM = trace.chainageM[i + 1]! - trace.chainageM[i]!;
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
    fromM: trace.chainageM[first]!,
    toM: trace.chainageM[last]!,
    lowestM,
    ...(standsM > lowestM ? { standsM } : {}),
    crestM,
    lowestSample: lowest,
    lifts,
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
