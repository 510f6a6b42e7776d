import { halfBaseAt } from "./price-table.ts";
import { nodeHeight } from "./search-ground.ts";
import type { SearchTerms } from "./search-terms.ts";
import { type Shape, signedDistance } from "./shape.ts";
import type { SearchStep } from "./types.ts";

/**
 * A grid of squares over the window on which a flow is bounded (see prove-best.ts): the squares that a line
 * may touch, and how large the flow's potential gradient may be at points of each. Nodes run east, then
 * north.
 */
export interface FlowGrid {
  readonly columns: number;
  readonly rows: number;
  readonly cellM: number;
  readonly x0M: number;
  readonly y0M: number;
  /** Squares a line may touch anywhere, by their south-west node. */
  readonly squares: Int32Array;
  /** Most that the gradient times the cell may be at the corners of each: south-west, south-east, north-west, north-east. m3. */
  readonly limit: Float64Array;
  /** Points that stand for a square partly too close to an obstacle: its square, its place in it, its limit. */
  readonly pointSquare: Int32Array;
  readonly pointEast: Float64Array;
  readonly pointNorth: Float64Array;
  readonly pointLimit: Float64Array;
}

type Edge = readonly [x1: number, y1: number, x2: number, y2: number];

/** An obstacle with its clearance as the rule has it, without the search's own margin. */
interface Obstacle {
  readonly shape: Shape;
  readonly clearM: number;
  readonly edges: readonly Edge[];
}

/** A tangent is used across a square when it loses less than this share at every corner. */
const TANGENT_LOSS = 0.02;
const ROUNDING = 1e-9;
const BOUNDING: SearchStep = { share: 0, doing: "Looking for a proof" };

/**
 * The flow grid of a site.
 * @param stride every how many-th node of the site's ground is taken; only stride 1 has the ground that
 *   lines are priced on
 */
export function* flowGrid(terms: SearchTerms, stride: number): Generator<SearchStep, FlowGrid> {
  const { ground, box } = terms;
  const convex = lowerHull(terms.table.price);
  const cellM = ground.spacingM * stride;
  const column0 = stride * Math.max(0, Math.floor((box.minX - ground.x0M) / cellM));
  const row0 = stride * Math.max(0, Math.floor((box.minY - ground.y0M) / cellM));
  const x0M = ground.x0M + column0 * ground.spacingM;
  const y0M = ground.y0M + row0 * ground.spacingM;
  const columns = Math.ceil((box.maxX - x0M) / cellM - ROUNDING) + 1;
  const rows = Math.ceil((box.maxY - y0M) / cellM - ROUNDING) + 1;
  const height = new Float64Array(columns * rows);
  for (let j = 0; j < rows; j++) {
    yield BOUNDING;
    for (let i = 0; i < columns; i++) {
      const groundM = nodeHeight(ground, column0 + i * stride, row0 + j * stride);
      height[j * columns + i] =
        terms.crest.at(x0M + i * cellM, y0M + j * cellM) - ground.baseM - groundM;
    }
  }
  const obstacles = obstaclesOf(terms);
  const draft = { squares: [] as number[], limit: [] as number[], at: [] as CutPoint[] };
  for (let j = 0; j + 1 < rows; j++) {
    yield BOUNDING;
    for (let i = 0; i + 1 < columns; i++) {
      const node = j * columns + i;
      const heights: Corners = [
        height[node]!,
        height[node + 1]!,
        height[node + columns]!,
        height[node + columns + 1]!,
      ];
      if (heights.some(Number.isNaN)) continue;
      const lowest = Math.min(...heights);
      const halfM = halfBaseAt(terms.table, lowest);
      const closed = closedCorners(obstacles, x0M + i * cellM, y0M + j * cellM, cellM, halfM);
      if (closed === "all") continue;
      const limits = minorant(convex, terms.table.perM, heights, lowest).map(
        (each) => each * cellM,
      ) as Corners;
      if (closed === "none") {
        draft.squares.push(node);
        draft.limit.push(...limits);
      } else {
        draft.at.push(...cutPoints(node, closed, limits));
      }
    }
  }
  return {
    columns,
    rows,
    cellM,
    x0M,
    y0M,
    squares: Int32Array.from(draft.squares),
    limit: Float64Array.from(draft.limit),
    pointSquare: Int32Array.from(draft.at, (each) => each.square),
    pointEast: Float64Array.from(draft.at, (each) => each.east),
    pointNorth: Float64Array.from(draft.at, (each) => each.north),
    pointLimit: Float64Array.from(draft.at, (each) => each.limit),
  };
}

/** Values at the corners of a square: south-west, south-east, north-west, north-east. */
type Corners = [number, number, number, number];

interface CutPoint {
  readonly square: number;
  readonly east: number;
  readonly north: number;
  readonly limit: number;
}

function obstaclesOf(terms: SearchTerms): Obstacle[] {
  const margin = terms.request.rule.marginM;
  return terms.obstacles.map(({ shape, clearM }) => ({
    shape,
    clearM: Math.max(0, clearM - margin),
    edges: Array.from({ length: shape.count }, (_, k): Edge => {
      const n = (k + 1) % shape.count;
      return [shape.xM[k]!, shape.yM[k]!, shape.xM[n]!, shape.yM[n]!];
    }),
  }));
}

/** Which corners of a square are surely too close to one edge, and how far along its sides that reaches. */
interface Closed {
  readonly edge: Edge;
  readonly needM: number;
  readonly corner: readonly [boolean, boolean, boolean, boolean];
  readonly xM: number;
  readonly yM: number;
  readonly cellM: number;
}

const CORNER_EAST = [0, 1, 0, 1] as const;
const CORNER_NORTH = [0, 0, 1, 1] as const;

/**
 * Points within a distance of one edge form a convex set, so a square with all four corners in it lies in
 * it wholly, and of a square with some corners in it the hull of those and of points between.
 */
function closedCorners(
  obstacles: readonly Obstacle[],
  xM: number,
  yM: number,
  cellM: number,
  halfBaseM: number,
): Closed | "none" | "all" {
  let best: Closed | "none" = "none";
  let most = 0;
  for (const { shape, clearM, edges } of obstacles) {
    const needM = clearM + halfBaseM;
    if (xM > shape.maxX + needM || xM + cellM < shape.minX - needM) continue;
    if (yM > shape.maxY + needM || yM + cellM < shape.minY - needM) continue;
    const middle = signedDistance(shape, xM + cellM / 2, yM + cellM / 2);
    if (middle < -cellM) return "all";
    for (const edge of edges) {
      const corner = CORNER_EAST.map(
        (east, c) => away(edge, xM + east * cellM, yM + CORNER_NORTH[c]! * cellM) <= needM,
      ) as [boolean, boolean, boolean, boolean];
      const count = corner.filter(Boolean).length;
      if (count === 4) return "all";
      const across = count === 2 && corner[0] === corner[3];
      if (count <= most || across) continue;
      most = count;
      best = { edge, needM, corner, xM, yM, cellM };
    }
  }
  return best;
}

function away([x1, y1, x2, y2]: Edge, x: number, y: number): number {
  const ex = x2 - x1;
  const ey = y2 - y1;
  const squared = ex * ex + ey * ey;
  const t = squared > 0 ? ((x - x1) * ex + (y - y1) * ey) / squared : 0;
  const s = Math.max(0, Math.min(1, t));
  return Math.hypot(x - x1 - s * ex, y - y1 - s * ey);
}

/** Sides of a square as pairs of corners. */
const SIDES = [
  [0, 1],
  [2, 3],
  [0, 2],
  [1, 3],
] as const;

/**
 * The corners of what is left of a square: its open corners, and the points on its sides where the closed
 * part ends. The limit between corners is bilinear; along the slanting cut it can lie below the straight
 * line between its ends by a quarter of its twist, which is taken off there.
 */
function cutPoints(square: number, closed: Closed, given: Corners): CutPoint[] {
  const points: CutPoint[] = [];
  const bent = Math.abs(given[0] + given[3] - given[1] - given[2]) / 4;
  const least = Math.min(...given);
  const flat = bent > least / 2;
  const limits: Corners = flat ? [least, least, least, least] : given;
  const twist = flat ? 0 : bent;
  closed.corner.forEach((isClosed, c) => {
    if (isClosed) return;
    points.push({ square, east: CORNER_EAST[c]!, north: CORNER_NORTH[c]!, limit: limits[c]! });
  });
  for (const [p, q] of SIDES) {
    if (closed.corner[p] === closed.corner[q]) continue;
    const [from, to] = closed.corner[p] ? [p, q] : [q, p];
    const share = reachOfClosed(closed, from, to);
    const east = CORNER_EAST[from]! + share * (CORNER_EAST[to]! - CORNER_EAST[from]!);
    const north = CORNER_NORTH[from]! + share * (CORNER_NORTH[to]! - CORNER_NORTH[from]!);
    const limit = limits[from]! + share * (limits[to]! - limits[from]!) - twist;
    points.push({ square, east, north, limit });
  }
  return points;
}

/** How far from a closed corner toward an open one the closed part surely reaches, 0..1. */
function reachOfClosed({ edge, needM, xM, yM, cellM }: Closed, from: number, to: number): number {
  let low = 0;
  let high = 1;
  for (let k = 0; k < 30; k++) {
    const share = (low + high) / 2;
    const east = CORNER_EAST[from]! + share * (CORNER_EAST[to]! - CORNER_EAST[from]!);
    const north = CORNER_NORTH[from]! + share * (CORNER_NORTH[to]! - CORNER_NORTH[from]!);
    if (away(edge, xM + east * cellM, yM + north * cellM) <= needM) low = share;
    else high = share;
  }
  return low;
}

/**
 * Prices at the corners of a square, m3 per metre, of a tangent to the price: nowhere above the price as the
 * price is convex in height, and bilinear over the square as the height is.
 */
function minorant(convex: Float64Array, perM: number, heights: Corners, lowest: number): Corners {
  const middle = (heights[0] + heights[1] + heights[2] + heights[3]) / 4;
  const central = tangent(convex, perM, middle, heights);
  const loses = central.some((each, c) => {
    const [price] = tangent(convex, perM, heights[c]!, [heights[c]!, 0, 0, 0]);
    return each < price * (1 - TANGENT_LOSS);
  });
  return loses ? tangent(convex, perM, lowest, heights) : central;
}

/** Values at four heights of the straight line that touches the price at a height. */
function tangent(convex: Float64Array, perM: number, atM: number, heights: Corners): Corners {
  const touchM = Math.max(0, atM);
  const k = Math.min(Math.floor(touchM * perM), convex.length - 2);
  const slope = atM > 0 ? (convex[k + 1]! - convex[k]!) * perM : 0;
  const price = convex[k]! + slope * (touchM - k / perM);
  return heights.map((height) => price + slope * (height - touchM)) as Corners;
}

/** The greatest convex sequence nowhere above the given one. */
function lowerHull(values: Float64Array): Float64Array {
  const kept: number[] = [];
  for (let k = 0; k < values.length; k++) {
    while (kept.length > 1) {
      const p = kept[kept.length - 2]!;
      const q = kept[kept.length - 1]!;
      const onLine = values[p]! + ((values[k]! - values[p]!) * (q - p)) / (k - p);
      if (values[q]! <= onLine) break;
      kept.pop();
    }
    kept.push(k);
  }
  const hull = new Float64Array(values.length);
  for (let m = 0; m + 1 < kept.length; m++) {
    const [p, q] = [kept[m]!, kept[m + 1]!];
    const slope = (values[q]! - values[p]!) / (q - p);
    for (let k = p; k <= q; k++) hull[k] = values[p]! + slope * (k - p);
  }
  return hull;
}
