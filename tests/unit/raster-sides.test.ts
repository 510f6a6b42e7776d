import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { GROUND_FILES, SIDE_CAR_ENDINGS } from "../../shared/raster-files.ts";
import { terrainFiles } from "../../workers/command/files.ts";
import { sortFiles } from "../../workers/raster/sort-files.ts";
import { madeFile } from "../helpers/raster-files.ts";

test.each([
  ["dem.prj", "projection"],
  ["dem.tfw", "world"],
  ["dem.tifw", "world"],
  ["dem.tiffw", "world"],
  ["dem.wld", "world"],
  ["DEM.ASW", "world"],
  ["dem.tif.aux.xml", "metadata"],
  ["dem.tif.ovr", "overviews"],
  ["dem.tif.msk", "mask"],
  ["dem.msk", "mask"],
] as const)("%s goes with dem.tif as its %s: dropped, chosen, or beside it", async (name, kind) => {
  const { rasters, loose } = sortFiles([madeFile("dem.tif"), madeFile(name)]);
  expect(rasters[0]!.sides[kind]?.name).toBe(name);
  expect(loose).toEqual([]);

  const ending = name.slice(name.lastIndexOf(".")).toLowerCase();
  expect(GROUND_FILES.split(",")).toContain(ending);

  const folder = mkdtempSync(join(tmpdir(), "drystead-sides-"));
  for (const each of ["dem.tif", name, "other.prj"]) writeFileSync(join(folder, each), "x");
  const found = await terrainFiles([join(folder, "dem.tif")]);
  rmSync(folder, { recursive: true });
  expect(found.map((file) => file.name)).toEqual(["dem.tif", name]);
});

test("every ending that is listed is read", () => {
  for (const [ending, kind] of SIDE_CAR_ENDINGS) {
    const { rasters } = sortFiles([madeFile("dem.tif"), madeFile(`dem.tif${ending}`)]);
    expect(rasters[0]!.sides[kind]?.name).toBe(`dem.tif${ending}`);
  }
});
