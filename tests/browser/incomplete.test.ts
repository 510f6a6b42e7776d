import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { type House, openHouse, type Visit } from "../helpers/harness.ts";
import { overThePond } from "../helpers/over-the-pond.ts";
import { chosen, open, openPages, planIsSized } from "../helpers/screen.ts";

let house: House;
let visit: Visit;
let page: Page;

beforeAll(async () => {
  house = await openHouse();
  visit = await house.visit({ width: 1440, height: 900, graphics: false });
  page = visit.page;
  await planIsSized(page);
});
afterAll(async () => {
  await visit.leave();
  await house.close();
});

it("a line over a hole says for how much of it the bags are, wherever it stands beside others", async () => {
  await open(page, overThePond());
  const words = /^[\d,]+ bags for [\d,]+ of [\d,]+ ft; [\d,]+ ft have no elevation data$/;
  const figures = chosen(page).locator(".alternative-figures");
  await expect.poll(() => figures.textContent()).toMatch(words);
  const verdict = chosen(page).locator(".alternative-verdict");
  expect(await verdict.textContent()).toMatch(/[\d,]+ ft without elevation data/);
  expect(Number(await verdict.getAttribute("data-must-fix"))).toBeGreaterThan(0);
  expect(await page.locator(".bags").textContent()).not.toMatch(/fewer|more than/);

  await page.getByRole("button", { name: "Compare" }).click();
  const rows = page.locator("table.compare tbody tr");
  await expect.poll(() => rows.count()).toBe(3);
  const [part, ...others] = await rows.allTextContents();
  expect(part).toMatch(/bags for [\d,]+ of [\d,]+ ft; [\d,]+ ft have no elevation data/);
  expect(part).not.toMatch(/•|yes/);
  expect(part).toMatch(/at least [\d,]+ cu yd/);
  expect(others.join(" ")).toContain("•");
  expect(others.join(" ").replaceAll(/\bat \d+\+\d\d/g, "")).not.toMatch(/[+−][\d,]+/);
  expect(Number(await rows.first().locator("td").first().textContent())).toBeGreaterThan(0);
  await page.keyboard.press("Escape");

  await openPages(page);
  await page.locator(".sheet-page").first().waitFor();
  const bands = await page.locator(".sheet-page .sheet-band").allTextContents();
  expect(bands).toHaveLength(await page.locator(".sheet-page").count());
  for (const band of bands) {
    expect(band).toMatch(/^\d+ Must fix: .*The totals are not complete: [\d,]+ bags for /);
  }
  expect(visit.troubles).toEqual([]);
  expect(house.strayRequests).toEqual([]);
});
