import { UndirectedGraph } from "graphology";
import { dijkstra } from "graphology-shortest-path";
import { describe, expect, it } from "vitest";
import { branchAndBound } from "../../workers/search/branch-and-bound.ts";
import { cutRay } from "../../workers/search/cut-ray.ts";
import {
  CLEARANCE,
  type Lattice,
  NO_GO,
  OPEN,
  OUTSIDE,
  PAD,
} from "../../workers/search/lattice.ts";
import { loopSpace } from "../../workers/search/loop-space.ts";
import { nestedRegions } from "../../workers/search/nested-regions.ts";
import { driven } from "../../workers/search/progress.ts";
import { stencilOf } from "../../workers/search/stencil.ts";
import { linkStructures } from "../../workers/search/walls.ts";
import { seeded } from "../helpers/search-terrain.ts";

/**
 * The search on a lattice against an optimum found another way: a general-purpose graph library
 * (graphology, MIT: plain undirected graphs with weighted Dijkstra) on the double cover of the lattice, from
 * every node in turn. A ring round the structure is a path from a node on one sheet to the same node on
 * the other. And against the minimum cut, by maximum flow on the dual graph (Reif 1983).
 */
const SIZE = 15;

/** A small lattice with seeded prices, closed patches, and a structure of 3 x 3 nodes in the middle. */
function smallLattice(seed: number, priceOf: (chance: () => number) => number): Lattice {
  const chance = seeded(seed);
  const columns = SIZE + 2 * PAD;
  const price = new Float32Array(columns * columns).fill(Infinity);
  const why = new Uint8Array(columns * columns).fill(OUTSIDE);
  const middle = PAD + (SIZE >> 1);
  for (let j = PAD; j < PAD + SIZE; j++) {
    for (let i = PAD; i < PAD + SIZE; i++) {
      const node = j * columns + i;
      const kept = Math.abs(i - middle) <= 1 && Math.abs(j - middle) <= 1;
      const shut = seed % 2 === 0 && chance() < 0.06;
      why[node] = kept ? CLEARANCE : shut ? NO_GO : OPEN;
      const value = priceOf(chance);
      if (why[node] === OPEN) price[node] = value;
    }
  }
  return { columns, rows: columns, cellM: 1, x0M: 0, y0M: 0, price, why };
}

const MIDDLE = PAD + (SIZE >> 1);
/** A point inside the structure, off every lattice line. */
const INSIDE = [MIDDLE + 0.1, MIDDLE + 0.2] as const;

/** All moves of a stencil with the nodes they touch on the way, written out anew. */
function movesOf(neighbours: 8 | 16): { di: number; dj: number; via: [number, number][] }[] {
  const moves = [];
  for (let di = -2; di <= 2; di++) {
    for (let dj = -2; dj <= 2; dj++) {
      const [p, q] = [Math.abs(di), Math.abs(dj)];
      const [si, sj] = [Math.sign(di), Math.sign(dj)];
      if (p + q === 1) moves.push({ di, dj, via: [] });
      if (p === 1 && q === 1)
        moves.push({ di, dj, via: [[di, 0] as [number, number], [0, dj] as [number, number]] });
      if (neighbours === 16 && p === 2 && q === 1) {
        moves.push({ di, dj, via: [[si, 0] as [number, number], [si, dj] as [number, number]] });
      }
      if (neighbours === 16 && p === 1 && q === 2) {
        moves.push({ di, dj, via: [[0, sj] as [number, number], [di, sj] as [number, number]] });
      }
    }
  }
  return moves;
}

/** Simpson's rule on node prices: ends 1, middle 4 (the mean of the two nodes beside a middle point). */
function movePrice(
  { price, columns }: Lattice,
  node: number,
  move: ReturnType<typeof movesOf>[number],
) {
  const end = price[node + move.dj * columns + move.di]!;
  const start = price[node]!;
  const length = Math.hypot(move.di, move.dj);
  if (move.via.length === 0) return ((start + end) / 2) * length;
  const [a, b] = move.via.map(([i, j]) => price[node + j * columns + i]!);
  if (length < 2) return ((2 * start + 2 * end + a! + b!) / 6) * length;
  return ((start + end + 2 * a! + 2 * b!) / 6) * length;
}

/** Whether a move crosses the ray east from the point inside, by plain geometry. */
function crossesEast(node: number, move: { di: number; dj: number }, columns: number): boolean {
  const i = node % columns;
  const j = (node - i) / columns;
  const [y1, y2] = [j - INSIDE[1], j + move.dj - INSIDE[1]];
  if (y1 > 0 === y2 > 0) return false;
  return i + (move.di * -y1) / (y2 - y1) > INSIDE[0];
}

function bruteForce(lattice: Lattice, neighbours: 8 | 16): number {
  const graph = new UndirectedGraph();
  const moves = movesOf(neighbours);
  const open = [...lattice.price.keys()].filter((node) => lattice.price[node]! < Infinity);
  for (const node of open) for (const sheet of [0, 1]) graph.addNode(`${node} ${sheet}`);
  for (const node of open) {
    for (const move of moves) {
      const to = node + move.dj * lattice.columns + move.di;
      const weight = movePrice(lattice, node, move);
      if (!(weight < Infinity) || to < node) continue;
      const flip = crossesEast(node, move, lattice.columns) ? 1 : 0;
      for (const sheet of [0, 1])
        graph.mergeEdge(`${node} ${sheet}`, `${to} ${sheet ^ flip}`, { weight });
    }
  }
  let best = Infinity;
  for (const node of open) {
    const path = dijkstra.bidirectional(graph, `${node} 0`, `${node} 1`, "weight");
    if (!path) continue;
    let price = 0;
    for (let k = 0; k + 1 < path.length; k++) {
      price += graph.getEdgeAttribute(graph.edge(path[k]!, path[k + 1]!), "weight");
    }
    best = Math.min(best, price);
  }
  return best;
}

/** Two structures of one node each, 7 nodes apart, and a point in each. */
const PAIR = [
  [MIDDLE - 3.9, MIDDLE + 0.2],
  [MIDDLE + 3.1, MIDDLE + 0.2],
] as const;

function pairLattice(seed: number): Lattice {
  const lattice = smallLattice(2 * seed + 1, (chance) => 0.3 + 2 * chance());
  const chance = seeded(seed);
  for (let node = 0; node < lattice.price.length; node++) {
    if (lattice.why[node] === OUTSIDE) continue;
    lattice.why[node] = OPEN;
    lattice.price[node] = 0.3 + 2 * chance();
  }
  for (const [x, y] of PAIR) {
    for (const i of [Math.floor(x), Math.ceil(x)]) {
      for (const j of [Math.floor(y), Math.ceil(y)]) {
        lattice.why[j * lattice.columns + i] = CLEARANCE;
        lattice.price[j * lattice.columns + i] = Infinity;
      }
    }
  }
  return lattice;
}

/** The cheapest closed walk with both points inside: sheets count crossings of the rays north from either. */
function bruteForcePair(lattice: Lattice): number {
  const { columns, price } = lattice;
  const graph = new UndirectedGraph();
  const open = [...price.keys()].filter((node) => price[node]! < Infinity);
  for (const node of open) for (const sheet of [0, 1, 2, 3]) graph.addNode(`${node} ${sheet}`);
  for (const node of open) {
    for (const move of movesOf(16)) {
      const to = node + move.dj * columns + move.di;
      const weight = movePrice(lattice, node, move);
      if (!(weight < Infinity) || to < node) continue;
      const [i, j] = [node % columns, Math.floor(node / columns)];
      const flip = PAIR.reduce((bits, [x, y], k) => {
        const [x1, x2] = [i - x, i + move.di - x];
        if (x1 > 0 === x2 > 0) return bits;
        const north = j + (move.dj * -x1) / (x2 - x1) > y;
        return north ? bits ^ (1 << k) : bits;
      }, 0);
      for (const sheet of [0, 1, 2, 3]) {
        graph.mergeEdge(`${node} ${sheet}`, `${to} ${sheet ^ flip}`, { weight });
      }
    }
  }
  let best = Infinity;
  for (const node of open) {
    const path = dijkstra.bidirectional(graph, `${node} 0`, `${node} 3`, "weight");
    if (!path) continue;
    let sum = 0;
    for (let k = 0; k + 1 < path.length; k++) {
      sum += graph.getEdgeAttribute(graph.edge(path[k]!, path[k + 1]!), "weight");
    }
    best = Math.min(best, sum);
  }
  return best;
}

function searched(lattice: Lattice, neighbours: 4 | 8 | 16, by: typeof branchAndBound) {
  const stencil = stencilOf(neighbours, lattice.columns);
  const ray = cutRay(lattice, INSIDE[0], INSIDE[1], stencil.reach);
  const space = loopSpace(lattice.price, lattice.columns, ray, stencil);
  const steps = by(space, { price: 1e6, runs: 1e6, outOfTime: () => false }, 0);
  let step = steps.next();
  while (!step.done) step = steps.next();
  return step.value;
}

describe("the cheapest ring of a lattice", () => {
  const seeds = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
  it.each(seeds)("equals brute force over all starts (8 and 16 neighbours), lattice %i", (seed) => {
    const lattice = smallLattice(seed, (chance) => 0.2 + 3 * chance() ** 2);
    for (const neighbours of [8, 16] as const) {
      const exact = bruteForce(lattice, neighbours);
      const found = searched(lattice, neighbours, branchAndBound);
      expect(found.rings[0]!.price).toBeCloseTo(exact, 9);
      expect(found.lowerBound).toBeCloseTo(exact, 9);
      const halved = searched(lattice, neighbours, nestedRegions).rings[0]!.price;
      expect(halved).toBeGreaterThan(exact - 1e-9);
      expect(halved).toBeLessThan(exact * 1.01);
    }
  });

  it.each([1, 2, 3, 4])(
    "round two structures lies 0 to 3 parts in a hundred above brute force on four sheets, lattice %i",
    (seed) => {
      const lattice = pairLattice(seed);
      const exact = bruteForcePair(lattice);
      expect(driven(linkStructures(lattice, PAIR))).toBe(true);
      const stencil = stencilOf(16, lattice.columns);
      const ray = cutRay(lattice, PAIR[0][0], PAIR[0][1], stencil.reach);
      const space = loopSpace(lattice.price, lattice.columns, ray, stencil);
      const steps = branchAndBound(space, { price: 1e6, runs: 1e6, outOfTime: () => false }, 0);
      let step = steps.next();
      while (!step.done) step = steps.next();
      const found = step.value.rings[0]!.price;
      expect(found).toBeGreaterThan(exact - 1e-6);
      expect(found).toBeLessThan(exact * 1.03);
    },
  );

  const cuts = Array.from({ length: 25 }, (_, k) => k + 10);
  it.each(cuts)("equals the minimum cut on the dual graph, lattice %i", (seed) => {
    const lattice = smallLattice(seed, (chance) => 2 * (1 + Math.floor(30 * chance())));
    const found = searched(lattice, 4, branchAndBound);
    expect(found.rings[0]!.price).toBe(minimumCut(lattice));
  });
});

/**
 * Minimum cut between the structure and the border. Vertices are the squares between nodes; two squares with
 * a lattice edge between them are joined with that edge's price as capacity, without limit where the edge is
 * closed. Maximum flow by shortest augmenting paths (Edmonds and Karp 1972).
 */
function minimumCut({ columns, price }: Lattice): number {
  const squares = (columns - 1) ** 2;
  const flow = new Map<number, Map<number, number>>();
  const join = (a: number, b: number, capacity: number) => {
    for (const [p, q] of [
      [a, b],
      [b, a],
    ] as const) {
      const from = flow.get(p) ?? flow.set(p, new Map()).get(p)!;
      from.set(q, (from.get(q) ?? 0) + capacity);
    }
  };
  const LIMITLESS = 1e9;
  const square = (i: number, j: number) => j * (columns - 1) + i;
  for (let j = 0; j < columns - 1; j++) {
    for (let i = 0; i < columns - 1; i++) {
      const node = j * columns + i;
      const north = (price[node]! + price[node + columns]!) / 2;
      const east = (price[node]! + price[node + 1]!) / 2;
      if (i > 0) join(square(i - 1, j), square(i, j), Math.min(LIMITLESS, north));
      if (j > 0) join(square(i, j - 1), square(i, j), Math.min(LIMITLESS, east));
    }
  }
  const source = square(MIDDLE, MIDDLE);
  const sink = squares;
  for (let k = 0; k < columns - 1; k++) {
    for (const border of [
      square(k, 0),
      square(k, columns - 2),
      square(0, k),
      square(columns - 2, k),
    ]) {
      join(border, sink, LIMITLESS);
    }
  }
  let total = 0;
  for (;;) {
    const came = new Map<number, number>([[source, source]]);
    const queue = [source];
    for (const at of queue) {
      if (came.has(sink)) break;
      for (const [to, left] of flow.get(at) ?? []) {
        if (left <= 0 || came.has(to)) continue;
        came.set(to, at);
        queue.push(to);
      }
    }
    if (!came.has(sink)) return total;
    let least = Infinity;
    for (let at = sink; at !== source; at = came.get(at)!) {
      least = Math.min(least, flow.get(came.get(at)!)!.get(at)!);
    }
    for (let at = sink; at !== source; at = came.get(at)!) {
      const from = came.get(at)!;
      flow.get(from)!.set(at, flow.get(from)!.get(at)! - least);
      flow.get(at)!.set(from, flow.get(at)!.get(from)! + least);
    }
    total += least;
  }
}
