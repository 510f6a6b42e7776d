import type { Lattice } from "./lattice.ts";
import { halfBaseAt } from "./price-table.ts";
import type { SearchTerms } from "./search-terms.ts";
import { signedDistance } from "./shape.ts";

const STEP_CELLS = 0.05;
const MOST_STEPS = 60;

/** Corners of a lattice ring, metres, each moved straight away from an obstacle it is too close to. */
export function pushOut(terms: SearchTerms, lattice: Lattice, loop: Int32Array): Float64Array {
  const { columns, cellM, x0M, y0M } = lattice;
  const points = new Float64Array(2 * loop.length);
  for (let k = 0; k < loop.length; k++) {
    const node = loop[k]!;
    const i = node % columns;
    points[2 * k] = x0M + i * cellM;
    points[2 * k + 1] = y0M + ((node - i) / columns) * cellM;
    pushPoint(terms, points, k, STEP_CELLS * cellM);
  }
  return points;
}

function pushPoint(terms: SearchTerms, points: Float64Array, k: number, stepM: number): void {
  const { obstacles, crest, ground, table } = terms;
  for (let step = 0; step < MOST_STEPS; step++) {
    const x = points[2 * k]!;
    const y = points[2 * k + 1]!;
    const heightM = crest.at(x, y) - ground.heightAt(x, y);
    const halfM = Number.isNaN(heightM) ? 0 : halfBaseAt(table, heightM);
    let moved = false;
    for (const { shape, clearM } of obstacles) {
      const distance = signedDistance(shape, x, y);
      if (distance >= clearM + halfM) continue;
      const east = signedDistance(shape, x + 0.01, y) - signedDistance(shape, x - 0.01, y);
      const north = signedDistance(shape, x, y + 0.01) - signedDistance(shape, x, y - 0.01);
      const steep = Math.hypot(east, north);
      if (steep === 0) continue;
      points[2 * k] = points[2 * k]! + (stepM * east) / steep;
      points[2 * k + 1] = points[2 * k + 1]! + (stepM * north) / steep;
      moved = true;
    }
    if (!moved) return;
  }
}
