import { execFileSync } from "node:child_process";
import { closeSync, openAsBlob, openSync, writeFileSync, writeSync } from "node:fs";
import { join } from "node:path";
import { planPlane } from "../../shared/plan-plane.ts";
import { openTerrain } from "../../workers/raster/terrain.ts";
import { type Gdal, startGdal } from "../helpers/gdal.ts";
import type { BenchRow } from "./row.ts";

/*
 * Reading 2,000 x 2,000 cells at full resolution out of a 6,000 x 6,000 float32 raster, by the kinds of
 * compression that public lidar comes in. The peer reads the same window of the same file in the same run
 * and writes it as plain numbers.
 */

const SIDE = 6000;
const WINDOW = 2000;
const RUNS = 5;
const ORIGIN = [482_000, 4_983_400] as const;

const KINDS: readonly (readonly [string, readonly string[]])[] = [
  ["not compressed, tiles", ["-co", "TILED=YES"]],
  [
    "Deflate + predictor 3, tiles",
    ["-co", "TILED=YES", "-co", "COMPRESS=DEFLATE", "-co", "PREDICTOR=3"],
  ],
  ["LZW + predictor 3, tiles", ["-co", "TILED=YES", "-co", "COMPRESS=LZW", "-co", "PREDICTOR=3"]],
  ["LZW + predictor 2, strips", ["-co", "COMPRESS=LZW", "-co", "PREDICTOR=2"]],
];

export async function rows(): Promise<readonly BenchRow[]> {
  const gdal = await startGdal();
  try {
    writeSource(gdal.folder);
    const measured: BenchRow[] = [];
    for (const [kind, options] of KINDS) measured.push(...(await measure(gdal, kind, options)));
    return measured;
  } finally {
    gdal.remove();
  }
}

async function measure(gdal: Gdal, kind: string, options: readonly string[]): Promise<BenchRow[]> {
  const native = nativeVersion();
  const create = ["-of", "GTiff", ...options];
  if (native) runNative(gdal.folder, [...create, "source.vrt", "big.tif"]);
  else await gdal.translate("source.vrt", create, "big");
  const ours = await oursMs(join(gdal.folder, "big.tif"));
  const first = (SIDE - WINDOW) / 2;
  const window = ["-of", "ENVI", "-srcwin", `${first}`, `${first}`, `${WINDOW}`, `${WINDOW}`];
  const wasmMs = await median(() => gdal.translateMs("big.tif", window, "window"));
  const name = `read ${WINDOW} x ${WINDOW} of ${SIDE} x ${SIDE}: ${kind}`;
  const row = (peer: string, peerMs: number): BenchRow => ({
    name,
    ms: ours,
    peer,
    peerMs,
    promisedMs: null,
  });
  const measured = [row("GDAL 3.8 (gdal3.js)", wasmMs)];
  if (!native) return measured;
  const nativeMs = await median(async () => {
    const startedAt = performance.now();
    runNative(gdal.folder, [...window, "big.tif", "native"]);
    return performance.now() - startedAt;
  });
  return [...measured, row(`${native} (gdal_translate, its start included)`, nativeMs)];
}

/** A terrain opened afresh for each run, so that nothing is kept from the run before. */
async function oursMs(path: string): Promise<number> {
  return median(async () => {
    const terrain = await openTerrain([{ name: "big.tif", blob: await openAsBlob(path) }], null);
    const [west, south, east, north] = terrain.summary.bounds;
    const plane = planPlane([(west + east) / 2, (south + north) / 2]);
    const reach = (WINDOW * terrain.summary.cellXM) / 2 / 1.3;
    const box = { minX: -reach, minY: -reach, maxX: reach, maxY: reach };
    const startedAt = performance.now();
    await terrain.samplerFor(plane, box);
    return performance.now() - startedAt;
  });
}

async function median(run: () => Promise<number>): Promise<number> {
  await run();
  const times: number[] = [];
  for (let i = 0; i < RUNS; i++) times.push(await run());
  return times.sort((a, b) => a - b)[Math.floor(RUNS / 2)]!;
}

/** Rolling ground with some roughness, written row by row. */
function writeSource(folder: string): void {
  const file = openSync(join(folder, "source.raw"), "w");
  const cells = new Float32Array(SIDE);
  for (let row = 0; row < SIDE; row++) {
    for (let column = 0; column < SIDE; column++) {
      const rough = 0.13 * (((column * 7919 + row * 104_729) % 97) / 97);
      cells[column] = 250 + 5 * Math.sin(column / 90) + 3 * Math.cos(row / 70) + rough;
    }
    writeSync(file, new Uint8Array(cells.buffer));
  }
  closeSync(file);
  writeFileSync(
    join(folder, "source.vrt"),
    `<VRTDataset rasterXSize="${SIDE}" rasterYSize="${SIDE}"><SRS>EPSG:26915+5703</SRS>` +
      `<GeoTransform>${ORIGIN[0]}, 1, 0, ${ORIGIN[1]}, 0, -1</GeoTransform>` +
      '<VRTRasterBand dataType="Float32" band="1" subClass="VRTRawRasterBand">' +
      '<SourceFilename relativeToVRT="1">source.raw</SourceFilename><ImageOffset>0</ImageOffset>' +
      `<PixelOffset>4</PixelOffset><LineOffset>${4 * SIDE}</LineOffset><ByteOrder>LSB</ByteOrder>` +
      "</VRTRasterBand></VRTDataset>",
  );
}

/** "GDAL 3.6.2" when a full GDAL is installed; null when not. */
function nativeVersion(): string | null {
  try {
    return (
      /GDAL [\d.]+/.exec(
        execFileSync("gdal_translate", ["--version"], { encoding: "utf8" }),
      )?.[0] ?? null
    );
  } catch {
    return null;
  }
}

function runNative(folder: string, options: readonly string[]): void {
  execFileSync("gdal_translate", ["-q", ...options], { cwd: folder });
}
