import proj4 from "proj4";
import type { Building } from "../../shared/buildings/types.ts";
import { DEFAULT_TIME, EMPTY_PLAN } from "../../shared/defaults.ts";
import type { Engine, TerrainFile } from "../../shared/messages.ts";
import type { LonLat, Plan } from "../../shared/plan.ts";
import { makeEngine } from "../../workers/engine.ts";
import { seeded } from "./search-terrain.ts";
import { tiff, tiffBytes } from "./tiff-bytes.ts";

/* A made town: ground by formula in meters, x east and y north of its middle, and buildings on it. */

const utm = proj4("+proj=utm +zone=15 +datum=WGS84 +units=m +no_defs", "+proj=longlat");
const [MIDDLE_E, MIDDLE_N] = [482_000, 4_983_000];
const TILE = 256;

export type HeightAt = (xM: number, yM: number) => number;

export function placeOf(x: number, y: number): LonLat {
  const [lon, lat] = utm.forward([MIDDLE_E + x, MIDDLE_N + y]);
  return [lon!, lat!];
}

/** A square GeoTIFF of cells of 1 m, tiled, UTM zone 15 north, NaN where there is no data. */
export function townRaster(sideM: number, heightAt: HeightAt): Uint8Array<ArrayBuffer> {
  const across = Math.ceil(sideM / TILE);
  const cells = new Float32Array(across * across * TILE * TILE).fill(Number.NaN);
  for (let row = 0; row < sideM; row++) {
    for (let column = 0; column < sideM; column++) {
      const tile = Math.floor(row / TILE) * across + Math.floor(column / TILE);
      const at = tile * TILE * TILE + (row % TILE) * TILE + (column % TILE);
      cells[at] = heightAt(column + 0.5 - sideM / 2, sideM / 2 - row - 0.5);
    }
  }
  const tileBytes = TILE * TILE * 4;
  const tiles = Array.from({ length: across * across }, (_, k) => k);
  const north = MIDDLE_N + sideM / 2;
  const keys = [1, 1, 0, 4, 1024, 0, 1, 1, 1025, 0, 1, 1, 3072, 0, 1, 26915, 4099, 0, 1, 9001];
  return tiffBytes(
    {
      ...{ 256: tiff.long(sideM), 257: tiff.long(sideM), 258: tiff.short(32) },
      ...{ 259: tiff.short(1), 262: tiff.short(1), 277: tiff.short(1), 339: tiff.short(3) },
      ...{ 322: tiff.long(TILE), 323: tiff.long(TILE) },
      324: tiff.long(...tiles.map((k) => k * tileBytes)),
      325: tiff.long(...tiles.map(() => tileBytes)),
      33550: tiff.double(1, 1, 0),
      33922: tiff.double(0, 0, 0, MIDDLE_E - sideM / 2, north, 0),
      34735: tiff.short(...keys),
    },
    new Uint8Array(cells.buffer),
  );
}

function townFile(bytes: Uint8Array<ArrayBuffer>): TerrainFile {
  return { name: "town.tif", blob: new Blob([bytes]) };
}

export async function engineOn(bytes: Uint8Array<ArrayBuffer>): Promise<Engine> {
  const engine = makeEngine();
  await engine.openTerrain({ files: [townFile(bytes)], verticalUnit: "metre" });
  return engine;
}

/** A rectangle by its middle and sides, meters. */
export function outlineAt(x: number, y: number, wideM: number, deepM: number): LonLat[] {
  const [w, d] = [wideM / 2, deepM / 2];
  return [
    placeOf(x - w, y - d),
    placeOf(x + w, y - d),
    placeOf(x + w, y + d),
    placeOf(x - w, y + d),
  ];
}

export function buildingAt(id: string, x: number, y: number, wideM = 12, deepM = 10): Building {
  return {
    ...{ id, name: `Building ${id}`, floorM: null, weight: 1, priority: "" },
    parts: [outlineAt(x, y, wideM, deepM)],
  };
}

/** A plan for water at an elevation, with people, shifts and a start, and the changes named. */
export function townPlan(waterM: number, changes: Partial<Plan> = {}): Plan {
  return {
    ...EMPTY_PLAN,
    water: { ...EMPTY_PLAN.water, by: "elevation", elevationM: waterM },
    practice: { ...EMPTY_PLAN.practice, people: 60 },
    time: { ...DEFAULT_TIME, startAt: "2026-04-01T06:00-05:00", shifts: 2, lit: true },
    ...changes,
  };
}

/** A flood plain with a river along its south, long waves and survey noise, and seeded buildings on a loose grid. */
export function seededTown(count: number, seed = 11) {
  const chance = seeded(seed);
  const across = Math.ceil(Math.sqrt(count));
  const lotM = 46;
  const sideM = across * lotM + 200;
  const noise = seeded(seed + 1);
  const heightAt: HeightAt = (x, y) => {
    const river = -3 * Math.exp(-(((y + sideM / 2 - 40) / 25) ** 2));
    const waves = 0.35 * Math.sin(x / 57) * Math.cos(y / 41) + 0.2 * Math.sin((x + y) / 19);
    return 100 + 0.0008 * (y + sideM / 2) + waves + river + 0.03 * (noise() - 0.5);
  };
  const buildings = Array.from({ length: count }, (_, k) => {
    const [column, row] = [k % across, Math.floor(k / across)];
    const x = (column + 0.5) * lotM - (across * lotM) / 2 + 6 * (chance() - 0.5);
    const y = (row + 0.5) * lotM - (across * lotM) / 2 + 6 * (chance() - 0.5);
    return buildingAt(`b${k}`, x, y, 8 + 8 * chance(), 7 + 6 * chance());
  });
  return { sideM, heightAt, buildings, waterM: 100.6 };
}
