import type { CutWalk } from "./cut-walk.ts";
import { FOOT_M } from "./defaults.ts";
import { HEIGHT_CLASSES } from "./height-class.ts";
import type { Plan } from "./plan.ts";
import {
  bagsOrderedFor,
  bagsPlacedFor,
  sandFor,
  sheetBagsFor,
  sheetRollsFor,
  sheetWidthM,
  wholeOrder,
} from "./quantities.ts";
import type { Totals } from "./sizing-types.ts";
import type { Trace, TracePiece } from "./trace.ts";
import { averageEndVolume, prismoidalVolume, shareAbove } from "./volume.ts";

/** What is integrated along a stretch. */
interface Sums {
  lengthM: number;
  builtLengthM: number;
  volumeM3: number;
  prismoidalVolumeM3: number;
  sheetM2: number;
  sheetWidthM: number;
  greatestHeightM: number;
  greatestHeightAtM: number;
  lengthOverLimitM: number;
  lengthOver3FtM: number;
  lengthNoDataM: number;
  lengthByClassM: number[];
}

/** Counts that are ordered whole. */
type Orders = Pick<Totals, "bagsPlaced" | "bags" | "sheetBags" | "sheetRolls" | "trucks">;

const THREE_FEET_M = 3 * FOOT_M;
/** The same slack as the height classes: a height that equals the limit is not over it. */
const SLACK_M = 1e-9;

/** Totals of the whole line and of each reach; the reaches' counts add up to the whole's. */
export interface AllTotals {
  readonly whole: Totals;
  readonly reaches: readonly Totals[];
}

/**
 * Integrates the walk. `waterSide` is the side of the sheet: left (+1) or right (-1) of chainage.
 * Stretches with missing ground count into `lengthNoDataM` and nothing else but the length.
 */
export function totalsOf(trace: Trace, cuts: CutWalk, plan: Plan, waterSide: 1 | -1): AllTotals {
  const reachCount = trace.pieces.reduce((most, piece) => Math.max(most, piece.reach + 1), 1);
  const perReach = Array.from({ length: reachCount }, () => emptySums());
  for (const piece of trace.pieces) {
    const sums = perReach[piece.reach]!;
    integrateVolumes(sums, piece, trace, cuts);
    integrateLengths(sums, piece, trace, cuts, plan, waterSide);
    findGreatest(sums, piece, trace, cuts);
  }
  const soFar = emptySums();
  let before = ordersFor(soFar, plan);
  const reaches: Totals[] = [];
  for (const sums of perReach) {
    addInto(soFar, sums);
    const upTo = ordersFor(soFar, plan);
    reaches.push(asTotals(sums, lessOrders(upTo, before), plan));
    before = upTo;
  }
  return { whole: asTotals(soFar, before, plan), reaches };
}

function integrateVolumes(sums: Sums, piece: TracePiece, trace: Trace, cuts: CutWalk): void {
  const { chainageM } = trace;
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
  piece: TracePiece,
  trace: Trace,
  cuts: CutWalk,
  plan: Plan,
  waterSide: 1 | -1,
): void {
  const { section, practice } = plan;
  const { chainageM, crestM } = trace;
  const { areaM2, heightM, greatestHeightM, groundM } = cuts;
  const toeM = waterSide === 1 ? cuts.toeLeftM : cuts.toeRightM;
  const dropM = waterSide === 1 ? cuts.dropLeftM : cuts.dropRightM;
  for (let i = piece.first; i < piece.last; i++) {
    const fromBuilt = heightM[i]! > 0;
    const toBuilt = heightM[i + 1]! > 0;
    if (Number.isNaN(areaM2[i]! + areaM2[i + 1]!) || (!fromBuilt && !toBuilt)) continue;
    const stepM = chainageM[i + 1]! - chainageM[i]!;
    // An end that is not built lies below zero, so that the end of the levee falls between the samples.
    const from = fromBuilt ? greatestHeightM[i]! : crestM[i]! - groundM[i]!;
    const to = toBuilt ? greatestHeightM[i + 1]! : crestM[i + 1]! - groundM[i + 1]!;
    const builtM = stepM * shareAbove(from, to, 0);
    const near = fromBuilt ? i : i + 1;
    const far = toBuilt ? i + 1 : i;
    const nearWidthM = sheetWidthM(section, toeM[near]!, dropM[near]!);
    const farWidthM = sheetWidthM(section, toeM[far]!, dropM[far]!);
    sums.builtLengthM += builtM;
    sums.sheetM2 += (builtM * (nearWidthM + farWidthM)) / 2;
    sums.sheetWidthM = Math.max(sums.sheetWidthM, nearWidthM, farWidthM);
    sums.lengthOverLimitM += stepM * shareAbove(from, to, practice.limitM + SLACK_M);
    sums.lengthOver3FtM += stepM * shareAbove(from, to, THREE_FEET_M + SLACK_M);
    let aboveM = builtM;
    for (let k = 0; k < HEIGHT_CLASSES; k++) {
      const topM = (practice.limitM * (k + 1)) / (HEIGHT_CLASSES - 1) + SLACK_M;
      const nextM = k + 1 < HEIGHT_CLASSES ? stepM * shareAbove(from, to, topM) : 0;
      sums.lengthByClassM[k]! += aboveM - nextM;
      aboveM = nextM;
    }
  }
}

function findGreatest(sums: Sums, piece: TracePiece, trace: Trace, cuts: CutWalk): void {
  for (let i = piece.first; i <= piece.last; i++) {
    if (!(cuts.greatestHeightM[i]! > sums.greatestHeightM)) continue;
    sums.greatestHeightM = cuts.greatestHeightM[i]!;
    sums.greatestHeightAtM = trace.chainageM[i]!;
  }
}

function emptySums(): Sums {
  return {
    lengthM: 0,
    builtLengthM: 0,
    volumeM3: 0,
    prismoidalVolumeM3: 0,
    sheetM2: 0,
    sheetWidthM: 0,
    greatestHeightM: 0,
    greatestHeightAtM: 0,
    lengthOverLimitM: 0,
    lengthOver3FtM: 0,
    lengthNoDataM: 0,
    lengthByClassM: new Array<number>(HEIGHT_CLASSES).fill(0),
  };
}

function addInto(target: Sums, more: Sums): void {
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
  if (more.greatestHeightM > target.greatestHeightM) {
    target.greatestHeightM = more.greatestHeightM;
    target.greatestHeightAtM = more.greatestHeightAtM;
  }
}

function ordersFor(sums: Sums, { section, practice }: Plan): Orders {
  const sandM3 = sandFor(sums.volumeM3, sums.builtLengthM, section, practice);
  return {
    bagsPlaced: wholeOrder(bagsPlacedFor(sums.volumeM3, section)),
    bags: wholeOrder(bagsOrderedFor(sums.volumeM3, section, practice)),
    sheetBags: wholeOrder(sheetBagsFor(sums.builtLengthM, section, practice)),
    sheetRolls: sheetRollsFor(sums.builtLengthM, sums.sheetWidthM, section.sheet),
    trucks: wholeOrder(sandM3 / practice.truckM3),
  };
}

function lessOrders(upTo: Orders, before: Orders): Orders {
  return {
    bagsPlaced: upTo.bagsPlaced - before.bagsPlaced,
    bags: upTo.bags - before.bags,
    sheetBags: upTo.sheetBags - before.sheetBags,
    sheetRolls: upTo.sheetRolls - before.sheetRolls,
    trucks: upTo.trucks - before.trucks,
  };
}

function asTotals(sums: Sums, orders: Orders, { section, practice }: Plan): Totals {
  const sandM3 = sandFor(sums.volumeM3, sums.builtLengthM, section, practice);
  const bags = bagsOrderedFor(sums.volumeM3, section, practice);
  const jobPersonHours = bags / practice.jobRate;
  return {
    ...sums,
    ...orders,
    sandM3,
    sandDryKg: sandM3 * practice.sandDryKgPerM3,
    sandWetKg: sandM3 * practice.sandWetKgPerM3,
    jobPersonHours,
    taskPersonHoursLow: bags / practice.taskRateHigh,
    taskPersonHoursHigh: bags / practice.taskRateLow,
    jobHours: jobPersonHours / practice.people,
  };
}
