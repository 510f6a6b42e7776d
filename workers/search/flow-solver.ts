import type { FlowGrid } from "./flow-grid.ts";
import type { Point } from "./types.ts";

/**
 * The search for the strongest flow: a potential on the nodes of a grid that grows by `rise[s]` with every
 * turn round structure s, and whose gradient stays within the limits of the grid.
 * The potential is `potential` (single valued) plus the angles round the structures times their rises.
 */
export interface FlowState {
  readonly grid: FlowGrid;
  readonly potential: Float64Array;
  readonly rise: Float64Array;
  /** Turns round each structure along the side east (north) of each node, as a share of a full turn. */
  readonly turnEast: readonly Float64Array[];
  readonly turnNorth: readonly Float64Array[];
  /** Multipliers: two for each corner of each square, then two for each point. */
  readonly pull: Float64Array;
  readonly scratch: Scratch;
  /** Size of steps in the potential against steps in the multipliers. */
  balance: number;
}

interface Scratch {
  readonly ahead: Float64Array;
  readonly riseAhead: Float64Array;
  readonly east: Float64Array;
  readonly north: Float64Array;
  readonly pullEast: Float64Array;
  readonly pullNorth: Float64Array;
  readonly nodeStep: Float64Array;
  readonly riseStep: Float64Array;
  readonly scale: Float64Array;
}

/** @param scaleM3 limits are divided by it, so that the answer is about 1 */
export function flowState(grid: FlowGrid, inside: readonly Point[], scaleM3: number): FlowState {
  const count = grid.columns * grid.rows;
  const constraints = 4 * grid.squares.length + grid.pointSquare.length;
  const turns = inside.map((point) => turnsRound(grid, point));
  const state: FlowState = {
    grid: {
      ...grid,
      limit: grid.limit.map((each) => each / scaleM3),
      pointLimit: grid.pointLimit.map((each) => each / scaleM3),
    },
    potential: new Float64Array(count),
    rise: new Float64Array(inside.length).fill(1 / inside.length),
    turnEast: turns.map((each) => each.east),
    turnNorth: turns.map((each) => each.north),
    pull: new Float64Array(2 * constraints),
    scratch: {
      ahead: new Float64Array(count),
      riseAhead: new Float64Array(inside.length).fill(1 / inside.length),
      east: new Float64Array(count),
      north: new Float64Array(count),
      pullEast: new Float64Array(count),
      pullNorth: new Float64Array(count),
      nodeStep: new Float64Array(count),
      riseStep: new Float64Array(inside.length),
      scale: new Float64Array(constraints),
    },
    balance: 1,
  };
  setSteps(state);
  return state;
}

/** Share of a turn round a point along the sides east and north of each node. */
function turnsRound({ columns, rows, cellM, x0M, y0M }: FlowGrid, [xM, yM]: Point) {
  const count = columns * rows;
  const east = new Float64Array(count);
  const north = new Float64Array(count);
  const angle = (node: number) => {
    const i = node % columns;
    return Math.atan2(y0M + ((node - i) / columns) * cellM - yM, x0M + i * cellM - xM);
  };
  const share = (from: number, to: number) => {
    const turn = (angle(to) - angle(from)) / (2 * Math.PI);
    return turn - Math.round(turn);
  };
  for (let node = 0; node < count; node++) {
    if (node % columns < columns - 1) east[node] = share(node, node + 1);
    if (node + columns < count) north[node] = share(node, node + columns);
  }
  return { east, north };
}

/** Step lengths that keep the iteration stable: one over the sum of what each node takes part in. */
function setSteps(state: FlowState): void {
  const { grid, scratch, turnEast, turnNorth } = state;
  const { columns, squares, limit, pointSquare, pointEast, pointNorth, pointLimit } = grid;
  const { nodeStep, riseStep, scale } = scratch;
  const sideEast = new Float64Array(nodeStep.length);
  const sideNorth = new Float64Array(nodeStep.length);
  for (let s = 0; s < squares.length; s++) {
    const node = squares[s]!;
    for (let c = 0; c < 4; c++) {
      const weight = 1 / Math.sqrt(limit[4 * s + c]!);
      scale[4 * s + c] = weight;
      sideEast[node + (c >> 1) * columns]! += weight;
      sideNorth[node + (c & 1)]! += weight;
    }
  }
  for (let p = 0; p < pointSquare.length; p++) {
    const node = pointSquare[p]!;
    const weight = 1 / Math.sqrt(pointLimit[p]!);
    scale[4 * squares.length + p] = weight;
    sideEast[node]! += weight * (1 - pointNorth[p]!);
    sideEast[node + columns]! += weight * pointNorth[p]!;
    sideNorth[node]! += weight * (1 - pointEast[p]!);
    sideNorth[node + 1]! += weight * pointEast[p]!;
  }
  for (let node = 0; node < nodeStep.length; node++) {
    nodeStep[node]! += sideEast[node]! + sideNorth[node]!;
    if (sideEast[node]! > 0) nodeStep[node + 1]! += sideEast[node]!;
    if (sideNorth[node]! > 0) nodeStep[node + columns]! += sideNorth[node]!;
    for (let s = 0; s < riseStep.length; s++) {
      riseStep[s]! += sideEast[node]! * Math.abs(turnEast[s]![node]!);
      riseStep[s]! += sideNorth[node]! * Math.abs(turnNorth[s]![node]!);
    }
  }
}

/**
 * One step of the primal-dual iteration (Chambolle and Pock 2011, with diagonal steps): multipliers follow
 * the gradient where it passes its limit, potential and rises follow the multipliers.
 */
export function flowStep(state: FlowState): void {
  const { grid, potential, rise, turnEast, turnNorth, scratch, balance } = state;
  const { ahead, riseAhead, east, north, pullEast, pullNorth, nodeStep, riseStep } = scratch;
  const { columns } = grid;
  sideChanges(state, ahead, riseAhead, east, north);
  pullEast.fill(0);
  pullNorth.fill(0);
  pullCorners(state);
  pullPoints(state);
  for (let node = 0; node < potential.length; node++) {
    const weight = nodeStep[node]!;
    if (weight === 0) continue;
    let pull = -pullEast[node]! - pullNorth[node]!;
    if (node > 0) pull += pullEast[node - 1]!;
    if (node >= columns) pull += pullNorth[node - columns]!;
    const before = potential[node]!;
    const after = before - (balance / weight) * pull;
    potential[node] = after;
    ahead[node] = 2 * after - before;
  }
  for (let s = 0; s < rise.length; s++) {
    let pull = 0;
    const turnsEast = turnEast[s]!;
    const turnsNorth = turnNorth[s]!;
    for (let node = 0; node < potential.length; node++) {
      pull += pullEast[node]! * turnsEast[node]! + pullNorth[node]! * turnsNorth[node]!;
    }
    const before = rise[s]!;
    const after = before - (balance / riseStep[s]!) * (pull - 1);
    rise[s] = after;
    riseAhead[s] = 2 * after - before;
  }
}

/** Change of the potential along the sides east and north of each node. */
function sideChanges(
  { grid, turnEast, turnNorth }: FlowState,
  potential: Float64Array,
  rise: Float64Array,
  east: Float64Array,
  north: Float64Array,
): void {
  const { columns } = grid;
  const count = potential.length;
  const only = rise.length === 1;
  const turnsEast = turnEast[0]!;
  const turnsNorth = turnNorth[0]!;
  const first = rise[0]!;
  for (let node = 0; node < count; node++) {
    let e = node + 1 < count ? potential[node + 1]! - potential[node]! : 0;
    let n = node + columns < count ? potential[node + columns]! - potential[node]! : 0;
    e += first * turnsEast[node]!;
    n += first * turnsNorth[node]!;
    for (let s = 1; !only && s < rise.length; s++) {
      e += rise[s]! * turnEast[s]![node]!;
      n += rise[s]! * turnNorth[s]![node]!;
    }
    east[node] = e;
    north[node] = n;
  }
}

function pullCorners({ grid, pull, scratch, balance }: FlowState): void {
  const { columns, squares, limit } = grid;
  const { east, north, pullEast, pullNorth, scale } = scratch;
  const half = 0.5 / balance;
  for (let s = 0; s < squares.length; s++) {
    const node = squares[s]!;
    for (let c = 0; c < 4; c++) {
      const e = node + (c >> 1) * columns;
      const n = node + (c & 1);
      const at = 4 * s + c;
      const step = half * scale[at]!;
      let x = pull[2 * at]! + step * east[e]!;
      let y = pull[2 * at + 1]! + step * north[n]!;
      const size = Math.sqrt(x * x + y * y);
      const free = step * limit[at]!;
      if (size <= free) {
        x = 0;
        y = 0;
      } else {
        const keep = 1 - free / size;
        x *= keep;
        y *= keep;
        pullEast[e]! += x;
        pullNorth[n]! += y;
      }
      pull[2 * at] = x;
      pull[2 * at + 1] = y;
    }
  }
}

function pullPoints({ grid, pull, scratch, balance }: FlowState): void {
  const { columns, squares, pointSquare, pointEast, pointNorth, pointLimit } = grid;
  const { east, north, pullEast, pullNorth, scale } = scratch;
  const half = 0.5 / balance;
  for (let p = 0; p < pointSquare.length; p++) {
    const node = pointSquare[p]!;
    const u = pointEast[p]!;
    const v = pointNorth[p]!;
    const at = 4 * squares.length + p;
    const step = half * scale[at]!;
    let x = pull[2 * at]! + step * ((1 - v) * east[node]! + v * east[node + columns]!);
    let y = pull[2 * at + 1]! + step * ((1 - u) * north[node]! + u * north[node + 1]!);
    const size = Math.sqrt(x * x + y * y);
    const free = step * pointLimit[p]!;
    const keep = size > free ? 1 - free / size : 0;
    x *= keep;
    y *= keep;
    pull[2 * at] = x;
    pull[2 * at + 1] = y;
    pullEast[node]! += (1 - v) * x;
    pullEast[node + columns]! += v * x;
    pullNorth[node]! += (1 - u) * y;
    pullNorth[node + 1]! += u * y;
  }
}

/** Most by which a potential's gradient passes its limits anywhere, as a factor: at most 1 where it keeps them. */
export function worstRatio(state: FlowState, potential: Float64Array, rise: Float64Array): number {
  const { grid, scratch } = state;
  const { columns, squares, limit, pointSquare, pointEast, pointNorth, pointLimit } = grid;
  const { east, north } = scratch;
  sideChanges(state, potential, rise, east, north);
  let worst = 0;
  for (let s = 0; s < squares.length; s++) {
    const node = squares[s]!;
    for (let c = 0; c < 4; c++) {
      const x = east[node + (c >> 1) * columns]!;
      const y = north[node + (c & 1)]!;
      const ratio = Math.sqrt(x * x + y * y) / limit[4 * s + c]!;
      if (ratio > worst) worst = ratio;
    }
  }
  for (let p = 0; p < pointSquare.length; p++) {
    const node = pointSquare[p]!;
    const u = pointEast[p]!;
    const v = pointNorth[p]!;
    const x = (1 - v) * east[node]! + v * east[node + columns]!;
    const y = (1 - u) * north[node]! + u * north[node + 1]!;
    const ratio = Math.sqrt(x * x + y * y) / pointLimit[p]!;
    if (ratio > worst) worst = ratio;
  }
  return worst;
}

/** Begins a state from a coarser one: its potential between nodes, and its rises. */
export function beginFrom(state: FlowState, coarse: FlowState): void {
  const { columns, cellM, x0M, y0M } = state.grid;
  const from = coarse.grid;
  for (let node = 0; node < state.potential.length; node++) {
    const i = node % columns;
    const u = (x0M + i * cellM - from.x0M) / from.cellM;
    const v = (y0M + ((node - i) / columns) * cellM - from.y0M) / from.cellM;
    const p = Math.max(0, Math.min(from.columns - 2, Math.floor(u)));
    const q = Math.max(0, Math.min(from.rows - 2, Math.floor(v)));
    const at = q * from.columns + p;
    const { potential } = coarse;
    const south = potential[at]! + (u - p) * (potential[at + 1]! - potential[at]!);
    const above = at + from.columns;
    const north = potential[above]! + (u - p) * (potential[above + 1]! - potential[above]!);
    state.potential[node] = south + (v - q) * (north - south);
  }
  state.scratch.ahead.set(state.potential);
  state.balance = coarse.balance;
  state.rise.set(coarse.rise);
  state.scratch.riseAhead.set(coarse.rise);
}
