import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { type Gdal, startGdal } from "../helpers/gdal.ts";
import { type House, openHouse, type Visit } from "../helpers/harness.ts";
import {
  bags,
  checkInFull,
  chosen,
  inMore,
  json,
  mapIsIdle,
  open,
  openDemo,
  planIsSized,
  sample,
  samplePlan,
} from "../helpers/screen.ts";

const COLUMNS = 80;
const ROWS = 60;
/** Upper left corner, US survey feet in Minnesota South (EPSG:26851), and cells of 10 ft. */
const [LEFT, TOP, CELL] = [2_700_000, 1_000_000, 10];

/* One visit, back at the demo before each test. */
let house: House;
let visit: Visit;
let page: Page;
let gdal: Gdal;
let folder = "";
let raster = "";

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "drystead-county-"));
  gdal = await startGdal();
  raster = await countyRaster();
  house = await openHouse();
  visit = await house.visit({ graphics: false });
  page = visit.page;
  await planIsSized(page);
});
afterAll(async () => {
  await house.close();
  gdal.remove();
  rmSync(folder, { recursive: true, force: true });
});
afterEach(() => {
  expect(visit.troubles).toEqual([]);
  expect(house.strayRequests).toEqual([]);
});

/** Made for this test by GDAL: a plane from 868 to 902, in feet, of which the file says nothing. */
async function countyRaster(): Promise<string> {
  const rows = Array.from({ length: ROWS }, (_, row) =>
    Array.from({ length: COLUMNS }, (_, column) =>
      (868 + (34 * (row + column)) / (ROWS + COLUMNS - 2)).toFixed(3),
    ).join(" "),
  );
  const head = `ncols ${COLUMNS}\nnrows ${ROWS}\nxllcorner ${LEFT}\nyllcorner ${TOP - ROWS * CELL}\ncellsize ${CELL}\n`;
  writeFileSync(join(gdal.folder, "county.asc"), `${head}NODATA_value -9999\n${rows.join("\n")}\n`);
  await gdal.translate("county.asc", ["-of", "GTiff", "-a_srs", "EPSG:26851"], "county");
  const path = join(folder, "county.tif");
  writeFileSync(path, readFileSync(join(gdal.folder, "county.tif")));
  return path;
}

/** A plan saved on that raster: its ring in the middle, its water, and what was said of the raster. */
async function countyPlan(ground: object) {
  const at = (column: number, row: number) => [LEFT + column * CELL, TOP - row * CELL];
  const ring = [at(30, 20), at(50, 20), at(50, 40), at(30, 40)];
  const places = await gdal.transform([...ring, ring[0]!], "EPSG:26851", "EPSG:4326");
  const coordinates = places.map(([longitude, latitude]) => [longitude, latitude]);
  return {
    type: "FeatureCollection",
    drystead: {
      ...{ version: 1, title: "County", ground },
      water: { by: "elevation", elevationM: 884 * 0.3048, freeboardM: 0.3048 },
      terrain: [{ name: "county.tif", bytes: readFileSync(raster).length }],
    },
    features: [
      {
        type: "Feature",
        properties: { role: "alignment", name: "Ring" },
        geometry: { type: "Polygon", coordinates: [coordinates] },
      },
    ],
  };
}

const question = () => page.getByRole("alert", { name: "Unit of the heights" });

describe("a state plane raster in feet that does not state its vertical unit", () => {
  it("reopens with its saved plan without asking, and no other unit is taken", async () => {
    const plan = await countyPlan({ verticalUnit: "us-survey-foot", rmseM: 0.1, datumNote: "" });
    writeFileSync(join(folder, "county.geojson"), JSON.stringify(plan));
    await open(page, [raster, join(folder, "county.geojson")]);
    await page.locator(".alternative").nth(1).waitFor({ state: "detached" });
    await planIsSized(page);
    expect(await question().count()).toBe(0);
    expect(await bags(page)).toBeGreaterThan(1000);
  });

  it("shows under each choice what it makes of the heights beside the water; the wrong one gives no count", async () => {
    await openDemo(page);
    await open(page, json("county.geojson", await countyPlan({})));
    await open(page, [raster]);
    await question().waitFor();
    const under = (unit: string) => question().locator(`[data-unit="${unit}"] span`);
    expect(await under("us-survey-foot").textContent()).toBe("868 to 902 ft; your water 884.0 ft");
    expect(await under("metre").textContent()).toBe(
      "868 to 902 m; your water 269.4 m, 599 m below all of it",
    );
    await question().getByRole("button", { name: "Meters" }).click();
    await chosen(page).getByText("not known: no ground below the water").waitFor();
    const notice = page.getByRole("note", { name: "Water and ground" }).first();
    expect(await notice.textContent()).toMatch(/Check first the unit/);
    expect(await page.locator(".worksheet").textContent()).not.toMatch(
      /\b0 bags|overtops above|To be pumped|(?<!Leave )in time/,
    );
    const check = await checkInFull(page, "water-level");
    expect(await check.getAttribute("data-severity")).toBe("stop");
    await (await inMore(page, /^Undo: Open elevation data/)).waitFor();
    const saved = await countyPlan({ verticalUnit: "us-survey-foot" });
    await open(page, json("county.geojson", saved));
    await planIsSized(page);
    expect(await bags(page)).toBeGreaterThan(1000);
  });
});

describe("what was said of one raster", () => {
  it("goes when another is opened, with a notice, and comes back with undo", async () => {
    await openDemo(page);
    const plan = samplePlan("demo.geojson");
    plan.drystead.ground = { rmseM: 0.4, verticalUnit: null, datumNote: "NGVD 29" };
    const buffer = readFileSync(sample("demo.tif"));
    plan.drystead.terrain = [{ name: "first.tif", bytes: buffer.length }];
    await open(page, json("typed.geojson", plan));
    await open(page, { name: "first.tif", mimeType: "image/tiff", buffer });
    await planIsSized(page);
    await open(page, { name: "again.tif", mimeType: "image/tiff", buffer });
    const notice = page.locator('[data-code="ground/other-data"]');
    await notice.waitFor();
    expect(await notice.textContent()).toContain('vertical datum "NGVD 29"');
    expect(await savedGround()).toMatchObject({ rmseM: null, datumNote: "" });
    await (await inMore(page, "Undo: Open elevation data")).click();
    expect(await savedGround()).toMatchObject({ rmseM: 0.4, datumNote: "NGVD 29" });
  });
});

describe("a plan of another place", () => {
  it("says how far away the elevation data lies before any total, and what to do", async () => {
    await openDemo(page);
    const buffer = readFileSync(sample("demo.tif"));
    await open(page, { name: "first.tif", mimeType: "image/tiff", buffer });
    await page.getByRole("region", { name: "Example" }).waitFor({ state: "detached" });
    const second = join(folder, "second.tif");
    copyFileSync(raster, second);
    const plan = await countyPlan({ verticalUnit: "us-survey-foot" });
    plan.drystead.terrain[0]!.name = "second.tif";
    await open(page, json("county.geojson", plan));
    const alert = page.getByRole("alert", { name: "Plan on other elevation data" });
    await alert.waitFor();
    expect(await alert.textContent()).toMatch(/elevation data lies \d+ mi \w+ of the plan/);
    expect(await alert.getByRole("button", { name: "Start a new plan here" }).count()).toBe(0);
    await chosen(page).getByText("not on this elevation data").waitFor();
    expect(await page.locator(".worksheet").textContent()).not.toMatch(
      /\d bags|(?<!Leave )in time|no ground/,
    );
    await alert.getByLabel("Open the elevation data of the plan").setInputFiles([second]);
    await alert.waitFor({ state: "detached" });
    await planIsSized(page);
    await mapIsIdle(page);
    expect(await bags(page)).toBeGreaterThan(1000);
  });

  it("has its elevation data opened by itself when it was open on this page before", async () => {
    await openDemo(page);
    await open(page, json("county.geojson", await countyPlan({ verticalUnit: "us-survey-foot" })));
    await page.locator(".alternative").nth(1).waitFor({ state: "detached" });
    await planIsSized(page);
    expect(await bags(page)).toBeGreaterThan(1000);
    expect(await page.getByRole("alert", { name: "Plan on other elevation data" }).count()).toBe(0);
  });
});

/** The ground's settings as the plan would be saved now. */
async function savedGround() {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.keyboard.press("Control+s"),
  ]);
  return JSON.parse(readFileSync(await download.path(), "utf8")).drystead.ground;
}
