import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { POND } from "../../sample-terrain/layout.ts";
import { placedOnSite } from "../../sample-terrain/plans.ts";
import { type House, openHouse, type Visit } from "./harness.ts";
import {
  bags,
  bagsOf,
  bagsWhen,
  chosen,
  corners,
  json,
  open,
  planIsSized,
  sample,
  samplePlan,
} from "./screen.ts";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));

let house: House;
let visit: Visit;
let page: Page;

beforeAll(async () => {
  house = await openHouse();
});
afterAll(async () => {
  await house.close();
});
beforeEach(async () => {
  visit = await house.visit();
  page = visit.page;
  await planIsSized(page);
});
afterEach(async () => {
  await visit.leave();
  expect(visit.troubles).toEqual([]);
  expect(house.strayRequests).toEqual([]);
});

describe("opening files", () => {
  it("a raster and its plan: the screen shows the bags that the terminal program counts", async () => {
    await open(page, [sample("tilted.tif"), sample("tilted.geojson")]);
    await page.locator(".alternative").nth(2).waitFor({ state: "detached" });
    await bagsWhen(page, (now) => now > 40_000);
    const out = execFileSync(
      process.execPath,
      [
        ...["--import", "tsx", "workers/command.ts", "size"],
        ...["sample-terrain/tilted.geojson", "--terrain", "sample-terrain/tilted.tif"],
      ],
      { cwd: ROOT, encoding: "utf8" },
    );
    const { alternatives } = JSON.parse(out);
    for (const n of [0, 1]) {
      expect(await bagsOf(page.locator(".alternative").nth(n))).toBe(alternatives[n].totals.bags);
    }
  });

  it("a line over a hole in the data is flagged, on its card and in the checks", async () => {
    const plan = samplePlan("demo.geojson");
    const [east, north] = POND.at;
    const across = [
      placedOnSite([east - 60, north]),
      placedOnSite([east + 60, north]),
      placedOnSite([east + 60, north + 60]),
      placedOnSite([east - 60, north + 60]),
    ];
    const ring = plan.features.find(
      (feature: { properties: { role: string } }) => feature.properties.role === "alignment",
    );
    ring.geometry.coordinates = [[...across, across[0]]];
    await open(page, json("over-the-pond.geojson", plan));
    await chosen(page).getByText("gap in data").waitFor();
    const check = page.locator('[data-check="no-ground"]').first();
    expect(await check.getAttribute("data-severity")).toBe("stop");
  });
});

describe("files that are refused leave the plan as it is", () => {
  const refused = async (file: Parameters<typeof open>[1], code: RegExp) => {
    const before = await bags(page);
    const places = await corners(page);
    await open(page, file);
    const alert = page.locator(".notice-error").first();
    await alert.waitFor();
    expect(await alert.getAttribute("data-code")).toMatch(code);
    expect((await alert.textContent())?.length).toBeGreaterThan(40);
    expect(await bags(page)).toBe(before);
    expect(await corners(page)).toEqual(places);
    expect(await page.locator(".alternative").count()).toBe(3);
    await page.getByRole("button", { name: "Dismiss this message" }).first().click();
    await alert.waitFor({ state: "detached" });
  };

  it("a raster cut off, a text named .tif, a damaged and a newer plan", async () => {
    const whole = readFileSync(sample("demo.tif"));
    const mimeType = "image/tiff";
    await refused(
      { name: "cut.tif", mimeType, buffer: whole.subarray(0, 20_000) },
      /^(raster|ground)\//,
    );
    await refused(
      { name: "letter.tif", mimeType, buffer: Buffer.from("Dear county") },
      /^(raster|ground)\//,
    );
    const text = readFileSync(sample("demo.geojson"));
    const plan = { name: "cut.geojson", mimeType: "application/geo+json" };
    await refused({ ...plan, buffer: text.subarray(0, text.length / 2) }, /^plan\//);
    const newer = { ...samplePlan("demo.geojson"), drystead: { version: 99 } };
    await refused(json("newer.geojson", newer), /^plan\/newer-version$/);
  });
});
