import { Refusal } from "../../shared/failure.ts";
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
  if (!chain) {
    return new Refusal(
      "site/no-ring",
      "No closed line around the building was found in the search window, although there is room for one.",
      "Make the search window larger, or draw the ring and let it be improved.",
    );
  }
  const kinds = new Set(chain.map((node) => lattice.why[node]!));
  const toward = compass(lattice, inside, chain[0]!);
  if (kinds.has(NO_GROUND) && nothingOpen(lattice)) {
    return new Refusal(
      "site/no-ground",
      "There is no elevation data anywhere in the search window where a line could run: the building is in a gap of the elevation data or beyond its edge.",
      "Open elevation data that covers the building and its surroundings, or check the place of the footprint.",
    );
  }
  if (kinds.has(NO_GROUND)) {
    return new Refusal(
      "site/edge-of-data",
      `No ring can close: to the ${toward} of the building the elevation data is missing, from the building's surroundings to the edge of the search window.`,
      "Open elevation data that reaches further to that side, or one without the hole, or draw the ring by hand from levels taken on site.",
    );
  }
  if (kinds.has(WATER)) {
    return new Refusal(
      "site/water-in-the-way",
      `No ring can close: to the ${toward} permanent water comes closer to the building than the setback and half the base allow.`,
      "Reduce the setback if the site allows it, lower the top of levee, or protect the building itself.",
    );
  }
  if (kinds.has(NO_GO)) {
    return new Refusal(
      "site/all-no-go",
      `No ring can close: to the ${toward} no-go areas reach from the building's surroundings to the edge of the search window.`,
      "Take one of the no-go areas away or make it smaller, or make the search window larger so that the line can go around it.",
    );
  }
  return new Refusal(
    "site/window-too-small",
    `No ring fits: to the ${toward} the setback and half the base reach out of the search window.`,
    "Make the search window larger, or reduce the setback.",
  );
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

const DIRECTIONS = [
  "east",
  "north-east",
  "north",
  "north-west",
  "west",
  "south-west",
  "south",
  "south-east",
] as const;

function compass(lattice: Lattice, [xM, yM]: Point, node: number): string {
  const i = node % lattice.columns;
  const j = (node - i) / lattice.columns;
  const x = lattice.x0M + i * lattice.cellM - xM;
  const y = lattice.y0M + j * lattice.cellM - yM;
  const eighth = Math.round(Math.atan2(y, x) / (Math.PI / 4));
  return DIRECTIONS[(eighth + 8) % 8]!;
}
