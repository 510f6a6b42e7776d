import { cutReach } from "./cut-reach.ts";
import type { GroundSampler } from "./ground.ts";
import type { LineSamples } from "./line-samples.ts";
import { emptyCut } from "./section.ts";
import type { BuiltReach } from "./sections/built-reach.ts";

/** The levee cut across at every sample of a line; n values each, NaN where needed ground is missing. */
export interface CutWalk {
  readonly groundM: Float64Array;
  readonly lowestGroundM: Float64Array;
  readonly heightM: Float64Array;
  readonly greatestHeightM: Float64Array;
  /** What is built and counted; of a levee that is raised, what is added. */
  readonly areaM2: Float64Array;
  /** The whole body above the ground. */
  readonly bodyM2: Float64Array;
  readonly toeLeftM: Float64Array;
  readonly toeRightM: Float64Array;
  /** Crest less ground at each toe. */
  readonly dropLeftM: Float64Array;
  readonly dropRightM: Float64Array;
  /** 1 where a side does not meet the ground. */
  readonly toeOpen: Uint8Array;
  /** Reach of each sample. */
  readonly reach: Uint16Array;
  /** What each reach is built as. */
  readonly reaches: readonly BuiltReach[];
}

/** What a sample is built as. */
export function builtAt({ reaches, reach }: CutWalk, sample: number): BuiltReach {
  return reaches[reach[sample]!]!;
}

/** Greatest height at a sample; where a part of the ground under the base is missing, the least it can be. */
export function leastHeight({ greatestHeightM, heightM }: CutWalk, sample: number): number {
  const greatestM = greatestHeightM[sample]!;
  return Number.isNaN(greatestM) ? heightM[sample]! : greatestM;
}

/**
 * Cuts across at every sample of the line, each as its reach is built, on the ground as read in the field where it
 * was, with every ground height raised by `shiftM`. `waterSide` is the side the water stands on: left (+1) or right (-1) of chainage.
 */
export function cutWalk(
  samples: LineSamples,
  ground: GroundSampler,
  reaches: readonly BuiltReach[],
  waterSide: 1 | -1,
  shiftM: number,
): CutWalk {
  const walk = emptyCutWalk(samples, reaches);
  const { reach } = walk;
  cutInto(walk, samples, {
    groundAt: () => ground,
    builtAt: (sample) => reaches[reach[sample]!]!,
    raiseAt: (sample) => shiftM + samples.surveyRaiseM[sample]!,
    waterSide,
  });
  return walk;
}

/** Room for the cuts of a line, which {@link cutInto} fills. */
export function emptyCutWalk(
  { count, pieces }: LineSamples,
  reaches: readonly BuiltReach[],
): CutWalk {
  const walk = {
    groundM: new Float64Array(count),
    lowestGroundM: new Float64Array(count),
    heightM: new Float64Array(count),
    greatestHeightM: new Float64Array(count),
    areaM2: new Float64Array(count),
    bodyM2: new Float64Array(count),
    toeLeftM: new Float64Array(count),
    toeRightM: new Float64Array(count),
    dropLeftM: new Float64Array(count),
    dropRightM: new Float64Array(count),
    toeOpen: new Uint8Array(count),
    reach: new Uint16Array(count),
    reaches,
  };
  for (const piece of pieces) walk.reach.fill(piece.reach, piece.first, piece.last + 1);
  return walk;
}

/** What is cut at each sample of a line. */
interface CutAt {
  readonly groundAt: (sample: number) => GroundSampler;
  readonly builtAt: (sample: number) => BuiltReach;
  /** What every ground height of the cut is raised by, metres. */
  readonly raiseAt: (sample: number) => number;
  readonly waterSide: 1 | -1;
}

/** Fills a walk with the cuts across at every sample; see {@link cutWalk}. */
export function cutInto(walk: CutWalk, samples: LineSamples, at: CutAt): void {
  const { count, xM, yM, leftNormal, crestM } = samples;
  const { groundAt, builtAt: built, raiseAt, waterSide } = at;
  const cut = emptyCut();
  const across = { xM: 0, yM: 0, leftX: 0, leftY: 0, crestM: 0, shiftM: 0 };
  for (let i = 0; i < count; i++) {
    across.xM = xM[i]!;
    across.yM = yM[i]!;
    across.leftX = leftNormal[2 * i]!;
    across.leftY = leftNormal[2 * i + 1]!;
    across.crestM = crestM[i]!;
    across.shiftM = raiseAt(i);
    cutReach(cut, groundAt(i), built(i), waterSide, across);
    walk.groundM[i] = cut.groundM;
    walk.lowestGroundM[i] = cut.lowestM;
    walk.heightM[i] = cut.heightM;
    walk.greatestHeightM[i] = cut.heightM > 0 ? crestM[i]! - cut.lowestM : cut.heightM;
    walk.areaM2[i] = cut.areaM2;
    walk.bodyM2[i] = cut.bodyM2;
    walk.toeLeftM[i] = cut.toeLeftM;
    walk.toeRightM[i] = cut.toeRightM;
    walk.dropLeftM[i] = cut.dropLeftM;
    walk.dropRightM[i] = cut.dropRightM;
    walk.toeOpen[i] = cut.toeOpen ? 1 : 0;
  }
}
