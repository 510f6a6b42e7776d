import type { CutWalk } from "./cut-walk.ts";
import type { LineSamples } from "./line-samples.ts";
import {
  type Amounts,
  addInto,
  builtShare,
  emptySums,
  isBuiltBeyond,
  reachSums,
  type Sums,
} from "./line-sums.ts";
import type { Plan } from "./plan.ts";
import {
  BOARD_PIECE_M,
  bagsOrderedFor,
  bagsPlacedFor,
  LUMBER_PIECE_M,
  labourBagsFor,
  looseOrderedFor,
  PLYWOOD_SHEET_M2,
  sandFor,
  sheetBagsFor,
  sheetRollsFor,
  wholeOrder,
} from "./quantities.ts";
import type { Fill } from "./sections/types.ts";
import type { Totals } from "./sizing-types.ts";
import { averageEndVolume } from "./volume.ts";

/** Counts that are ordered whole. */
interface Orders
  extends Pick<Totals, "bagsPlaced" | "bags" | "sheetBags" | "sheetRolls" | "trucks"> {
  readonly plywoodSheets: number;
  readonly lumberPieces: number;
  readonly boardPieces: number;
  readonly stakes: number;
}

/** Totals of the whole line and of each reach; the reaches' counts add up to the whole's. */
export interface AllTotals {
  readonly whole: Totals;
  readonly reaches: readonly Totals[];
}

/** `waterSide` is the side of the sheet: left (+1) or right (-1) of chainage. */
export function totalsOf(
  samples: LineSamples,
  cuts: CutWalk,
  plan: Plan,
  waterSide: 1 | -1,
): AllTotals {
  const soFar = emptySums();
  let before = ordersFor(soFar, plan);
  const reaches: Totals[] = [];
  for (const sums of reachSums(samples, cuts, plan, waterSide)) {
    addInto(soFar, sums);
    const upTo = ordersFor(soFar, plan);
    reaches.push(asTotals(sums, lessOrders(upTo, before), plan));
    before = upTo;
  }
  return { whole: asTotals(soFar, before, plan), reaches };
}

/**
 * The bags of a whole line as {@link totalsOf} counts them, without all that is not needed for them: for a line that is
 * counted again and again.
 */
export function bagsOf(
  samples: LineSamples,
  cuts: CutWalk,
  { section, practice }: Plan,
): Pick<Totals, "bags" | "bagsPlaced" | "sheetBags"> {
  const inBagsM3 = new Float64Array(cuts.reaches.length);
  const sheetM = new Float64Array(cuts.reaches.length);
  const { chainageM } = samples;
  const { areaM2 } = cuts;
  for (const { first, last, reach } of samples.pieces) {
    const { fill, sheet } = cuts.reaches[reach]!.section;
    for (let i = first; i < last; i++) {
      const stepM = chainageM[i + 1]! - chainageM[i]!;
      if (fill === "bags")
        inBagsM3[reach]! += averageEndVolume(areaM2[i]!, areaM2[i + 1]!, stepM) || 0;
      if (sheet && isBuiltBeyond(cuts, i)) sheetM[reach]! += stepM * builtShare(samples, cuts, i);
    }
  }
  const sum = (values: Float64Array) => values.reduce((total, value) => total + value, 0);
  const [m3, coveredM] = [sum(inBagsM3), sum(sheetM)];
  return {
    bagsPlaced: wholeOrder(bagsPlacedFor(m3, section)),
    bags: wholeOrder(bagsOrderedFor(m3, section, practice)),
    sheetBags: wholeOrder(sheetBagsFor(coveredM, section, practice)),
  };
}

function ordersFor(sums: Sums, plan: Plan): Orders {
  const { section, practice } = plan;
  const { amounts, sheetWidthM } = sums;
  return {
    bagsPlaced: wholeOrder(bagsPlacedFor(amounts.bags, section)),
    bags: wholeOrder(bagsOrderedFor(amounts.bags, section, practice)),
    sheetBags: wholeOrder(sheetBagsFor(amounts.sheetLengthM, section, practice)),
    sheetRolls: sheetRollsFor(amounts.sheetLengthM, sheetWidthM, section.sheet),
    trucks: wholeOrder(sandOf(amounts, plan) / practice.truckM3),
    plywoodSheets: wholeOrder(amounts.plywoodM2 / PLYWOOD_SHEET_M2),
    lumberPieces: wholeOrder(amounts.lumberM / LUMBER_PIECE_M),
    boardPieces: wholeOrder(amounts.boardsM / BOARD_PIECE_M),
    stakes: wholeOrder(amounts.stakes),
  };
}

/** Sand ordered: in bags, in those that hold the sheet, and loose. */
function sandOf(amounts: Amounts, { section, practice }: Plan): number {
  const inBagsM3 = sandFor(amounts.bags, amounts.sheetLengthM, section, practice);
  return inBagsM3 + looseOrderedFor(amounts.sand, practice);
}

function lessOrders(upTo: Orders, before: Orders): Orders {
  const keys = Object.keys(upTo) as (keyof Orders)[];
  return Object.fromEntries(keys.map((key) => [key, upTo[key] - before[key]])) as Record<
    keyof Orders,
    number
  >;
}

const FILLS: readonly Fill[] = ["bags", "sand", "earth"];

function asTotals(sums: Sums, orders: Orders, plan: Plan): Totals {
  const { practice } = plan;
  const { amounts, ...lengths } = sums;
  const { plywoodSheets, lumberPieces, boardPieces, stakes, ...whole } = orders;
  const sandM3 = sandOf(amounts, plan);
  const bags = FILLS.reduce((sum, fill) => sum + labourBagsFor(fill, amounts[fill], plan), 0);
  const jobPersonHours = bags / practice.jobRate;
  return {
    ...lengths,
    ...whole,
    underLimitM: Math.min(lengths.underLimitM, practice.limitM),
    materials: {
      looseSandM3: looseOrderedFor(amounts.sand, practice),
      earthM3: looseOrderedFor(amounts.earth, practice),
      plywoodM2: amounts.plywoodM2,
      plywoodSheets,
      lumberM: amounts.lumberM,
      lumberPieces,
      boardsM: amounts.boardsM,
      boardPieces,
      stakes,
    },
    sandM3,
    sandDryKg: sandM3 * practice.sandDryKgPerM3,
    sandWetKg: sandM3 * practice.sandWetKgPerM3,
    jobPersonHours,
    taskPersonHoursLow: bags / practice.taskRateHigh,
    taskPersonHoursHigh: bags / practice.taskRateLow,
  };
}
