import { type FlowGrid, flowGrid } from "./flow-grid.ts";
import { beginFrom, type FlowState, flowState, flowStep, worstRatio } from "./flow-solver.ts";
import { unlessLate } from "./progress.ts";
import type { SearchTerms } from "./search-terms.ts";
import type { BestPossible, Point, SearchStep } from "./types.ts";

/** Strides of the grids, coarse to fine; only on the last is the bound a proof. */
const STRIDES = [4, 2, 1] as const;
/** Ratios of step sizes tried on the coarsest grid; the one that gives the best bound there is kept. */
const BALANCES = [0.5, 1, 2, 4, 8] as const;
const TRIAL_STEPS = 600;
const COARSE_STEPS = 1000;
const MOST_STEPS = 6000;
/** Steps averaged before the bound is looked at. */
const LAP = 100;
/** The bound is good enough when this many laps raised it by less than this share. */
const IDLE_LAPS = 15;
const IDLE_SHARE = 0.0005;
/** Most nodes times structures: for each a value is held at every node. */
const MOST_TURNS = 8_000_000;
const PROVING = "Looking for a proof";
/** Room for rounding in the proof's own sums. */
const ROUNDING = 1 - 1e-9;

/**
 * A true lower bound on the price of any ring round the structures that keeps the rules within the window,
 * on the ground as lines are priced (bilinear between nodes half a metre apart).
 *
 * Take any function that grows by F with every turn round the structures and whose gradient is nowhere
 * steeper than the price of a metre of line. Along a ring it grows by F, and never faster than the price
 * is spent: the ring's price is at least F. (It is the stream function of a flow |v| <= price that leaves
 * the structures and is free of divergence outside them; F is what flows.) The function is bilinear on
 * squares; on a square the price is bounded from below by a tangent in height, so that price less gradient is
 * concave along both axes and needs to be looked at in the corners only. The iteration that looks for
 * the function may stop at any time: the bound is what its result is then checked to give.
 * @returns null where there is no such bound (the crest is no plane, or a structure is smaller than the grid),
 *   and where time or room runs out before the finest grid
 */
export function* proveBest(
  terms: SearchTerms,
  group: readonly number[],
  priceM3: number,
  outOfTime: () => boolean,
): Generator<SearchStep, BestPossible | null> {
  if (!terms.crest.plane || outOfTime()) return null;
  const inside = group.map((k) => terms.obstacles[k]!.shape.inside);
  let state: FlowState | null = null;
  let bound = 0;
  for (const stride of STRIDES) {
    const grid = yield* unlessLate(flowGrid(terms, stride), outOfTime);
    if (!grid || grid.columns * grid.rows * inside.length > MOST_TURNS) return null;
    const last = stride === 1;
    if (inside.some((point) => touches(grid, point))) {
      if (last) return null;
      continue;
    }
    const begin = (): FlowState => {
      const begun = flowState(grid, inside, priceM3);
      if (state) beginFrom(begun, state);
      return begun;
    };
    const next: FlowState = state ? begin() : yield* bestBalanced(begin, outOfTime);
    state = next;
    bound = yield* strengthen(next, last ? MOST_STEPS : COARSE_STEPS, outOfTime);
    if (!last && outOfTime()) return null;
  }
  const bestM3 = Math.min(priceM3, bound * priceM3 * ROUNDING);
  const gapShare = bestM3 > 0 ? priceM3 / bestM3 - 1 : Infinity;
  return {
    kind: "proof",
    priceM3: bestM3,
    gapShare,
  };
}

/** A state with the ratio of step sizes that does best in a short trial. */
function* bestBalanced(
  begin: () => FlowState,
  outOfTime: () => boolean,
): Generator<SearchStep, FlowState> {
  let best: FlowState | null = null;
  let bestBound = -1;
  for (const balance of BALANCES) {
    const state = begin();
    state.balance = balance;
    const bound = yield* strengthen(state, TRIAL_STEPS, outOfTime);
    if (bound <= bestBound) continue;
    bestBound = bound;
    best = state;
  }
  return best!;
}

/** Steps on until the bound rises no more; leaves the best potential found in the state. */
function* strengthen(
  state: FlowState,
  steps: number,
  outOfTime: () => boolean,
): Generator<SearchStep, number> {
  const meanPotential = new Float64Array(state.potential.length);
  const meanRise = new Float64Array(state.rise.length);
  const keptPotential = state.potential.slice();
  const keptRise = state.rise.slice();
  let best = 0;
  let idle = 0;
  for (let done = 0; done < steps && idle < IDLE_LAPS && !outOfTime(); done += LAP) {
    meanPotential.fill(0);
    meanRise.fill(0);
    for (let k = 0; k < LAP; k++) {
      flowStep(state);
      addTo(meanPotential, state.potential, 1 / LAP);
      addTo(meanRise, state.rise, 1 / LAP);
      yield { share: Math.min(1, done / steps), doing: PROVING };
      if (outOfTime()) break;
    }
    const before = best;
    for (const [potential, rise] of [
      [meanPotential, meanRise],
      [state.potential, state.rise],
    ] as const) {
      const bound = rise.reduce((sum, each) => sum + each, 0) / worstRatio(state, potential, rise);
      if (!(bound > best)) continue;
      best = bound;
      keptPotential.set(potential);
      keptRise.set(rise);
    }
    idle = best > before * (1 + IDLE_SHARE) ? 0 : idle + 1;
  }
  state.potential.set(keptPotential);
  state.rise.set(keptRise);
  return best;
}

function addTo(sum: Float64Array, values: Float64Array, share: number): void {
  for (let k = 0; k < sum.length; k++) sum[k]! += share * values[k]!;
}

/** Whether a line may touch the square that a point lies in. */
function touches(grid: FlowGrid, [xM, yM]: Point): boolean {
  const i = Math.floor((xM - grid.x0M) / grid.cellM);
  const j = Math.floor((yM - grid.y0M) / grid.cellM);
  const square = j * grid.columns + i;
  return grid.squares.includes(square) || grid.pointSquare.includes(square);
}
