import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { filledLevels } from "../../workers/culverts/filled-levels.ts";
import { sagsOf } from "../../workers/culverts/sags.ts";
import { openTerrain } from "../../workers/raster/terrain.ts";
import type { WaterGrid } from "../../workers/water/water-grid.ts";
import { neighbourSteps } from "../../workers/water/water-grid.ts";
import { readWaterGround } from "../../workers/water/water-ground.ts";
import { seededRandom } from "../helpers/seeded-random.ts";
import { gridFrom } from "../helpers/water-grids.ts";

/** Sags of the demo ground; cells without data and the edge let water out. */
describe("sags of the demo ground, against scikit-image", () => {
  it("are those of morphological reconstruction by erosion", async () => {
    const path = fileURLToPath(new URL("../../sample-terrain/demo.tif", import.meta.url));
    const blob = new Blob([readFileSync(path)]);
    const terrain = await openTerrain([{ name: "demo.tif", blob }], null);
    const { near } = await readWaterGround(terrain, []);
    const levels = filledLevels(near);
    const depths = Array.from(levels, (level, cell) => level - near.heightM[cell]!);
    const inSag = depths.filter((depth) => depth > 0);
    // skimage.morphology.reconstruction 0.26.0 (method="erosion", 3 x 3 footprint), then measure.label, connectivity 2.
    expect(inSag.length).toBe(174_821);
    expect(inSag.reduce((sum, depth) => sum + depth, 0)).toBeCloseTo(11_466.1259765625, 6);
    expect(sagsOf(near, levels, 0).sags).toHaveLength(7272);
    const deep = sagsOf(near, levels, 0.3).sags.map(({ cells, bottomM, spillM }) => [
      spillM - bottomM,
      cells.length,
    ]);
    expect(deep.sort((a, b) => b[0]! - a[0]!)).toEqual([
      [1.099609375, 20_160],
      [0.8037109375, 3061],
      [0.5791015625, 8223],
    ]);
  });
});

/** Filled by lowering a flood until nothing changes: Planchon and Darboux 2001, Catena 46, in its plain form. */
function loweredFlood({ heightM, width }: WaterGrid): Float32Array {
  const level = heightM.map((height) => (Number.isFinite(height) ? Infinity : -Infinity));
  const steps = neighbourSteps(width);
  for (let isChanged = true; isChanged; ) {
    isChanged = false;
    for (const [cell, height] of heightM.entries()) {
      if (!Number.isFinite(height)) continue;
      const least = Math.min(...Array.from(steps, (step) => level[cell + step]!));
      const next = Math.max(height, least);
      if (next >= level[cell]!) continue;
      level[cell] = next;
      isChanged = true;
    }
  }
  return level;
}

describe("the level at which water leaves a cell, against another method", () => {
  it("is the same on random ground with holes", () => {
    for (let seed = 1; seed <= 30; seed++) {
      const random = seededRandom(seed);
      const heightM = Float32Array.from({ length: 17 * 13 }, () =>
        random() < 0.04 ? Number.NaN : Math.ceil(random() * 9),
      );
      const grid = gridFrom({ columns: 17, rows: 13, heightM });
      const expected = loweredFlood(grid);
      const levels = filledLevels(grid);
      for (const [cell, height] of grid.heightM.entries()) {
        if (Number.isFinite(height)) expect(levels[cell], `seed ${seed}`).toBe(expected[cell]);
        else expect(levels[cell]).toBeNaN();
      }
    }
  });
});
