import { readFileSync } from "node:fs";
import { join } from "node:path";
import proj4 from "proj4";
import { describe, expect, it } from "vitest";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import { makeEngine } from "../../workers/engine.ts";
import { risingWater } from "../../workers/sweep/rising-water.ts";
import { connectedWater } from "../../workers/water/connected-water.ts";
import { sillSearch } from "../../workers/water/sill-search.ts";
import { cellIndex, setEdge } from "../../workers/water/water-grid.ts";
import { waterAmounts } from "../../workers/water/wet-amounts.ts";
import { EDGE, gridFrom, type Heights, inner, TURNS } from "../helpers/water-grids.ts";

/*
 * The crater lake of the volcano grid (vega-datasets, BSD-3-Clause; R datasets). Cells and volumes: made with
 * scipy.ndimage.label 1.17.1, 8-connected (tests/fixtures/volcano/README.md).
 */
const FILE = join(import.meta.dirname, "../fixtures/volcano/volcano.json");
const stored = JSON.parse(readFileSync(FILE, "utf8")) as {
  readonly width: number;
  readonly height: number;
  readonly values: readonly number[];
};
const volcano: Heights = {
  columns: stored.width,
  rows: stored.height,
  heightM: Float32Array.from(stored.values),
};
const SEED = [29, 27] as const;
const LAKE = [
  [150, 5, 600],
  [155, 23, 7_600],
  [160, 49, 26_000],
  [165, 81, 60_100],
  [168, 103, 88_700],
] as const;

describe("the crater lake", () => {
  it.each(LAKE)(
    "at %s m has %s cells and %s m3, whichever way the grid lies",
    (levelM, cells, volumeM3) => {
      for (const { turn, cell } of TURNS) {
        const grid = gridFrom(turn(volcano), 10);
        const seed = cellIndex(grid, ...cell(volcano, ...SEED));
        setEdge(grid, false);
        const codes = connectedWater(grid, { edge: false, cells: [seed] }, levelM);
        const found = waterAmounts(grid, codes, levelM);
        expect(found.cells).toBe(cells);
        expect(found.volumeM3 / volumeM3).toBeCloseTo(1, 4);
      }
    },
  );

  it("rises from its lowest cell over as many cells by each level, all at once", () => {
    for (const { turn, cell } of TURNS) {
      const grid = gridFrom(turn(volcano), 10);
      const seed = cellIndex(grid, ...cell(volcano, ...SEED));
      setEdge(grid, false);
      const levels = inner(grid, risingWater(grid, { edge: false, cells: [seed] }, 200));
      for (const [levelM, cells] of LAKE) {
        expect(levels.filter((level) => level < levelM)).toHaveLength(cells);
      }
    }
  });

  it("spills at 168 m: the sill of its lowest cell from outside, whichever way the grid lies", () => {
    for (const { turn, cell } of TURNS) {
      const grid = gridFrom(turn(volcano), 10);
      const seed = cellIndex(grid, ...cell(volcano, ...SEED));
      expect(sillSearch(grid, EDGE, null).find([seed]).levelM).toBe(168);
    }
  });

  it("runs over to the edges just above that, over 4,729 cells at 169 m", () => {
    const grid = gridFrom(volcano, 10);
    const seed = cellIndex(grid, ...SEED);
    setEdge(grid, false);
    const from = { edge: false, cells: [seed] };
    const over = connectedWater(grid, from, 168 + 1e-9);
    expect(waterAmounts(grid, over, 168).cells).toBeGreaterThan(103);
    expect(waterAmounts(grid, connectedWater(grid, from, 169), 169).cells).toBe(4729);
  });

  it("is the same through the engine, from a raster file in UTM and a marked source", async () => {
    const { lonLat, files } = volcanoRaster();
    const engine = makeEngine();
    await engine.openTerrain({ files, verticalUnit: "metre" });
    for (const [levelM, cells, volumeM3] of LAKE) {
      const { water, sources } = await engine.traceWater({
        plan: {
          ...EMPTY_PLAN,
          sources: [{ id: "s", name: "Crater", at: lonLat(SEED) }],
          water: { ...EMPTY_PLAN.water, elevationM: levelM },
        },
      });
      expect(sources[0]).toMatchObject({ state: "wet", groundM: 148 });
      expect(water.cells).toBe(cells);
      // The scale of UTM at its middle is 0.9996, so that a cell of 10 m in the file is 10.004 m on the ground.
      expect((water.volumeM3 * 0.9996 ** 2) / volumeM3).toBeCloseTo(1, 4);
    }
  });
});

/** The grid as an Esri ASCII file, its lower left corner on the middle of UTM zone 60S. */
function volcanoRaster() {
  const [eastM, northM] = [500_000 - 435, 5_917_000];
  const rows = Array.from({ length: volcano.rows }, (_, row) =>
    volcano.heightM.subarray(row * volcano.columns, (row + 1) * volcano.columns).join(" "),
  );
  const head = `ncols ${volcano.columns}\nnrows ${volcano.rows}\nxllcorner ${eastM}\nyllcorner ${northM}\ncellsize 10\nNODATA_value -9999\n`;
  const prj =
    'PROJCS["WGS 84 / UTM zone 60S",GEOGCS["WGS 84",DATUM["WGS_1984",SPHEROID["WGS 84",6378137,298.257223563]],PRIMEM["Greenwich",0],UNIT["degree",0.0174532925199433]],PROJECTION["Transverse_Mercator"],PARAMETER["latitude_of_origin",0],PARAMETER["central_meridian",177],PARAMETER["scale_factor",0.9996],PARAMETER["false_easting",500000],PARAMETER["false_northing",10000000],UNIT["metre",1]]';
  const utm = proj4(
    "+proj=utm +zone=60 +south +datum=WGS84 +units=m +no_defs",
    "+proj=longlat +datum=WGS84",
  );
  return {
    lonLat: ([column, row]: readonly [number, number]): [number, number] =>
      utm.forward([eastM + 10 * (column + 0.5), northM + 10 * (volcano.rows - row - 0.5)]) as [
        number,
        number,
      ],
    files: [
      { name: "volcano.asc", blob: new Blob([head, `${rows.join("\n")}\n`]) },
      { name: "volcano.prj", blob: new Blob([prj]) },
    ],
  };
}
