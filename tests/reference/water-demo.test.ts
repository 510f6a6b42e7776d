import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import { OLD_CHANNEL, SIZE_M } from "../../sample-terrain/layout.ts";
import { placedOnSite } from "../../sample-terrain/plans.ts";
import { siteGrid } from "../../sample-terrain/site.ts";
import type { Engine } from "../../shared/messages.ts";
import type { Plan } from "../../shared/plan.ts";
import { readPlanFile } from "../../shared/plan-file.ts";
import { LOW, WATER, type WetMask } from "../../shared/water-types.ts";
import { makeEngine } from "../../workers/engine.ts";
import { said } from "../helpers/said.ts";

const SITE = fileURLToPath(new URL("../../sample-terrain/", import.meta.url));
let engine: Engine;
let plan: Plan;
beforeAll(async () => {
  const raster = readFileSync(`${SITE}demo.tif`);
  engine = makeEngine();
  await engine.openTerrain({
    files: [{ name: "demo.tif", blob: new Blob([raster]) }],
    verticalUnit: null,
  });
  const read = readPlanFile(readFileSync(`${SITE}demo.geojson`, "utf8"));
  if (!read.ok) throw new Error(said(read.failure).message);
  plan = read.value.plan;
});

/** The river at the west edge, upstream, and a place in the old channel behind the farm. */
const RIVER = [20, 454] as const;
const CHANNEL = OLD_CHANNEL[3]!;

/** Level water of a height, from the river alone. */
function levelPlan(elevationM: number): Plan {
  return {
    ...plan,
    alignments: [],
    structures: [
      {
        id: "channel",
        name: "A spot in the old channel",
        floorM: null,
        outline: [
          [-0.2, -0.2],
          [0.2, -0.2],
          [0, 0.2],
        ].map(([east, north]) => placedOnSite([CHANNEL[0] + east!, CHANNEL[1] + north!])),
      },
    ],
    sources: [{ id: "river", name: "River", at: placedOnSite(RIVER) }],
    water: { ...plan.water, by: "elevation", elevationM, fallPerM: 0 },
  };
}

/**
 * Level, cells joined to the river, cells that are merely low, and depth summed over the joined ones: by
 * scipy.ndimage.label 1.17.1, 8-connected, on the computed grid; the pond without data lets water through.
 */
const LABELLED = [
  [264.5, 70_437, 69, 164_313.4],
  [265, 72_804, 19_658, 200_112.2],
  [265.5, 111_810, 30, 254_262.2],
  [266, 155_524, 101_630, 315_343.2],
  [266.4, 771_276, 279, 542_795.0],
] as const;

const cellOf = ([east, north]: readonly [number, number]) =>
  (SIZE_M - 1 - Math.floor(north)) * SIZE_M + Math.floor(east);

/** Connected water the plainest way: a stack of cells over the grid that the demo's script computes. */
function filled(heights: Float32Array, levelM: number): Uint8Array {
  const wet = new Uint8Array(heights.length);
  const stack = [cellOf(RIVER)];
  while (stack.length > 0) {
    const cell = stack.pop()!;
    if (wet[cell] === 1 || heights[cell]! >= levelM) continue;
    wet[cell] = 1;
    const [column, row] = [cell % SIZE_M, Math.floor(cell / SIZE_M)];
    for (let k = 0; k < 9; k++) {
      const [c, r] = [column + (k % 3) - 1, row + Math.floor(k / 3) - 1];
      if (c >= 0 && r >= 0 && c < SIZE_M && r < SIZE_M) stack.push(r * SIZE_M + c);
    }
  }
  return wet;
}

const count = (mask: WetMask, code: number) => mask.codes.filter((each) => each === code).length;

describe("the old channel of the demo site", () => {
  const heights = siteGrid();

  it("is low but not joined to the river below its sill, and joined just above it", async () => {
    const low = await engine.traceWater({ plan: levelPlan(265) });
    const [channel] = low.structures;
    const sillM = channel!.sillM!;
    expect(channel).toMatchObject({ wet: false });
    expect(sillM).toBeGreaterThan(265);
    expect(low.mask.codes[cellOf(CHANNEL)]).toBe(LOW);

    const at = await engine.traceWater({ plan: levelPlan(sillM) });
    expect(at.structures[0]).toMatchObject({ wet: false, sillM });
    expect(filled(heights, sillM)[cellOf(CHANNEL)]).toBe(0);

    const above = await engine.traceWater({ plan: levelPlan(sillM + 1e-6) });
    expect(above.structures[0]).toMatchObject({ wet: true, sillM });
    expect(above.mask.codes[cellOf(CHANNEL)]).toBe(WATER);
    expect(filled(heights, sillM + 1e-6)[cellOf(CHANNEL)]).toBe(1);
    expect(above.water.lowAreaM2).toBeLessThan(at.water.lowAreaM2 - 5_000);
  });

  it.each(LABELLED)(
    "and all the rest at %s m are what a labeller and a plain fill of the computed grid give",
    async (levelM, cells, lowCells, volumeInCells) => {
      const { mask, water } = await engine.traceWater({ plan: levelPlan(levelM) });
      const wet = filled(heights, levelM);
      const expected = heights.map((height, cell) =>
        Number.isNaN(height) ? 0 : wet[cell] === 1 ? WATER : height < levelM ? LOW : 0,
      );
      const shown = mask.codes.map((code, cell) => (Number.isNaN(heights[cell]!) ? 0 : code));
      expect(shown.findIndex((code, cell) => code !== expected[cell])).toBe(-1);
      expect(water).toMatchObject({ cells, lowCells });
      expect([count(mask, WATER), count(mask, LOW)]).toEqual([cells, lowCells]);
      const perCellM2 = water.areaM2 / water.cells;
      expect(perCellM2).toBeCloseTo(1, 2);
      expect(water.volumeM3 / (volumeInCells * perCellM2)).toBeCloseTo(1, 5);
    },
  );
});

describe("the demo plan, as it is saved", () => {
  it("floods all three buildings without a levee, and none with any of its lines", async () => {
    const { structures, alternatives } = await engine.traceWater({ plan });
    expect(structures.map(({ wet }) => wet)).toEqual([true, true, true]);
    expect(alternatives.map(({ dry }) => dry)).toEqual([true, true, true]);
    for (const { firstOver } of alternatives) {
      expect(firstOver!.riseM).toBeCloseTo(plan.water.freeboardM, 6);
      expect(firstOver!.stageM).toBeCloseTo(plan.water.stageM + plan.water.freeboardM, 6);
    }
  });

  it("is not kept dry by the line to the road bank when an end of it is cut short", async () => {
    const line = plan.alignments.find(({ kind }) => kind === "line")!;
    const short = { ...line, corners: line.corners.slice(1) };
    const { alternatives } = await engine.traceWater({
      plan: { ...plan, alignments: [short], chosenId: null },
    });
    const [cut] = alternatives;
    expect(cut!.dry).toBe(false);
    expect(cut!.wayIn).toMatchObject({ end: "start" });
    expect(cut!.checks.map(({ id }) => id)).toContain("water-gets-in");
  });
});
