import type { Locator, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { oneVisit } from "../helpers/one-visit.ts";
import { bagsWhen, inMore, json, mapIsIdle } from "../helpers/screen.ts";
import { soundTags, tiff, tiffBytes } from "../helpers/tiff-bytes.ts";

const COLUMNS = 80;
const ROWS = 60;
/** Upper left corner, US survey feet in Minnesota South (EPSG:26851), and cells of 10 ft. */
const [LEFT, TOP, CELL] = [2_700_000, 1_000_000, 10];

/* One visit: a person opens a state plane raster that states no vertical unit, and plans two buildings on it. */
let page: Page;
let clicks = 0;

oneVisit({ width: 1440, height: 900, coarse: true }, (arrived) => {
  page = arrived;
});

/** A plane from 868 to 902, in feet, of which the file says nothing. */
function countyRaster() {
  const cells = Float32Array.from(
    { length: COLUMNS * ROWS },
    (_, i) => 868 + (34 * ((i % COLUMNS) + Math.floor(i / COLUMNS))) / (ROWS + COLUMNS - 2),
  );
  const tags = {
    ...soundTags(cells.byteLength),
    ...{ 256: tiff.short(COLUMNS), 257: tiff.short(ROWS), 278: tiff.short(ROWS) },
    33550: tiff.double(CELL, CELL, 0),
    33922: tiff.double(0, 0, 0, LEFT, TOP, 0),
    34735: tiff.short(1, 1, 0, 3, 1024, 0, 1, 1, 1025, 0, 1, 1, 3072, 0, 1, 26851),
  };
  const buffer = Buffer.from(tiffBytes(tags, new Uint8Array(cells.buffer)));
  return { name: "own.tif", mimeType: "image/tiff", buffer };
}

/** Houses of 20 by 20 ft every 40 ft in the raster's own grid, one of them in its middle. */
function footprints() {
  const houses = [-8, -7, -6, -5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5, 6, 7, 8].flatMap((column) =>
    [-6, -5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5, 6].map((row) => [column, row] as const),
  );
  const [x, y] = [LEFT + (COLUMNS * CELL) / 2, TOP - (ROWS * CELL) / 2];
  return {
    type: "FeatureCollection",
    crs: { type: "name", properties: { name: "urn:ogc:def:crs:EPSG::26851" } },
    features: houses.map(([column, row]) => {
      const [east, north] = [x + 40 * column, y + 40 * row];
      const ring = [
        [east - 10, north - 10],
        [east + 10, north - 10],
        [east + 10, north + 10],
        [east - 10, north + 10],
        [east - 10, north - 10],
      ];
      return {
        type: "Feature",
        properties: { ADDRESS: `${100 + column} Row ${row}`, FFE: 887.5 },
        geometry: { type: "Polygon", coordinates: [ring] },
      };
    }),
  };
}

async function click(what: Locator): Promise<void> {
  clicks += 1;
  await what.click();
}

/** Clicks on the map, pixels from its middle. */
async function clickMap(dx: number, dy: number): Promise<void> {
  clicks += 1;
  const box = (await page.locator(".map-canvas").boundingBox())!;
  await page.mouse.click(box.x + box.width / 2 + dx, box.y + box.height / 2 + dy);
}

const strip = () => page.getByRole("region", { name: "Steps" });
const next = () => strip().locator('[aria-current="step"]');

describe("a plan on a state plane raster without a vertical unit", () => {
  it("goes from opening the raster to a found ring in at most 15 clicks, one step lit after the other", async () => {
    clicks = 1; // Open my ground, whose file dialog is answered here
    await page.getByLabel("Elevation data of your own").setInputFiles(countyRaster());
    const question = page.getByRole("alert", { name: "Unit of the heights" });
    await click(question.getByRole("button", { name: "US survey feet" }));
    await expect.poll(() => next().textContent(), { timeout: 60_000 }).toBe("Water");
    expect(await strip().textContent()).toContain(
      "Heights 868.0 to 902.0 ft (US survey feet, as you said), vertical datum not stated, cells 10.0 ft",
    );
    expect(await page.locator(".worksheet").textContent()).not.toMatch(/86[78]\.\d\d ft/);

    await click(next());
    const field = page.getByLabel("Sized-for water elevation", { exact: true }).first();
    await expect.poll(() => field.evaluate((input) => input === document.activeElement)).toBe(true);
    await page.keyboard.type("886 ft");
    await page.keyboard.press("Enter");
    await expect.poll(() => next().textContent()).toBe("Building");

    await mapIsIdle(page);
    await click(strip().getByRole("button", { name: "Draw the building" }));
    await clickMap(-20, -20);
    await clickMap(20, -20);
    await clickMap(20, 20);
    await clickMap(-20, 20);
    await page.keyboard.press("Enter");
    await expect.poll(() => next().textContent()).toBe("Line");

    await click(strip().getByRole("button", { name: "Find the ring" }));
    await page.locator(".alternative").first().waitFor();
    expect(await bagsWhen(page, (bags) => bags > 0)).toBeGreaterThan(50);
    expect(clicks).toBeLessThanOrEqual(15);
    expect(await next().textContent()).toBe("Crew and time");

    await page.setViewportSize({ width: 320, height: 700 });
    const widthPx = () => page.evaluate(() => document.documentElement.scrollWidth);
    expect(await widthPx(), "steps beyond the edge widen no phone's page").toBe(320);
    await page.setViewportSize({ width: 1440, height: 900 });
    await mapIsIdle(page);
  });

  it("goes on to the next building, picked from footprints in the raster's own grid, in at most 8 clicks", async () => {
    await page.locator('[data-block="line"] button[aria-expanded]').first().click();
    const houses = page.getByRole("group", { name: /footprints, houses\.geojson/ });
    await page
      .getByRole("region", { name: "Buildings" })
      .getByLabel("Footprints of buildings")
      .setInputFiles(json("houses.geojson", footprints()));
    await houses.waitFor();
    await houses.getByLabel("Floor from").selectOption("FFE");
    await houses.getByLabel("Floors are in").selectOption("us-survey-foot");

    clicks = 0;
    await click(await inMore(page, "Next building, same river"));
    clicks += 1; // More
    const asked = page.getByRole("alert", { name: "Next building" });
    await click(asked.getByRole("button", { name: "Start without saving" }));
    await expect.poll(() => page.locator(".alternative").count()).toBe(0);
    expect(
      await page.getByLabel("Sized-for water elevation", { exact: true }).first().inputValue(),
    ).toBe("886.00 ft");
    await click(page.getByRole("button", { name: "Fit" }));
    await page.waitForTimeout(400);
    await mapIsIdle(page);
    await clickMap(0, 0);
    await expect.poll(() => next().textContent()).toBe("Line");
    const name = page.getByLabel("Name of the building").first();
    expect(await name.inputValue()).toBe("100 Row 0");
    expect(await page.getByLabel("Floor", { exact: true }).first().inputValue()).toBe("887.50 ft");
    await click(strip().getByRole("button", { name: "Find the ring" }));
    await page.locator(".alternative").first().waitFor();
    expect(await bagsWhen(page, (bags) => bags > 0)).toBeGreaterThan(20);
    expect(await page.getByText("Click a building to take it").count(), "over the ring").toBe(0);
    expect(clicks).toBeLessThanOrEqual(8);
  });

  it("takes a building from the list by its address, and one by typed coordinates of the grid", async () => {
    const houses = page.getByRole("group", { name: /footprints, houses\.geojson/ });
    await houses.getByLabel("Address or other text").fill("103 row 2");
    await houses.getByRole("checkbox", { name: /^103 Row 2, floor/ }).check();
    await expect.poll(() => page.getByLabel("Name of the building").count()).toBe(2);

    const place = page.getByLabel("Coordinates: lon, lat or grid x, y");
    await place.fill("-93.5, 12");
    await place.press("Enter");
    await page.getByText("does not lie on the elevation data that is open").waitFor();
    await place.fill(`${LEFT + 200} ${TOP - 140}`);
    await place.press("Enter");
    await page.getByRole("button", { name: /^Take the nearest: 95 Row 4/ }).click();
    await expect.poll(() => page.getByLabel("Name of the building").count()).toBe(3);
    await place.fill(`${LEFT + 220} ${TOP - 120}`);
    await place.press("Enter");
    await page.getByRole("button", { name: "Put a rectangle there" }).click();
    await expect.poll(() => page.getByLabel("Name of the building").count()).toBe(4);
  });
});
