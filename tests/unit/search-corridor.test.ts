import { describe, expect, it } from "vitest";
import { branchAndBound } from "../../workers/search/branch-and-bound.ts";
import { closeBeyond } from "../../workers/search/corridor.ts";
import { cutRay } from "../../workers/search/cut-ray.ts";
import { CLEARANCE, type Lattice, OPEN, OUTSIDE, PAD } from "../../workers/search/lattice.ts";
import { loopSpace } from "../../workers/search/loop-space.ts";
import { driven } from "../../workers/search/progress.ts";
import { stencilOf } from "../../workers/search/stencil.ts";
import { seeded } from "../helpers/search-terrain.ts";

const SIDE = 46;
const NEVER = { outOfTime: () => false, step: { share: 0, doing: "" } };

/** A structure of 6 by 6 nodes in the middle of rough ground. */
function roughLattice(seed: number): Lattice {
  const chance = seeded(seed);
  const price = new Float32Array(SIDE * SIDE).fill(Infinity);
  const why = new Uint8Array(SIDE * SIDE).fill(OUTSIDE);
  for (let node = 0; node < price.length; node++) {
    const [i, j] = [node % SIDE, Math.floor(node / SIDE)];
    if (Math.min(i, j) < PAD || Math.max(i, j) >= SIDE - PAD) continue;
    const inside = Math.max(Math.abs(i - 22.5), Math.abs(j - 22.5)) < 3;
    why[node] = inside ? CLEARANCE : OPEN;
    if (!inside) price[node] = 0.3 + chance();
  }
  return { columns: SIDE, rows: SIDE, cellM: 1, x0M: 0, y0M: 0, price, why };
}

function spaceOf(lattice: Lattice) {
  const stencil = stencilOf(16, lattice.columns);
  const ray = cutRay(lattice, 22.4, 22.4, stencil.reach);
  return loopSpace(lattice.price, lattice.columns, ray, stencil);
}

describe("nodes that no ring up to a price can pass", () => {
  it.each([1, 2, 3, 4])("are closed, and those of every such ring are not, lattice %i", (seed) => {
    const lattice = roughLattice(seed);
    const limit = { price: 1e6, runs: 1e6, outOfTime: () => false };
    const { rings } = driven(branchAndBound(spaceOf(lattice), limit, 0));
    const best = rings[0]!.price;
    const space = spaceOf(lattice);
    driven(closeBeyond(space, 1.1 * best, NEVER));
    const open = () => space.shut.filter((shut) => shut === 0).length;
    const wide = open();
    for (const { price, loop } of rings) {
      if (price <= 1.1 * best) for (const node of loop) expect(space.shut[node]).toBe(0);
    }
    driven(closeBeyond(space, best, NEVER));
    expect(open()).toBeLessThan(wide);
    expect(open()).toBeLessThan(0.4 * SIDE ** 2);
    for (const node of rings[0]!.loop) expect(space.shut[node]).toBe(0);
    driven(closeBeyond(space, 0.98 * best, NEVER));
    expect(driven(branchAndBound(space, { ...limit, price: 0.98 * best }, 0)).rings).toEqual([]);
  });
});
