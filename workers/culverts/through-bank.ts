import type { CulvertCandidate } from "../../shared/pipes/candidates.ts";
import { cellIndex, columnOf, rowOf } from "../water/water-grid.ts";
import type { CellStep } from "./cell-steps.ts";
import type { FramedHeights } from "./filled-levels.ts";

/*
 * What counts as a bank with a channel behind it, metres. Source: judgement. A road bank of two lanes is some 40 ft
 * wide at its foot; a pipe under it begins and ends at that foot.
 */
/** Longest way from the sag to the channel. */
const FARTHEST_M = 45;
/** Ground this much above the sag is bank. */
const BANK_M = 0.6;
/** Farthest that the bank begins from either end: natural levees rise more gently. */
const FOOT_M = 10;
/** How far to either side the ground rises out of a channel, and by how much. */
const CHANNEL_HALF_M = 8;
const CHANNEL_DEPTH_M = 0.25;
/** How much lower than the sag a plain without a channel must be. */
const PLAIN_FALL_M = 0.15;
/** Directions out of which one must show the channel. */
const AXES = 4;

/** A way through a bank. */
export interface ThroughBank {
  readonly to: number;
  readonly lengthM: number;
  /** Highest ground on the way, above its start. */
  readonly bankM: number;
  readonly leadsTo: CulvertCandidate["leadsTo"];
}

/**
 * The way from a cell straight through a bank to a channel no higher than it, or from a channel to lower ground; null where that way holds none, or goes
 * over what is not ground.
 * @param isSame whether a cell hangs together with the start: that is no way out of it
 */
export function throughBank(
  grid: FramedHeights,
  from: number,
  step: CellStep,
  steps: readonly CellStep[],
  isSame: (cell: number) => boolean,
): ThroughBank | null {
  const groundM = grid.heightM[from]!;
  const paceM = 0.5 / Math.max(Math.abs(step.columns), Math.abs(step.rows));
  let bankM = 0;
  let bankEndsM = 0;
  let found: Omit<ThroughBank, "leadsTo"> | null = null;
  for (let awayM = paceM; awayM <= FARTHEST_M; awayM += paceM) {
    const cell = cellTo(grid, from, step, awayM);
    const riseM = cell < 0 ? Number.NaN : grid.heightM[cell]! - groundM;
    if (!Number.isFinite(riseM)) break;
    if (riseM >= BANK_M) {
      if (found || (bankM === 0 && awayM > FOOT_M)) break;
      bankM = Math.max(bankM, riseM);
      bankEndsM = awayM;
      continue;
    }
    if (bankM === 0) {
      if (awayM > FOOT_M) break;
      continue;
    }
    if (awayM - bankEndsM > FOOT_M) break;
    const isLower = riseM <= 0 && (!found || grid.heightM[cell]! < grid.heightM[found.to]!);
    if (isLower && !isSame(cell)) found = { to: cell, lengthM: awayM, bankM };
  }
  if (!found) return null;
  if (isChannel(grid, found.to, steps)) return { ...found, leadsTo: "channel" };
  return isDitchToPlain(grid, from, found.to, steps) ? { ...found, leadsTo: "plain" } : null;
}

/** Whether a channel meets the bank, and the plain behind it is lower: there the water spreads, and no channel shows. */
function isDitchToPlain(
  grid: FramedHeights,
  from: number,
  to: number,
  steps: readonly CellStep[],
): boolean {
  return grid.heightM[from]! - grid.heightM[to]! >= PLAIN_FALL_M && isChannel(grid, from, steps);
}

/** Whether the ground rises to both sides of a cell, in any direction. */
function isChannel(grid: FramedHeights, cell: number, steps: readonly CellStep[]): boolean {
  const half = steps.length / 2;
  for (let axis = 0; axis < AXES; axis++) {
    const k = Math.round((axis * half) / AXES);
    if (rises(grid, cell, steps[k]!) && rises(grid, cell, steps[k + half]!)) return true;
  }
  return false;
}

function rises(grid: FramedHeights, from: number, step: CellStep): boolean {
  const paceM = 0.5 / Math.max(Math.abs(step.columns), Math.abs(step.rows));
  for (let awayM = paceM; awayM <= CHANNEL_HALF_M; awayM += paceM) {
    const cell = cellTo(grid, from, step, awayM);
    if (cell < 0 || !Number.isFinite(grid.heightM[cell]!)) return false;
    if (grid.heightM[cell]! - grid.heightM[from]! >= CHANNEL_DEPTH_M) return true;
  }
  return false;
}

function cellTo(grid: FramedHeights, from: number, step: CellStep, awayM: number): number {
  return cellIndex(
    grid,
    columnOf(grid, from) + Math.round(step.columns * awayM),
    rowOf(grid, from) + Math.round(step.rows * awayM),
  );
}
