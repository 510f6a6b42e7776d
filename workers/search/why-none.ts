import { type Refusal, refusal } from "../../shared/failure.ts";
import { makeHeap } from "./heap.ts";
import {
  CLEARANCE,
  type Lattice,
  NO_GO,
  NO_GROUND,
  OPEN,
  OUTSIDE,
  WALL,
  WATER,
} from "./lattice.ts";
import type { Point } from "./types.ts";
import { nodeAt, wayBack } from "./walls.ts";

/**
 * Why no ring round a structure fits a lattice: a chain of closed nodes leads from the structure out of the
 * window. Names what that chain is made of, with as few kinds as can be, and where it leads.
 */
export function whyNone(lattice: Lattice, inside: Point): Refusal {
  const chain = chainOut(lattice, nodeAt(lattice, inside));
  if (!chain) return refusal("site/no-ring", { buildings: 1 });
  const kinds = new Set(chain.map((node) => lattice.why[node]!));
  const toward = { towardDeg: bearingTo(lattice, inside, chain[0]!) };
  if (kinds.has(NO_GROUND) && nothingOpen(lattice)) return refusal("site/no-ground");
  if (kinds.has(NO_GROUND)) return refusal("site/edge-of-data", toward);
  if (kinds.has(WATER)) return refusal("site/water-in-the-way", toward);
  if (kinds.has(NO_GO)) return refusal("site/all-no-go", toward);
  return refusal("site/window-too-small", toward);
}

function nothingOpen(lattice: Lattice): boolean {
  return !lattice.why.includes(OPEN);
}

/** Closed nodes from the edge of the window back to the structure; null when no such chain exists. */
function chainOut(lattice: Lattice, from: number): number[] | null {
  const { columns, why } = lattice;
  const best = new Float64Array(why.length).fill(Infinity);
  const came = new Int32Array(why.length).fill(-1);
  const heap = makeHeap();
  best[from] = 0;
  heap.push(from, 0);
  const done = new Uint8Array(why.length);
  for (let node = heap.pop(); node >= 0; node = heap.pop()) {
    if (done[node]) continue;
    done[node] = 1;
    if (why[node] === OUTSIDE) return wayBack(came, came[node]!);
    for (const step of [
      1,
      -1,
      columns,
      -columns,
      columns + 1,
      columns - 1,
      1 - columns,
      -1 - columns,
    ]) {
      const next = node + step;
      const kind = why[next];
      if (kind === undefined || kind === OPEN || done[next]) continue;
      const own = kind === CLEARANCE || kind === WALL || kind === OUTSIDE;
      const reached = best[node]! + (own ? 0.001 : 1);
      if (!(reached < best[next]!)) continue;
      best[next] = reached;
      came[next] = node;
      heap.push(next, reached);
    }
  }
  return null;
}

/** Degrees clockwise from north. */
function bearingTo(lattice: Lattice, [xM, yM]: Point, node: number): number {
  const i = node % lattice.columns;
  const j = (node - i) / lattice.columns;
  const x = lattice.x0M + i * lattice.cellM - xM;
  const y = lattice.y0M + j * lattice.cellM - yM;
  return (Math.atan2(x, y) * 180) / Math.PI;
}
