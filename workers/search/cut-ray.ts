import type { Lattice } from "./lattice.ts";

/**
 * A ray from inside the structure to the border of the lattice, running between two columns (or rows).
 * Every ring round the structure crosses it an odd number of times.
 */
export interface CutRay {
  /** 1 within three columns on one side of the ray, 2 on the other, else 0: edge (u, v) crosses it iff `(side[u] | side[v]) === 3`. */
  readonly side: Uint8Array;
  /** Open nodes from which an edge may cross, from the structure outward: any ring passes through one of them. */
  readonly starts: Int32Array;
}

const REACH = 3;
const DIRECTIONS = [0, 1, 2, 3] as const;

/**
 * The ray with the fewest open nodes of the four along the axes.
 * @param xM a point inside the structure, metres
 * @param reach columns that an edge may span
 */
export function cutRay(lattice: Lattice, xM: number, yM: number, reach: number): CutRay {
  const u = (xM - lattice.x0M) / lattice.cellM;
  const v = (yM - lattice.y0M) / lattice.cellM;
  const rays = DIRECTIONS.map((direction) => rayStarts(lattice, u, v, direction, reach));
  const best = rays.reduce((least, each) =>
    each.starts.length < least.starts.length ? each : least,
  );
  return { side: sides(lattice, best), starts: best.starts };
}

interface Ray {
  /** Node step along the ray and across it, from side 1 to side 2. */
  readonly along: number;
  readonly across: number;
  /** First node on side 1, and nodes along the ray. */
  readonly first: number;
  readonly length: number;
  readonly starts: Int32Array;
}

/** @param direction 0 east, 1 north, 2 west, 3 south */
function rayStarts(
  lattice: Lattice,
  u: number,
  v: number,
  direction: 0 | 1 | 2 | 3,
  reach: number,
): Ray {
  const { columns, rows, price } = lattice;
  const upright = direction === 1 || direction === 3;
  const forward = direction < 2;
  const across = upright ? 1 : columns;
  const along = (upright ? columns : 1) * (forward ? 1 : -1);
  const position = upright ? v : u;
  const size = upright ? rows : columns;
  const tip = Math.min(size - 1, Math.max(0, forward ? Math.ceil(position) : Math.floor(position)));
  const length = forward ? size - tip : tip + 1;
  const first = upright ? tip * columns + Math.floor(u) : Math.floor(v) * columns + tip;
  const starts: number[] = [];
  for (let k = 0; k < length; k++) {
    for (let r = 0; r < reach && r < REACH; r++) {
      const node = first + k * along - r * across;
      if (price[node]! < Infinity) starts.push(node);
    }
  }
  return { along, across, first, length, starts: Int32Array.from(starts) };
}

function sides(lattice: Lattice, ray: Ray): Uint8Array {
  const side = new Uint8Array(lattice.columns * lattice.rows);
  for (let k = 0; k < ray.length; k++) {
    const node = ray.first + k * ray.along;
    for (let r = 0; r < REACH; r++) {
      side[node - r * ray.across] = 1;
      side[node + (r + 1) * ray.across] = 2;
    }
  }
  return side;
}
