import type { PlaneBox } from "../../shared/site.ts";
import { halfBaseAt, priceAt } from "./price-table.ts";
import { nodeHeight } from "./search-ground.ts";
import type { Obstacle, SearchTerms } from "./search-terms.ts";
import { contains, signedDistance } from "./shape.ts";
import type { SearchStep } from "./types.ts";

/** Why a node is closed to the line. */
export const OPEN = 0;
export const OUTSIDE = 1;
export const NO_GROUND = 2;
export const NO_GO = 3;
export const WATER = 4;
/** Too close to a structure, or inside it. */
export const CLEARANCE = 5;
/** A wall the line may not cross, so that it keeps structures together or water outside. */
export const WALL = 6;

/**
 * Price per cell length at the nodes of a lattice over the site, padded by three closed nodes on every
 * side so that no stencil needs a bounds test. Nodes run east, then north; all arrays have
 * `columns * rows` values.
 */
export interface Lattice {
  readonly columns: number;
  readonly rows: number;
  readonly cellM: number;
  /** Plan-plane position of node (0, 0), padding included, metres. */
  readonly x0M: number;
  readonly y0M: number;
  /** m3 per cell length; Infinity where closed. */
  readonly price: Float32Array;
  /** One of `OPEN` ... `WALL`. */
  readonly why: Uint8Array;
}

export const PAD = 3;
const PRICING: SearchStep = { share: 0, doing: "Pricing the ground" };
/** No clearance is eased below this many cells, so that a thin obstacle stays a closed wall. */
const LEAST_CLEAR_CELLS = 0.75;
const HALF_DIAGONAL = Math.SQRT1_2;

/**
 * The lattice over a part of the site.
 * @param stride every how many-th node of the site's ground is taken
 * @param easedCells how far clearances are eased, in cells: a node a little too close is pushed out later; negative =
 * so much is added, and to the clearance from missing ground as well
 */
export function* siteLattice(
  terms: SearchTerms,
  box: PlaneBox,
  stride: number,
  easedCells: number,
): Generator<SearchStep, Lattice> {
  const { ground } = terms;
  const cellM = ground.spacingM * stride;
  const first = (from: number, origin: number) =>
    stride * Math.ceil((from - origin) / cellM - 1e-9);
  const last = (to: number, origin: number) => stride * Math.floor((to - origin) / cellM + 1e-9);
  const column0 = Math.max(0, first(Math.max(box.minX, terms.box.minX), ground.x0M));
  const row0 = Math.max(0, first(Math.max(box.minY, terms.box.minY), ground.y0M));
  const column1 = last(Math.min(box.maxX, terms.box.maxX), ground.x0M);
  const row1 = last(Math.min(box.maxY, terms.box.maxY), ground.y0M);
  const columns = Math.max(0, (column1 - column0) / stride + 1) + 2 * PAD;
  const rows = Math.max(0, (row1 - row0) / stride + 1) + 2 * PAD;
  const lattice: Lattice = {
    columns,
    rows,
    cellM,
    x0M: ground.x0M + column0 * ground.spacingM - PAD * cellM,
    y0M: ground.y0M + row0 * ground.spacingM - PAD * cellM,
    price: new Float32Array(columns * rows).fill(Infinity),
    why: new Uint8Array(columns * rows).fill(OUTSIDE),
  };
  const eased = easedCells * cellM;
  for (let j = PAD; j < rows - PAD; j++) {
    const groundRow = row0 + (j - PAD) * stride;
    priceRow(terms, lattice, j, groundRow, column0, stride, eased);
    yield PRICING;
  }
  if (ground.seen.holes) yield* closeNearHoles(terms, lattice, row0, column0, stride, eased);
  return lattice;
}

function priceRow(
  terms: SearchTerms,
  lattice: Lattice,
  j: number,
  groundRow: number,
  column0: number,
  stride: number,
  easedM: number,
): void {
  const { ground, crest, table } = terms;
  const { columns, cellM, x0M } = lattice;
  const outline = "outline" in terms.window ? terms.window.outline : null;
  const leastM = LEAST_CLEAR_CELLS * cellM;
  const y = lattice.y0M + j * cellM;
  const plane = crest.plane;
  const obstacles = besideRow(terms, y, leastM);
  for (let i = PAD; i < columns - PAD; i++) {
    const x = x0M + i * cellM;
    const node = j * columns + i;
    if (outline && !contains(outline, x, y)) continue;
    const groundM = nodeHeight(ground, column0 + (i - PAD) * stride, groundRow);
    const crestM = plane ? plane[0] + plane[1] * x + plane[2] * y : crest.at(x, y);
    const heightM = crestM - ground.baseM - groundM;
    const blind = Number.isNaN(heightM);
    const why = blockedBy(obstacles, x, y, blind ? 0 : halfBaseAt(table, heightM), easedM, leastM);
    lattice.why[node] = why === OPEN && blind ? NO_GROUND : why;
    if (why === OPEN && !blind) lattice.price[node] = priceAt(table, heightM) * cellM;
  }
}

/** Obstacles that may be too close to some point of a row. */
function besideRow({ obstacles, table }: SearchTerms, y: number, leastM: number): Obstacle[] {
  const widestM = table.halfBaseM[table.halfBaseM.length - 1]!;
  return obstacles.filter(({ shape, clearM }) => {
    const needM = Math.max(leastM, clearM + widestM);
    return y >= shape.minY - needM && y <= shape.maxY + needM;
  });
}

/** What closes a point to the line: the strongest of the obstacles it is too close to. */
function blockedBy(
  obstacles: readonly Obstacle[],
  x: number,
  y: number,
  halfBaseM: number,
  easedM: number,
  leastM: number,
): number {
  let why = OPEN;
  for (let k = 0; k < obstacles.length; k++) {
    const { shape, clearM, role } = obstacles[k]!;
    const needM = Math.max(leastM, clearM + halfBaseM - easedM);
    if (x < shape.minX - needM || x > shape.maxX + needM) continue;
    if (y < shape.minY - needM || y > shape.maxY + needM) continue;
    if (signedDistance(shape, x, y) >= needM) continue;
    const each = role === "structure" ? CLEARANCE : role === "water" ? WATER : NO_GO;
    if (each > why) why = each;
  }
  return why;
}

/** Closes open nodes whose base would reach over missing ground. */
function* closeNearHoles(
  terms: SearchTerms,
  lattice: Lattice,
  row0: number,
  column0: number,
  stride: number,
  easedM: number,
): Generator<SearchStep, void> {
  const { ground, crest, table } = terms;
  const { columns, price, why, cellM, x0M, y0M } = lattice;
  const halfBaseOf = (i: number, j: number) => {
    const groundM = nodeHeight(ground, column0 + (i - PAD) * stride, row0 + (j - PAD) * stride);
    const crestM = crest.at(x0M + i * cellM, y0M + j * cellM);
    return halfBaseAt(table, crestM - ground.baseM - groundM);
  };
  const widest = table.halfBaseM[table.halfBaseM.length - 1]!;
  const disc = discOf(Math.ceil(widest / cellM));
  const closed: number[] = [];
  for (let node = 0; node < why.length; node++) {
    if (node % columns === 0) yield PRICING;
    if (why[node] !== NO_GROUND || !edgeOfHole(why, node, columns)) continue;
    const i = node % columns;
    const j = (node - i) / columns;
    for (const [di, dj, awayCells] of disc) {
      const at = node + dj * columns + di;
      if (i + di < PAD || i + di >= columns - PAD || why[at] !== OPEN) continue;
      if ((awayCells - HALF_DIAGONAL) * cellM < halfBaseOf(i + di, j + dj) - Math.min(0, easedM)) {
        closed.push(at);
      }
    }
  }
  for (const node of closed) {
    price[node] = Infinity;
    why[node] = NO_GROUND;
  }
}

/** Steps to the nodes round one, with their distances in cells. */
function discOf(reach: number): [di: number, dj: number, away: number][] {
  const disc: [number, number, number][] = [];
  for (let dj = -reach; dj <= reach; dj++) {
    for (let di = -reach; di <= reach; di++) disc.push([di, dj, Math.hypot(di, dj)]);
  }
  return disc.filter(([, , away]) => away <= reach);
}

function edgeOfHole(why: Uint8Array, node: number, columns: number): boolean {
  return (
    why[node - 1] !== NO_GROUND ||
    why[node + 1] !== NO_GROUND ||
    why[node - columns] !== NO_GROUND ||
    why[node + columns] !== NO_GROUND
  );
}
