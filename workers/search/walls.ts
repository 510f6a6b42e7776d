import { makeHeap } from "./heap.ts";
import { CLEARANCE, type Lattice, NO_GO, NO_GROUND, OUTSIDE, WALL, WATER } from "./lattice.ts";
import type { Point, SearchStep } from "./types.ts";

/**
 * Closes the cheapest links between the clear zones of structures that one ring is to enclose. The best
 * ring never needs to cross such a link: the part of it beyond the link could be replaced by the link.
 * @param inside a point in each structure
 * @returns false when some of them cannot be linked (a ring round all of them cannot exist)
 */
export function* linkStructures(
  lattice: Lattice,
  inside: readonly Point[],
): Generator<SearchStep, boolean> {
  const zoneAt = new Int32Array(lattice.price.length).fill(NO_ZONE);
  const zones: number[][] = [];
  for (const point of inside) {
    const node = nodeAt(lattice, point);
    if (zoneAt[node] !== NO_ZONE) continue;
    const zone = zoneOf(lattice, node, CLEARANCE);
    for (const each of zone) zoneAt[each] = zones.length;
    zones.push(zone);
    yield LINKING;
  }
  if (zones.length === 1) return true;
  const link = linkSearch(lattice, BARRED_FOR_STRUCTURES);
  const join = (nodes: readonly number[]) => {
    for (const node of nodes) zoneAt[node] = JOINED;
    link.startFrom(nodes);
  };
  join(zones[0]!);
  for (let joined = 1; joined < zones.length; joined++) {
    const path = yield* link.next((node) => zoneAt[node]! >= 0);
    if (!path) return false;
    const zone = zones[zoneAt[path[0]!]!]!;
    closeNodes(lattice, path);
    join(zone);
    join(path);
  }
  return true;
}

const NO_ZONE = -1;
const JOINED = -2;
const BARRED_FOR_STRUCTURES: ReadonlySet<number> = new Set([OUTSIDE, WATER]);
const BARRED_FOR_WATERS: ReadonlySet<number> = new Set([CLEARANCE]);
const LINKING: SearchStep = { share: 0, doing: "Joining what one ring goes around" };
/** Nodes looked at between two steps. */
const STRETCH = 20_000;

/** Closes the cheapest link from each water inside the lattice to its border, so that no ring can enclose it. */
export function* linkWaters(lattice: Lattice): Generator<SearchStep, void> {
  const { why } = lattice;
  const seen = new Uint8Array(why.length);
  for (let node = 0; node < why.length; node++) {
    if (why[node] !== WATER || seen[node]) continue;
    const zone = zoneOf(lattice, node, WATER);
    for (const each of zone) seen[each] = 1;
    const link = linkSearch(lattice, BARRED_FOR_WATERS);
    link.startFrom(zone);
    const path = yield* link.next((at) => why[at] === OUTSIDE);
    if (path) closeNodes(lattice, path.slice(1));
    yield LINKING;
  }
}

export function nodeAt(lattice: Lattice, [xM, yM]: Point): number {
  const i = Math.round((xM - lattice.x0M) / lattice.cellM);
  const j = Math.round((yM - lattice.y0M) / lattice.cellM);
  return j * lattice.columns + i;
}

function closeNodes(lattice: Lattice, path: readonly number[]): void {
  for (const node of path) {
    if (!(lattice.price[node]! < Infinity)) continue;
    lattice.price[node] = Infinity;
    lattice.why[node] = WALL;
  }
}

/** Nodes of one kind joined to a node, side by side or corner to corner. */
function zoneOf(lattice: Lattice, from: number, kind: number): number[] {
  const { columns, why } = lattice;
  if (why[from] !== kind) return [from];
  const seen = new Set([from]);
  const zone = [from];
  const steps = [1, -1, columns, -columns, columns + 1, columns - 1, -columns + 1, -columns - 1];
  for (let k = 0; k < zone.length; k++) {
    for (const step of steps) {
      const node = zone[k]! + step;
      if (why[node] !== kind || seen.has(node)) continue;
      seen.add(node);
      zone.push(node);
    }
  }
  return zone;
}

/** The search for the cheapest chains of side-by-side nodes from a growing set of nodes. */
interface LinkSearch {
  /** Adds nodes that chains start from. */
  startFrom(nodes: readonly number[]): void;
  /** The cheapest chain to a wanted node, that node first; null when there is none. */
  next(wanted: (node: number) => boolean): Generator<SearchStep, number[] | null>;
}

function linkSearch(lattice: Lattice, barred: ReadonlySet<number>): LinkSearch {
  const { columns, price, why } = lattice;
  const best = new Float64Array(price.length).fill(Infinity);
  const came = new Int32Array(price.length).fill(-1);
  const isStart = new Uint8Array(price.length);
  const done = new Uint8Array(price.length);
  const heap = makeHeap();
  const spread = (node: number, wanted: (node: number) => boolean) => {
    for (const step of [1, -1, columns, -columns]) {
      const next = node + step;
      const kind = why[next];
      if (kind === undefined || isStart[next]) continue;
      const target = wanted(next);
      if (!target && (barred.has(kind) || kind === CLEARANCE)) continue;
      const free =
        target || kind === NO_GO || kind === NO_GROUND || kind === WALL || kind === WATER;
      const reached = best[node]! + (free ? 0 : price[next]!);
      if (!(reached < best[next]!)) continue;
      best[next] = reached;
      came[next] = node;
      done[next] = 0;
      heap.push(next, reached);
    }
  };
  return {
    startFrom(nodes) {
      for (const node of nodes) {
        best[node] = 0;
        came[node] = -1;
        done[node] = 0;
        isStart[node] = 1;
        heap.push(node, 0);
      }
    },
    *next(wanted) {
      let looked = 0;
      for (let node = heap.pop(); node >= 0; node = heap.pop()) {
        if (done[node]) continue;
        done[node] = 1;
        if (wanted(node)) return wayBack(came, node);
        spread(node, wanted);
        if (++looked % STRETCH === 0) yield LINKING;
      }
      return null;
    },
  };
}

/** The nodes by which one was reached, itself first. */
export function wayBack(came: Int32Array, end: number): number[] {
  const path: number[] = [];
  for (let node = end; node >= 0; node = came[node]!) path.push(node);
  return path;
}
