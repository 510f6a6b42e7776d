import geodesic from "geographiclib-geodesic";
import proj4 from "proj4";
import { describe, expect, it } from "vitest";
import { HOLE_DISPLAY_M, UNREAD_DISPLAY_M } from "../../shared/messages.ts";
import type { LonLat } from "../../shared/plan.ts";
import { UNREAD_M } from "../../workers/raster/built-overview.ts";
import type { ReadGridOptions } from "../../workers/raster/read-grid.ts";
import type { Terrain } from "../../workers/raster/terrain.ts";
import { fillHoles } from "../../workers/tiles/fill-holes.ts";
import { heightTile } from "../../workers/tiles/height-tile.ts";
import { holeTile } from "../../workers/tiles/hole-tile.ts";
import { fromMercator, mercatorX, mercatorY, tileLonLat } from "../../workers/tiles/mercator.ts";

const WEST = -93.98;
const SOUTH = 42.98;
const EAST = -93.96;
const NORTH = 43;
const TILE = { z: 16, x: 15661, y: 24083 };

/** A stand-in raster over a formula in degrees; counts how often it is read. */
function terrainOf(
  heightAt: (at: LonLat) => number,
  corners?: Terrain["summary"]["corners"],
  share: () => number | null = () => null,
) {
  const reads: number[] = [];
  const box = [
    [WEST, NORTH],
    [EAST, NORTH],
    [EAST, SOUTH],
    [WEST, SOUTH],
  ] as unknown as Terrain["summary"]["corners"];
  const terrain = {
    summary: {
      bounds: [WEST, SOUTH, EAST, NORTH],
      corners: corners ?? box,
      columns: 1630,
      rows: 2222,
      cellXM: 1,
      cellYM: 1,
    },
    readGrid: async (
      place: (column: number, row: number) => LonLat,
      columns: number,
      rows: number,
      options?: ReadGridOptions,
    ) => {
      reads.push(columns * rows);
      const part = share();
      if (part !== null) options?.onPart?.(part);
      return Float32Array.from({ length: columns * rows }, (_, i) =>
        heightAt(place(i % columns, Math.floor(i / columns))),
      );
    },
  } as unknown as Terrain;
  return { terrain, reads };
}

/** Source: the Terrarium encoding as published with the open Terrain Tiles data set ("formats"). */
function terrarium(rgba: Uint8ClampedArray, pixel: number): number {
  const [red, green, blue] = [rgba[4 * pixel]!, rgba[4 * pixel + 1]!, rgba[4 * pixel + 2]!];
  return red * 256 + green + blue / 256 - 32768;
}

const slope = ([lon, lat]: LonLat) => 260 + (lon - WEST) * 400 + (lat - SOUTH) * 300;

describe("display tiles", () => {
  it("place their pixels as EPSG:3857 does (proj4)", () => {
    const half = Math.PI * 6378137;
    for (const at of [
      [-93.97, 42.99],
      [0, 0],
      [151.2, -33.9],
    ] as const) {
      const [x, y] = proj4("EPSG:4326", "EPSG:3857", [at[0], at[1]]) as [number, number];
      expect(mercatorX(at[0])).toBeCloseTo((x + half) / (2 * half), 12);
      expect(mercatorY(at[1])).toBeCloseTo((half - y) / (2 * half), 12);
      const [lon, lat] = fromMercator(mercatorX(at[0]), mercatorY(at[1]));
      expect(Math.hypot(lon - at[0], lat - at[1])).toBeLessThan(1e-11);
    }
  });

  it("carry the height at each pixel's centre to within half a step of 1/256 m", async () => {
    const { rgba, holes } = await heightTile(terrainOf(slope).terrain, { ...TILE, fall: null });
    expect(holes).toBe(false);
    for (const pixel of [0, 255, 256, 31_111, 65_535]) {
      const at = tileLonLat(TILE, (pixel % 256) + 0.5, Math.floor(pixel / 256) + 0.5);
      expect(Math.abs(terrarium(rgba!, pixel) - slope(at))).toBeLessThan(1 / 512 + 2e-5);
      expect(rgba![4 * pixel + 3]).toBe(255);
    }
  });

  it("never show a hole as ground: far above any water, hatched, and said so", async () => {
    const middle = tileLonLat(TILE, 128, 128);
    const holed = (at: LonLat) => (at[0] > middle[0] ? Number.NaN : slope(at));
    const { terrain } = terrainOf(holed);
    const heights = await heightTile(terrain, { ...TILE, fall: null });
    const hatch = await holeTile(terrain, TILE);
    expect(heights.holes && hatch.holes).toBe(true);
    let hatched = 0;
    let wrong = 0;
    for (let pixel = 0; pixel < 65_536; pixel++) {
      const isHole = pixel % 256 >= 128;
      const shown = terrarium(heights.rgba!, pixel);
      const drawn = hatch.rgba![4 * pixel + 3]! > 0;
      if (isHole ? shown !== HOLE_DISPLAY_M : shown > 300 || drawn) wrong++;
      if (drawn) hatched++;
    }
    expect(wrong).toBe(0);
    expect(hatched).toBe((128 * 256) / 4);
  });

  it("show what is not read yet as neither ground nor hole, and are asked for again", async () => {
    const middle = tileLonLat(TILE, 128, 128);
    let share: number | null = 0.4;
    const half = (at: LonLat) => (share !== null && at[0] > middle[0] ? UNREAD_M : slope(at));
    const { terrain, reads } = terrainOf(half, undefined, () => share);
    const first = { ...TILE, turn: 1 };
    const relief = { baseM: 200, scale: 16 };
    const heights = await heightTile(terrain, { ...first, fall: null });
    const shaded = await heightTile(terrain, { ...first, fall: null, relief });
    const hatch = await holeTile(terrain, first);
    expect(reads.length).toBe(1);
    expect(hatch).toEqual({ rgba: null, holes: false, share: 0.4 });
    expect([heights.share, shaded.share, heights.holes]).toEqual([0.4, 0.4, false]);
    let wrong = 0;
    for (let pixel = 0; pixel < 65_536; pixel++) {
      const isRead = pixel % 256 < 128;
      const heightM = terrarium(heights.rgba!, pixel);
      if (isRead ? heightM > 300 : heightM !== UNREAD_DISPLAY_M) wrong++;
      const stretched = terrarium(shaded.rgba!, pixel);
      if (isRead ? Math.abs(stretched - (heightM - 200) * 16) > 0.1 : stretched !== 0) wrong++;
    }
    expect(wrong).toBe(0);
    share = null;
    const whole = await heightTile(terrain, { ...TILE, turn: 2, fall: null });
    expect(reads.length).toBe(2);
    expect(whole.share).toBeUndefined();
    expect(terrarium(whole.rgba!, 255)).toBeLessThan(300);
  });

  it("are empty where nothing of them is read yet", async () => {
    const { terrain } = terrainOf(
      () => UNREAD_M,
      undefined,
      () => 0.1,
    );
    const empty = { rgba: null, holes: false, share: 0.1 };
    const relief = { baseM: 200, scale: 16 };
    expect(await heightTile(terrain, { ...TILE, fall: null })).toEqual(empty);
    expect(await heightTile(terrain, { ...TILE, fall: null, relief })).toEqual(empty);
  });

  it("are empty outside the raster, also between its outline and its box", async () => {
    const { terrain, reads } = terrainOf(slope);
    const away = { z: 16, x: 100, y: 100 };
    expect(await heightTile(terrain, { ...away, fall: null })).toEqual({
      rgba: null,
      holes: false,
    });
    expect(await holeTile(terrain, away)).toEqual({ rgba: null, holes: false });
    expect(reads).toEqual([]);
    const leaning: Terrain["summary"]["corners"] = [
      [WEST, NORTH],
      tileLonLat(TILE, 100, 0),
      tileLonLat(TILE, 100, 256),
      [WEST, SOUTH],
    ];
    const outside = (at: LonLat) => (at[0] > tileLonLat(TILE, 100, 0)[0] ? Number.NaN : slope(at));
    expect((await holeTile(terrainOf(outside, leaning).terrain, TILE)).holes).toBe(false);
  });

  it("make a falling water surface one level, by distances of GeographicLib", async () => {
    const at: LonLat = [-93.975, 42.985];
    const azimuth = 63;
    const toward = geodesic.Geodesic.WGS84.Direct(at[1], at[0], azimuth, 400);
    const flat = terrainOf(() => 262);
    const fallPerM = 0.004;
    const { rgba } = await heightTile(flat.terrain, {
      ...TILE,
      fall: { at, toward: [toward.lon2!, toward.lat2!], fallPerM },
    });
    for (const pixel of [5, 12_345, 40_000, 65_000]) {
      const place = tileLonLat(TILE, (pixel % 256) + 0.5, Math.floor(pixel / 256) + 0.5);
      const to = geodesic.Geodesic.WGS84.Inverse(at[1], at[0], place[1], place[0]);
      const alongM = to.s12! * Math.cos(((to.azi1! - azimuth) * Math.PI) / 180);
      expect(Math.abs(terrarium(rgba!, pixel) - (262 + fallPerM * alongM))).toBeLessThan(0.003);
    }
  });

  it("stretch heights for shading and fill the holes from their rim", async () => {
    const middle = tileLonLat(TILE, 128, 128);
    const holed = (at: LonLat) => (at[1] > middle[1] ? Number.NaN : 262.25);
    const { rgba } = await heightTile(terrainOf(holed).terrain, {
      ...TILE,
      fall: null,
      relief: { baseM: 260, scale: 16 },
    });
    for (const pixel of [0, 30_000, 65_535]) expect(terrarium(rgba!, pixel)).toBe(36);
    expect(fillHoles(new Float32Array(4).fill(Number.NaN), 2, 2)).toBeNull();
    const row = fillHoles(Float32Array.from([Number.NaN, 1, Number.NaN, Number.NaN, 4]), 5, 1);
    expect([...row!]).toEqual([1, 1, 1, 4, 4]);
  });

  it("read the raster once for the pictures of one tile, and again after a failure", async () => {
    const { terrain, reads } = terrainOf(slope);
    await Promise.all([
      heightTile(terrain, { ...TILE, fall: null }),
      heightTile(terrain, { ...TILE, fall: null, relief: { baseM: 0, scale: 1 } }),
      holeTile(terrain, TILE),
    ]);
    expect(reads).toHaveLength(1);
    let failing = true;
    const flaky = terrainOf((at) => {
      if (failing) throw new Error("unreadable");
      return slope(at);
    });
    await expect(heightTile(flaky.terrain, { ...TILE, fall: null })).rejects.toThrow("unreadable");
    failing = false;
    expect((await heightTile(flaky.terrain, { ...TILE, fall: null })).rgba).not.toBeNull();
  });
});
