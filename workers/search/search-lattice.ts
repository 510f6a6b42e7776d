import { anyOddLoop } from "./any-odd-loop.ts";
import { branchAndBound, type LatticeRings } from "./branch-and-bound.ts";
import { open } from "./corridor.ts";
import { cutRay } from "./cut-ray.ts";
import { firstLimit, rectangleLoop } from "./first-limit.ts";
import type { Lattice } from "./lattice.ts";
import { loopSpace, spaceBytes } from "./loop-space.ts";
import { nestedRegions } from "./nested-regions.ts";
import { stencilOf } from "./stencil.ts";
import type { Point, SearchStep } from "./types.ts";

export interface LatticeOptions {
  readonly neighbours: 8 | 16 | 32;
  /** Branch and bound over the starts (small windows), or divide and conquer (large ones). */
  readonly by: "branch" | "divide";
  /** Price of a ring already known, m3; null when there is none. */
  readonly knownPrice: number | null;
  readonly runs: number;
  readonly tolerance: number;
  /** Not looked at before a first ring is found, where none is known. */
  readonly outOfTime: () => boolean;
  /** The end even where no ring has been found: the cheapest open rectangle is given then, where there is one. */
  readonly givenUp: () => boolean;
}

export interface LatticeAnswer extends LatticeRings {
  readonly runs: number;
  readonly settled: number;
  readonly bytes: number;
}

/** A ring of the lattice is not looked for when it saves less than this share: lines gain more afterwards. */
const TOLERANCE = 5e-3;

export const USUAL_OPTIONS: LatticeOptions = {
  neighbours: 16,
  by: "branch",
  knownPrice: null,
  runs: 250,
  tolerance: TOLERANCE,
  outOfTime: () => false,
  givenUp: () => false,
};

const RAISE = 8;
const MOST_PRICE = 1e12;

/** The cheapest rings of a lattice round a point inside the structure. */
export function* searchLattice(
  lattice: Lattice,
  inside: Point,
  options: LatticeOptions,
): Generator<SearchStep, LatticeAnswer> {
  const stencil = stencilOf(options.neighbours, lattice.columns);
  const ray = cutRay(lattice, inside[0], inside[1], stencil.reach);
  const space = loopSpace(lattice.price, lattice.columns, ray, stencil);
  const search = options.by === "branch" ? branchAndBound : nestedRegions;
  const known = options.knownPrice !== null;
  const guess =
    options.knownPrice === null
      ? firstLimit(lattice)
      : { price: options.knownPrice, rectangle: null };
  const sure = known || guess.rectangle !== null;
  let { price } = guess;
  const outOfTime = (found: boolean) => (known || found ? options.outOfTime() : options.givenUp());
  let answer = yield* search(space, { runs: options.runs, price, outOfTime }, options.tolerance);
  const mayRaise = !sure && answer.rings.length === 0 && anyOddLoop(space);
  while (mayRaise && answer.rings.length === 0 && price < MOST_PRICE && !options.givenUp()) {
    price *= RAISE;
    open(space);
    answer = yield* search(space, { runs: options.runs, price, outOfTime }, options.tolerance);
  }
  if (answer.cutShort && answer.rings.length === 0 && !known && guess.rectangle) {
    const loop = rectangleLoop(lattice, guess.rectangle);
    answer = { ...answer, rings: [{ price: guess.price, loop }] };
  }
  const bytes = spaceBytes(space) + lattice.why.byteLength;
  return { ...answer, runs: space.runs, settled: space.settled, bytes };
}
