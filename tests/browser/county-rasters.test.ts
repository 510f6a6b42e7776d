import type { Locator, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { type House, openHouse, type Visit } from "../helpers/harness.ts";
import { howMany } from "../helpers/how-many.ts";
import { largeRaster } from "../helpers/large-raster.ts";
import { layeredRaster } from "../helpers/layered-raster.ts";
import { bagsWhen, mapIsIdle } from "../helpers/screen.ts";
import { soundTags, type TiffTags, tiff, tiffBytes } from "../helpers/tiff-bytes.ts";

/* A person opens elevation data as counties hand it out, and plans a building on it. */
let house: House;
let visit: Visit;
let page: Page;
let clicks = 0;

beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());
afterEach(async () => {
  expect(visit.troubles).toEqual([]);
  expect(house.strayRequests).toEqual([]);
  await visit.leave();
});

/** Does not wait for the example: a person opens elevation data of their own as soon as it is offered. */
async function arrive(): Promise<void> {
  visit = await house.visit({ width: 1440, height: 900 });
  page = visit.page;
  await page.getByRole("region", { name: "Example" }).waitFor();
}

/** A raster in one strip: upper left corner, size of a cell, and the height at a cell. */
function grid(
  name: string,
  [columns, rows]: readonly [number, number],
  place: { left: number; top: number; cell: number },
  keys: readonly number[],
  heightAt: (column: number, row: number) => number,
) {
  const cells = Float32Array.from({ length: columns * rows }, (_, i) =>
    heightAt(i % columns, Math.floor(i / columns)),
  );
  const tags = {
    ...soundTags(cells.byteLength),
    ...{ 256: tiff.short(columns), 257: tiff.short(rows), 278: tiff.short(rows) },
    ...georeference(place, keys),
  };
  return asFile(name, tiffBytes(tags, new Uint8Array(cells.buffer)));
}

/** @param keys pairs of a GeoTIFF key and its value */
function georeference(
  { left, top, cell }: { left: number; top: number; cell: number },
  keys: readonly number[],
): TiffTags {
  const entries = keys.flatMap((value, i) => (i % 2 === 0 ? [value, 0, 1] : [value]));
  return {
    33550: tiff.double(cell, cell, 0),
    33922: tiff.double(0, 0, 0, left, top, 0),
    34735: tiff.short(1, 1, 0, keys.length / 2, ...entries),
  };
}

function asFile(name: string, bytes: Uint8Array) {
  return { name, mimeType: "image/tiff", buffer: Buffer.from(bytes) };
}

const UTM_15_IN_METRES = [1024, 1, 1025, 1, 3072, 26915, 4099, 9001];
const NINTH_OF_A_SECOND = 1 / (9 * 3600);
const WAVE = (2 * Math.PI) / 256;

/** What is opened, what the step strip says of it, the water and the place of a building, and whether a ring is found. */
const KINDS = [
  {
    kind: "state plane in US survey feet, with the unit stated",
    files: () => [
      grid(
        "feet.tif",
        [80, 60],
        { left: 2_700_000, top: 1_000_000, cell: 10 },
        [1024, 1, 1025, 1, 3072, 26851, 4099, 9003],
        (column, row) => 868 + (34 * (column + row)) / 138,
      ),
    ],
    says: "Heights 868.0 to 902.0 ft, vertical datum not stated, cells 10.0 ft",
    water: "886 ft",
    place: "2700400 999700",
    ring: true,
  },
  {
    kind: "longitude and latitude by a ninth of a second",
    files: () => [
      grid(
        "ninth.tif",
        [200, 160],
        { left: -93.5, top: 44, cell: NINTH_OF_A_SECOND },
        [1024, 2, 1025, 1, 2048, 4269, 4099, 9001],
        (column, row) => 264 + (10 * (column + row)) / 358,
      ),
    ],
    says: "Heights 866.1 to 899.0 ft",
    water: "884 ft",
    place: `${(-93.5 + 100 * NINTH_OF_A_SECOND).toFixed(6)}, ${(44 - 80 * NINTH_OF_A_SECOND).toFixed(6)}`,
    ring: false,
  },
  {
    kind: "two tiles, with the building on their seam",
    files: () =>
      [0, 1].map((tile) =>
        grid(
          `tile-${tile}.tif`,
          [120, 120],
          { left: 450_000 + 240 * tile, top: 4_983_000, cell: 2 },
          UTM_15_IN_METRES,
          (column, row) => 264 + (10 * (120 * tile + column + row)) / 358,
        ),
      ),
    says: "Heights 866.1 to 899.0 ft",
    water: "884 ft",
    place: "450240 4982880",
    ring: true,
  },
  {
    kind: "8,000 x 8,000 cells in tiles with overviews",
    files: () => [
      asFile(
        "county.tif",
        layeredRaster(
          [8000, 2000, 500].map((side, i) => ({
            side,
            tags:
              i === 0
                ? georeference({ left: 450_000, top: 4_983_000, cell: 1 }, UTM_15_IN_METRES)
                : {},
          })),
          (column, row) => 265 + Math.sin(WAVE * column) * Math.cos(WAVE * row),
        ),
      ),
    ],
    says: "Heights 866.1 to 872.7 ft",
    water: "870 ft",
    place: "453968 4979032",
    ring: true,
  },
];

async function openGround(files: ReturnType<typeof asFile>[]): Promise<void> {
  await page.getByLabel("Elevation data of your own").setInputFiles(files);
  clicks = 1; // Open my ground, whose file dialog is answered here
}

async function click(what: Locator): Promise<void> {
  clicks += 1;
  await what.click();
}

/** Share of the commonest colour in a part of the map, 0..1: next to 1 where no relief is drawn. */
async function flatShare(fromTop: number, toTop: number): Promise<number> {
  const box = (await page.locator(".map-stack").boundingBox())!;
  const clip = {
    ...{ x: box.x + box.width / 2 - 100, width: 200 },
    ...{ y: box.y + box.height * fromTop, height: box.height * (toTop - fromTop) },
  };
  const png = (await page.screenshot({ clip })).toString("base64");
  return page.evaluate(async (picture) => {
    const image = new Image();
    image.src = `data:image/png;base64,${picture}`;
    await image.decode();
    const paper = new OffscreenCanvas(image.width, image.height).getContext("2d")!;
    paper.drawImage(image, 0, 0);
    const colours = new Uint32Array(
      paper.getImageData(0, 0, image.width, image.height).data.buffer,
    );
    const counts = new Map<number, number>();
    for (const colour of colours) counts.set(colour, (counts.get(colour) ?? 0) + 1);
    return Math.max(...counts.values()) / colours.length;
  }, png);
}

const strip = () => page.getByRole("region", { name: "Steps" });
const next = () => strip().locator('[aria-current="step"]');

describe("a plan on elevation data of a county", () => {
  it.each(KINDS)(
    "$kind: relief, water, a building by its coordinates, in at most 15 clicks",
    async ({ files, says, water, place, ring }) => {
      await arrive();
      await openGround(files());
      await expect.poll(() => next().textContent(), { timeout: 60_000 }).toBe("Water");
      expect(await strip().textContent()).toContain(says);
      await mapIsIdle(page);
      await expect.poll(() => flatShare(0.4, 0.6), { timeout: 20_000 }).toBeLessThan(0.5);

      await click(next());
      const field = page.getByLabel("Sized-for water elevation", { exact: true }).first();
      await expect
        .poll(() => field.evaluate((input) => input === document.activeElement))
        .toBe(true);
      await page.keyboard.type(water);
      await page.keyboard.press("Enter");
      await expect.poll(() => next().textContent()).toBe("Building");

      await click(strip().getByRole("button", { name: "Type coordinates" }));
      const typed = page.getByLabel("Coordinates: lon, lat or grid x, y");
      await expect
        .poll(() => typed.evaluate((input) => input === document.activeElement))
        .toBe(true);
      await page.keyboard.type(place);
      await page.keyboard.press("Enter");
      await click(page.getByRole("button", { name: "Put a rectangle there" }));
      await expect.poll(() => next().textContent()).toBe("Line");
      if (ring) {
        await click(strip().getByRole("button", { name: "Find the ring" }));
        await page.locator(".alternative").first().waitFor();
        expect(await bagsWhen(page, (bags) => bags > 0)).toBeGreaterThan(50);
      }
      expect(clicks).toBeLessThanOrEqual(15);
    },
  );
});

/* Half a minute of its own; the order of events is tested without a browser too. */
describe.each([6000].slice(0, howMany(0, 1)))(
  "a raster of %i cells a side, no overviews",
  (side) => {
    it("shows relief where it is read while the rest is still being read, and then all of it", async () => {
      await arrive();
      const bytes = largeRaster({ side, tile: 256, deflate: false });
      await openGround([asFile("whole.tif", bytes)]);
      const reading = page.getByText(/Reading all of the elevation data for the map/);
      await reading.waitFor();
      await expect.poll(() => flatShare(0.15, 0.25), { timeout: 60_000 }).toBeLessThan(0.5);
      expect(await reading.count()).toBe(1);
      await reading.waitFor({ state: "detached" });
      await mapIsIdle(page);
      await expect.poll(() => flatShare(0.6, 0.75), { timeout: 20_000 }).toBeLessThan(0.5);
    });
  },
);
