import { fileURLToPath } from "node:url";
import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { type House, openHouse, type Visit } from "../helpers/harness.ts";
import {
  bagsWhen,
  chosen,
  inMore,
  json,
  mapIsIdle,
  open,
  openBlock,
  openDemo,
  planIsSized,
  samplePlan,
} from "../helpers/screen.ts";
import { soundTags, tiff, tiffBytes } from "../helpers/tiff-bytes.ts";

const RASTERS = fileURLToPath(new URL("../fixtures/rasters/", import.meta.url));

let house: House;
let visit: Visit;
let page: Page;

beforeAll(async () => {
  house = await openHouse();
  visit = await house.visit({ graphics: false });
  page = visit.page;
  await planIsSized(page);
});
afterAll(async () => {
  await house.close();
});
afterEach(() => {
  expect(visit.troubles).toEqual([]);
  expect(house.strayRequests).toEqual([]);
});

/* Elevation data made for these tests. */

/** Cells across and down, as in the teaching site. */
const SIDE = 256;

/** The tilted site, with cells of 0 in a strip from north to south. */
function withStripOf0() {
  const cells = Float32Array.from({ length: SIDE * SIDE }, (_, i) => {
    const column = i % SIDE;
    return column >= 126 && column < 131 ? 0 : 100 + 0.01 * (column + 0.5);
  });
  const tags = {
    ...soundTags(cells.byteLength),
    ...{ 256: tiff.short(SIDE), 257: tiff.short(SIDE), 278: tiff.short(SIDE) },
    33922: tiff.double(0, 0, 0, 319_872, 4_760_000 + SIDE, 0),
  };
  const buffer = Buffer.from(tiffBytes(tags, new Uint8Array(cells.buffer)));
  return { name: "county.tif", mimeType: "image/tiff", buffer };
}

describe("a person with a raster of their own", () => {
  it("is asked for the unit of its heights, has a plan of their own there, and gets the example back with undo", async () => {
    await open(page, [`${RASTERS}unit-none.tif`]);
    const asked = page.getByRole("alert", { name: "Unit of the heights" });
    await asked.getByRole("button", { name: "Feet (0.3048 m)" }).click();
    await asked.waitFor({ state: "detached" });
    await page.getByRole("region", { name: "Example" }).waitFor({ state: "detached" });
    expect(await page.getByRole("alert", { name: "Plan on other elevation data" }).count()).toBe(0);
    await mapIsIdle(page);
    expect(await page.locator(".alternative").count()).toBe(0);
    const water = page.getByLabel("Sized-for water elevation", { exact: true }).first();
    expect(await water.inputValue()).toBe("");
    await (await inMore(page, "Undo: Open unit-none.tif")).click();
    await expect.poll(() => page.locator(".alternative").count()).toBe(3);
    expect(await bagsWhen(page, (bags) => bags > 0)).toBe(17_879);
  });

  it("a lone 0 is missing data or ground as the person says, counted before by nobody, and asked once", async () => {
    await openDemo(page);
    const plan = samplePlan("tilted.geojson");
    plan.drystead.terrain = [];
    await open(page, json("tilted-plan.geojson", plan));
    await open(page, withStripOf0());

    const asked = page.getByRole("alert", { name: "Missing data or ground" });
    await asked
      .getByText('"county.tif": 1,280 cells (2 %) have exactly 0 m, 328.1 ft below')
      .waitFor();
    await chosen(page).getByText("waits for your answer in Elevation data").waitFor();
    expect(await page.locator(".alternative").getByText(/bags/).count()).toBe(0);

    await asked.getByRole("button", { name: "Missing data" }).click();
    await asked.waitFor({ state: "detached" });
    const around = await bagsWhen(page, (bags) => bags > 0);
    expect(await chosen(page).textContent()).toContain("bags for");

    await openBlock(page, "ground");
    const answer = page.getByText("Cells with exactly 0 m are missing data, as you said.");
    await answer.getByRole("button", { name: "Ask again" }).click();
    await asked.getByRole("button", { name: "Ground" }).click();
    const through = await bagsWhen(page, (bags) => bags > 1.1 * around);

    await page.waitForTimeout(1500);
    await page.close();
    page = await visit.again();
    expect(await bagsWhen(page, (bags) => bags > 0)).toBe(through);
    expect(await page.getByRole("alert", { name: "Missing data or ground" }).count()).toBe(0);
  });
});
