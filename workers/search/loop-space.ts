import type { CutRay } from "./cut-ray.ts";
import { type Heap, makeHeap } from "./heap.ts";
import type { Stencil } from "./stencil.ts";

/**
 * Working arrays of the loop search on one lattice: one label a node, used by every run and left clean
 * by it. `tag` holds side of the ray (bits 0-1), parity (bit 2) and the edge the label came by (bits 3-7).
 */
export interface LoopSpace {
  readonly count: number;
  readonly columns: number;
  readonly price: Float32Array;
  readonly stencil: Stencil;
  /** Start nodes from the structure outward. */
  readonly starts: Int32Array;
  readonly tag: Uint8Array;
  readonly distance: Float64Array;
  /** Index among the starts that the label came from. */
  readonly root: Uint16Array;
  readonly next: Int32Array;
  readonly previous: Int32Array;
  readonly touched: Int32Array;
  readonly heads: Int32Array;
  /** Nodes of the bucket in hand, least distance first. */
  readonly inHand: Heap;
  /** Nested regions: a node belongs to ranks `value >>> 16` to `value & 0xffff`; null before the first split. */
  region: Uint32Array | null;
  /** 1 where no ring that costs `shutBeyond` or less passes. */
  readonly shut: Uint8Array;
  shutBeyond: number;
  /** Labels of odd parity, worked with beside `distance` where nodes are shut; null before that is done. */
  oddDistance: Float64Array | null;
  runs: number;
  settled: number;
}

export const BUCKETS = 16384;
/** Marks a node that waits in no bucket. */
export const NOT_WAITING = -2;
/** Marks a node of the bucket in hand. */
export const IN_HAND = -3;
/** Least and greatest rank of a region. */
export const LOWEST_RANK = 1;
export const HIGHEST_RANK = 0xfffe;

export function loopSpace(
  price: Float32Array,
  columns: number,
  ray: CutRay,
  stencil: Stencil,
): LoopSpace {
  const count = price.length;
  return {
    count,
    columns,
    price,
    stencil,
    starts: ray.starts,
    tag: ray.side,
    distance: new Float64Array(count).fill(Infinity),
    root: new Uint16Array(count),
    next: new Int32Array(count),
    previous: new Int32Array(count).fill(NOT_WAITING),
    touched: new Int32Array(count),
    heads: new Int32Array(BUCKETS),
    inHand: makeHeap(),
    region: null,
    shut: new Uint8Array(count),
    shutBeyond: Infinity,
    oddDistance: null,
    runs: 0,
    settled: 0,
  };
}

/** The region labels, made when first asked for: at first every node belongs to every rank. */
export function regionOf(space: LoopSpace): Uint32Array {
  space.region ??= new Uint32Array(space.count).fill((LOWEST_RANK << 16) | HIGHEST_RANK);
  return space.region;
}

/** Bytes of the arrays held, per lattice as a whole. */
export function spaceBytes(space: LoopSpace): number {
  const arrays = [
    space.price,
    space.tag,
    space.distance,
    space.root,
    space.next,
    space.previous,
    space.touched,
    space.heads,
    space.region,
    space.shut,
    space.oddDistance,
  ];
  return arrays.reduce((sum, each) => sum + (each?.byteLength ?? 0), 0);
}
