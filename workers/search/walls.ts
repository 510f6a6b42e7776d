import { makeHeap } from "./heap.ts";
import { KEEP_OUT, type Lattice, NO_GO, NO_GROUND, OUTSIDE, WALL, WATER } from "./lattice.ts";
import type { Point } from "./types.ts";

/**
 * Closes the cheapest links between the keep-out zones of structures that one ring is to enclose. The best
 * ring never needs to cross such a link: the part of it beyond the link could be replaced by the link.
 * @param inside a point in each structure
 * @returns false when some of them cannot be linked (a ring round all of them cannot exist)
 */
export function linkStructures(lattice: Lattice, inside: readonly Point[]): boolean {
  const nodes = inside.map((point) => nodeAt(lattice, point));
  const zones = nodes.map((node) => new Set(zoneOf(lattice, node, KEEP_OUT)));
  const joined = new Set(zones[0]);
  const waiting = new Set(zones.slice(1));
  for (;;) {
    for (const zone of waiting) {
      if (![...zone].some((node) => joined.has(node))) continue;
      for (const node of zone) joined.add(node);
      waiting.delete(zone);
    }
    if (waiting.size === 0) return true;
    const wanted = (node: number) => [...waiting].some((zone) => zone.has(node));
    const path = cheapestLink(lattice, joined, wanted, new Set([OUTSIDE, WATER]));
    if (!path) return false;
    const end = path[0]!;
    for (const zone of waiting) {
      if (!zone.has(end)) continue;
      for (const node of zone) joined.add(node);
      waiting.delete(zone);
    }
    closeNodes(lattice, path);
    for (const node of path) joined.add(node);
  }
}

/** Closes the cheapest link from each water inside the lattice to its border, so that no ring can enclose it. */
export function linkWaters(lattice: Lattice): void {
  const seen = new Set<number>();
  const { why } = lattice;
  for (let node = 0; node < why.length; node++) {
    if (why[node] !== WATER || seen.has(node)) continue;
    const zone = new Set(zoneOf(lattice, node, WATER));
    for (const each of zone) seen.add(each);
    const path = cheapestLink(lattice, zone, (at) => why[at] === OUTSIDE, new Set([KEEP_OUT]));
    if (path) closeNodes(lattice, path.slice(1));
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

/** The cheapest chain of side-by-side nodes from a zone to a wanted node, that node first; null when there is none. */
function cheapestLink(
  lattice: Lattice,
  from: ReadonlySet<number>,
  wanted: (node: number) => boolean,
  barred: ReadonlySet<number>,
): number[] | null {
  const { columns, price, why } = lattice;
  const best = new Float64Array(price.length).fill(Infinity);
  const came = new Int32Array(price.length).fill(-1);
  const heap = makeHeap();
  for (const node of from) {
    best[node] = 0;
    heap.push(node, 0);
  }
  const done = new Uint8Array(price.length);
  for (let node = heap.pop(); node >= 0; node = heap.pop()) {
    if (done[node]) continue;
    done[node] = 1;
    if (wanted(node)) return wayBack(came, node);
    for (const step of [1, -1, columns, -columns]) {
      const next = node + step;
      const kind = why[next];
      if (kind === undefined || done[next]) continue;
      const target = wanted(next);
      if (!target && (barred.has(kind) || (kind === KEEP_OUT && !from.has(next)))) continue;
      const free =
        target || kind === NO_GO || kind === NO_GROUND || kind === WALL || kind === WATER;
      const reached = best[node]! + (free ? 0 : price[next]!);
      if (!(reached < best[next]!)) continue;
      best[next] = reached;
      came[next] = node;
      heap.push(next, reached);
    }
  }
  return null;
}

function wayBack(came: Int32Array, end: number): number[] {
  const path: number[] = [];
  for (let node = end; node >= 0; node = came[node]!) path.push(node);
  return path;
}
