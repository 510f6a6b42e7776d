import { copyFileSync, existsSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { planPlane } from "../../shared/plan-plane.ts";
import { metresPer } from "../../shared/vertical-unit.ts";
import { openTerrain } from "../../workers/raster/terrain.ts";
import { type Gdal, startGdal } from "../helpers/gdal.ts";
import { RASTERS, rasterFile } from "../helpers/raster-files.ts";
import {
  COLUMNS,
  geoTransform,
  RASTER_CASES,
  type RasterCase,
  REFERENCES,
  ROWS,
  storedCells,
} from "../helpers/raster-matrix.ts";
import { seededRandom } from "../helpers/seeded-random.ts";

/*
 * Heights against GDAL's bilinear (gdalwarp -r bilinear, GDAL 3.8 as gdal3.js) on every file of the matrix,
 * and places against PROJ (gdaltransform). Tolerance: 1 mm.
 */

const TOLERANCE_M = 0.001;
const POINTS = 600;

let gdal: Gdal;
beforeAll(async () => {
  gdal = await startGdal();
});
afterAll(() => gdal.remove());

interface Judged {
  readonly x: number;
  readonly y: number;
  readonly storedByGdal: number;
}

/** Places all over a raster and some way beyond, with GDAL's value. */
async function judge(each: RasterCase): Promise<Judged[]> {
  const fileName = fileOf(each.judgedBy ?? each.name);
  for (const ending of ["", ".aux.xml"]) {
    const from = join(RASTERS, fileName + ending);
    if (existsSync(from)) copyFileSync(from, join(gdal.folder, fileName + ending));
  }
  const random = seededRandom(each.name.length * 131 + each.name.charCodeAt(4));
  const [columns, rows] = each.size ?? [COLUMNS, ROWS];
  const place = geoTransform(each);
  const corners = [0, 1, 2, 3].map((i) => at(place, i & 1 ? columns : 0, i & 2 ? rows : 0));
  const cell = REFERENCES[each.reference].cell * 0.71;
  const left = Math.min(...corners.map(([x]) => x)) - (1 + random()) * cell;
  const top = Math.max(...corners.map(([, y]) => y)) + (1 + random()) * cell;
  const grid = {
    x0: left,
    y0: top,
    cell,
    columns: Math.ceil((Math.max(...corners.map(([x]) => x)) - left) / cell) + 2,
    rows: Math.ceil((top - Math.min(...corners.map(([, y]) => y))) / cell) + 2,
  };
  const values = await gdal.bilinear(fileName, grid);
  return Array.from({ length: POINTS }, () => {
    const index = Math.floor(random() * values.length);
    return {
      x: left + ((index % grid.columns) + 0.5) * cell,
      y: top - (Math.floor(index / grid.columns) + 0.5) * cell,
      storedByGdal: values[index]!,
    };
  });
}

const fileOf = (name: string) => (name === "ascii" ? "ascii.asc" : `${name}.tif`);

function at(place: readonly number[], column: number, row: number): [number, number] {
  const [x0, xc, xr, y0, yc, yr] = place as [number, number, number, number, number, number];
  return [x0 + xc * column + xr * row, y0 + yc * column + yr * row];
}

/** "outside", "hole" when a cell that carries weight has no data, else "ground": by hand, from the matrix. */
function groundAt(each: RasterCase, hole: readonly boolean[], x: number, y: number): string {
  const [columns, rows] = each.size ?? [COLUMNS, ROWS];
  const [x0, xc, xr, y0, yc, yr] = geoTransform(each);
  const det = xc * yr - xr * yc;
  const column = (yr * (x - x0) - xr * (y - y0)) / det;
  const row = (-yc * (x - x0) + xc * (y - y0)) / det;
  if (!(column >= 0 && column <= columns && row >= 0 && row <= rows)) return "outside";
  const c = Math.min(columns - 1, Math.max(0, column - 0.5));
  const r = Math.min(rows - 1, Math.max(0, row - 0.5));
  const touched = [Math.floor(c), Math.ceil(c)].flatMap((cc) =>
    [Math.floor(r), Math.ceil(r)].map((rr) => hole[rr * columns + cc]),
  );
  return touched.some((isHole) => isHole) ? "hole" : "ground";
}

async function open(each: RasterCase) {
  const files = [await rasterFile(fileOf(each.name))];
  if (each.name === "ascii") files.push(await rasterFile("ascii.prj"));
  return openTerrain(files, each.unit === null ? "metre" : null);
}

describe("heights equal GDAL's bilinear", () => {
  test.each(RASTER_CASES)("$name", async (each) => {
    const judged = await judge(each);
    const terrain = await open(each);
    const lonLats = await gdal.transform(
      judged.map(({ x, y }) => [x, y]),
      REFERENCES[each.reference].srs,
      "EPSG:4326",
    );
    const [west, south, east, north] = terrain.summary.bounds;
    const plane = planPlane([(west + east) / 2, (south + north) / 2]);
    const reach = 600;
    const box = { minX: -reach, minY: -reach, maxX: reach, maxY: reach };
    const sampler = await terrain.samplerFor(plane, box);
    const factor = metresPer(each.unit ?? "metre");
    const { hole } = storedCells(each);
    const seen = { ground: 0, hole: 0, outside: 0 };
    for (const [i, { x, y, storedByGdal }] of judged.entries()) {
      const heightM = sampler.heightAt(...plane.toPlane(lonLats[i] as [number, number]));
      const kind = groundAt(each, hole, x, y) as keyof typeof seen;
      seen[kind]++;
      if (kind !== "ground") {
        expect(heightM, `${kind} at ${x} ${y}`).toBeNaN();
        continue;
      }
      const expectedM = (storedByGdal * (each.scale ?? 1) + (each.offset ?? 0)) * factor;
      expect(Math.abs(heightM - expectedM), `${heightM} against ${expectedM}`).toBeLessThan(
        TOLERANCE_M,
      );
    }
    expect(seen.ground).toBeGreaterThan(POINTS / 3);
    expect(seen.outside).toBeGreaterThan(0);
    if (each.holes !== "none") expect(seen.hole).toBeGreaterThan(5);
  });
});
