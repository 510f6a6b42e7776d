import { reachToward } from "./checks/stretch.ts";
import { FOOT_M } from "./constants.ts";
import { builtAt, type CutWalk, leastHeight } from "./cut-walk.ts";
import { HEIGHT_CLASSES } from "./height-class.ts";
import type { LineSamples, SamplePiece } from "./line-samples.ts";
import type { Plan } from "./plan.ts";
import { sheetWidthM } from "./quantities.ts";
import type { PerMetre, SectionShape } from "./sections/types.ts";
import { averageEndVolume, prismoidalVolume, shareAbove } from "./volume.ts";

/** What is integrated along a stretch and is not a total itself. */
export interface Amounts {
  /** Volume by what it is filled with, m3. */
  bags: number;
  sand: number;
  earth: number;
  /** Built length on which a sheet is laid. */
  sheetLengthM: number;
  plywoodM2: number;
  lumberM: number;
  boardsM: number;
  stakes: number;
}

/** What is integrated along a stretch. */
export interface Sums {
  amounts: Amounts;
  lengthM: number;
  builtLengthM: number;
  volumeM3: number;
  prismoidalVolumeM3: number;
  sheetM2: number;
  sheetWidthM: number;
  greatestHeightM: number;
  greatestHeightAtM: number;
  lengthOverLimitM: number;
  underLimitM: number;
  lengthOver3FtM: number;
  lengthNoDataM: number;
  lengthByClassM: number[];
}

const THREE_FEET_M = 3 * FOOT_M;
/** The same slack as the height classes: a height that equals the limit is not over it. */
const SLACK_M = 1e-9;

/**
 * Integrates the walk, for each reach. `waterSide` is the side of the sheet: left (+1) or right (-1) of chainage.
 * Stretches with missing ground count into `lengthNoDataM` and nothing else but the length.
 */
export function reachSums(
  samples: LineSamples,
  cuts: CutWalk,
  plan: Plan,
  waterSide: 1 | -1,
): Sums[] {
  const perReach = cuts.reaches.map(() => emptySums());
  for (const piece of samples.pieces) {
    const sums = perReach[piece.reach]!;
    integrateVolumes(sums, piece, samples, cuts);
    integrateLengths(sums, piece, samples, cuts, plan, waterSide);
    findGreatest(sums, piece, samples, cuts);
    findNearestLimit(sums, piece, cuts);
  }
  for (const [i, { amounts, volumeM3 }] of perReach.entries()) {
    amounts[cuts.reaches[i]!.section.fill] = volumeM3;
  }
  return perReach;
}

/** Whether something is built between a sample and the next, and is known. */
export function isBuiltBeyond({ areaM2, heightM }: CutWalk, i: number): boolean {
  return !Number.isNaN(areaM2[i]! + areaM2[i + 1]!) && (heightM[i]! > 0 || heightM[i + 1]! > 0);
}

/** Height at a sample; where nothing is built, below zero: the levee ends between it and the next. */
function endHeight(
  { crestM }: LineSamples,
  { heightM, greatestHeightM, groundM }: CutWalk,
  i: number,
) {
  return heightM[i]! > 0 ? greatestHeightM[i]! : crestM[i]! - groundM[i]!;
}

/** Share of the step from a sample to the next on which something is built. */
export function builtShare(samples: LineSamples, cuts: CutWalk, i: number): number {
  return shareAbove(endHeight(samples, cuts, i), endHeight(samples, cuts, i + 1), 0);
}

function integrateVolumes(
  sums: Sums,
  piece: SamplePiece,
  samples: LineSamples,
  cuts: CutWalk,
): void {
  const { chainageM } = samples;
  const { areaM2 } = cuts;
  // Pieces have an even number of steps: of every three samples the middle one is the mid-section.
  for (let i = piece.first; i < piece.last; i += 2) {
    const first = areaM2[i]!;
    const middle = areaM2[i + 1]!;
    const last = areaM2[i + 2]!;
    const nearM = chainageM[i + 1]! - chainageM[i]!;
    const farM = chainageM[i + 2]! - chainageM[i + 1]!;
    const nearM3 = averageEndVolume(first, middle, nearM);
    const farM3 = averageEndVolume(middle, last, farM);
    const knownM3 = (nearM3 || 0) + (farM3 || 0);
    const whole = !Number.isNaN(nearM3 + farM3);
    sums.lengthM += nearM + farM;
    sums.lengthNoDataM += (Number.isNaN(nearM3) ? nearM : 0) + (Number.isNaN(farM3) ? farM : 0);
    sums.volumeM3 += knownM3;
    sums.prismoidalVolumeM3 += whole
      ? prismoidalVolume(first, middle, last, nearM + farM)
      : knownM3;
  }
}

function integrateLengths(
  sums: Sums,
  piece: SamplePiece,
  samples: LineSamples,
  cuts: CutWalk,
  plan: Plan,
  waterSide: 1 | -1,
): void {
  const { section, practice } = plan;
  const { chainageM } = samples;
  const { heightM } = cuts;
  const built = cuts.reaches[piece.reach]!;
  const { sheet } = built.section;
  const toeM = waterSide === 1 ? cuts.toeLeftM : cuts.toeRightM;
  const dropM = waterSide === 1 ? cuts.dropLeftM : cuts.dropRightM;
  const overM = (i: number) => leastHeight(cuts, i) - built.limitM - SLACK_M;
  for (let i = piece.first; i < piece.last; i++) {
    sums.lengthOverLimitM += lengthOver(overM(i), overM(i + 1), chainageM[i + 1]! - chainageM[i]!);
    if (!isBuiltBeyond(cuts, i)) continue;
    const stepM = chainageM[i + 1]! - chainageM[i]!;
    const from = endHeight(samples, cuts, i);
    const to = endHeight(samples, cuts, i + 1);
    const builtM = stepM * shareAbove(from, to, 0);
    const near = heightM[i]! > 0 ? i : i + 1;
    const far = heightM[i + 1]! > 0 ? i + 1 : i;
    sums.builtLengthM += builtM;
    if (sheet) {
      const nearWidthM = sheetWidthM(section, toeM[near]!, dropM[near]!, crownAt(cuts, near));
      const farWidthM = sheetWidthM(section, toeM[far]!, dropM[far]!, crownAt(cuts, far));
      sums.amounts.sheetLengthM += builtM;
      sums.sheetM2 += (builtM * (nearWidthM + farWidthM)) / 2;
      sums.sheetWidthM = Math.max(sums.sheetWidthM, nearWidthM, farWidthM);
    }
    addPerMetre(sums.amounts, cuts, near, far, builtM);
    sums.lengthOver3FtM += stepM * shareAbove(from, to, THREE_FEET_M + SLACK_M);
    let aboveM = builtM;
    for (let k = 0; k < HEIGHT_CLASSES; k++) {
      const stepTopM = (practice.limitM * (k + 1)) / (HEIGHT_CLASSES - 1);
      const topM = k + 2 < HEIGHT_CLASSES ? Math.min(stepTopM, built.limitM) : built.limitM;
      const nextM = k + 1 < HEIGHT_CLASSES ? stepM * shareAbove(from, to, topM + SLACK_M) : 0;
      sums.lengthByClassM[k]! += aboveM - nextM;
      aboveM = nextM;
    }
  }
}

/** Length of a step over a limit, as the checks count it; of what is known of its two ends, each to its half. */
function lengthOver(from: number, to: number, stepM: number): number {
  return (
    (from > 0 ? reachToward(from, to, stepM) : 0) + (to > 0 ? reachToward(to, from, stepM) : 0)
  );
}

const SHAPE: SectionShape = { crownM: 0, runWater: 0, runLand: 0 };
const NEAR: PerMetre = { plywoodM2: 0, lumberM: 0, boardsM: 0, stakes: 0 };
const FAR: PerMetre = { plywoodM2: 0, lumberM: 0, boardsM: 0, stakes: 0 };

function crownAt(cuts: CutWalk, sample: number): number {
  const { section, figures } = builtAt(cuts, sample);
  section.shapeInto(SHAPE, cuts.heightM[sample]!, figures);
  return SHAPE.crownM;
}

/** Boards and posts of a step: as high as the section is at its lowest ground. */
function addPerMetre(
  amounts: Amounts,
  cuts: CutWalk,
  near: number,
  far: number,
  builtM: number,
): void {
  const { section, figures } = builtAt(cuts, near);
  section.perMetreInto(NEAR, cuts.greatestHeightM[near]!, figures);
  section.perMetreInto(FAR, cuts.greatestHeightM[far]!, figures);
  amounts.plywoodM2 += (builtM * (NEAR.plywoodM2 + FAR.plywoodM2)) / 2;
  amounts.lumberM += (builtM * (NEAR.lumberM + FAR.lumberM)) / 2;
  amounts.boardsM += (builtM * (NEAR.boardsM + FAR.boardsM)) / 2;
  amounts.stakes += (builtM * (NEAR.stakes + FAR.stakes)) / 2;
}

function findGreatest(sums: Sums, piece: SamplePiece, samples: LineSamples, cuts: CutWalk): void {
  for (let i = piece.first; i <= piece.last; i++) {
    if (!(cuts.greatestHeightM[i]! > sums.greatestHeightM)) continue;
    sums.greatestHeightM = cuts.greatestHeightM[i]!;
    sums.greatestHeightAtM = samples.chainageM[i]!;
  }
}

function findNearestLimit(sums: Sums, piece: SamplePiece, cuts: CutWalk): void {
  const { limitM } = cuts.reaches[piece.reach]!;
  for (let i = piece.first; i <= piece.last; i++) {
    const underM = limitM - cuts.greatestHeightM[i]!;
    if (cuts.heightM[i]! > 0 && underM < sums.underLimitM) sums.underLimitM = underM;
  }
}

export function emptySums(): Sums {
  return {
    amounts: {
      ...{ bags: 0, sand: 0, earth: 0 },
      ...{ sheetLengthM: 0, plywoodM2: 0, lumberM: 0, boardsM: 0, stakes: 0 },
    },
    lengthM: 0,
    builtLengthM: 0,
    volumeM3: 0,
    prismoidalVolumeM3: 0,
    sheetM2: 0,
    sheetWidthM: 0,
    greatestHeightM: 0,
    greatestHeightAtM: 0,
    lengthOverLimitM: 0,
    underLimitM: Number.POSITIVE_INFINITY,
    lengthOver3FtM: 0,
    lengthNoDataM: 0,
    lengthByClassM: new Array<number>(HEIGHT_CLASSES).fill(0),
  };
}

export function addInto(target: Sums, more: Sums): void {
  for (const key of Object.keys(more.amounts) as (keyof Amounts)[]) {
    target.amounts[key] += more.amounts[key];
  }
  target.lengthM += more.lengthM;
  target.builtLengthM += more.builtLengthM;
  target.volumeM3 += more.volumeM3;
  target.prismoidalVolumeM3 += more.prismoidalVolumeM3;
  target.sheetM2 += more.sheetM2;
  target.sheetWidthM = Math.max(target.sheetWidthM, more.sheetWidthM);
  target.lengthOverLimitM += more.lengthOverLimitM;
  target.lengthOver3FtM += more.lengthOver3FtM;
  target.lengthNoDataM += more.lengthNoDataM;
  target.lengthByClassM = target.lengthByClassM.map(
    (lengthM, k) => lengthM + more.lengthByClassM[k]!,
  );
  target.underLimitM = Math.min(target.underLimitM, more.underLimitM);
  if (more.greatestHeightM > target.greatestHeightM) {
    target.greatestHeightM = more.greatestHeightM;
    target.greatestHeightAtM = more.greatestHeightAtM;
  }
}
