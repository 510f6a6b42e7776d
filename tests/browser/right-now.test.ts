import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { type House, openHouse, type Visit } from "./harness.ts";
import { bagsAtRest, bagsWhen, planIsSized } from "./screen.ts";

/* One visit, as a person makes it; every test leaves the plan as it found it. */
let house: House;
let visit: Visit;
let page: Page;

beforeAll(async () => {
  house = await openHouse();
  visit = await house.visit();
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

/** Generous: a second is meant, on a machine that does nothing else. */
const MOST_MS = 4000;

describe("while a search is under way", () => {
  it("sizes the plan for another stage, and the search goes on", async () => {
    const before = await bagsAtRest(page);
    await page.locator('[data-block="line"] h2 button').click();
    await page.getByLabel("Stay within").selectOption({ label: "800 ft" });
    await page.locator(".find-ring-button").click();
    await page.locator(".busy").waitFor();
    const stage = page.getByLabel("Forecast stage", { exact: true }).first();
    await stage.fill("30 ft");
    await stage.press("Enter");
    const waited = await page.evaluate(async (former) => {
      const startedAt = performance.now();
      const figures = () =>
        document.querySelector('.alternative[data-chosen="true"] .alternative-figures');
      const isFormer = () => figures()?.textContent?.startsWith(`${former} bags`);
      while (isFormer() && document.querySelector(".busy")) {
        await new Promise((resolve) => setTimeout(resolve, 10));
      }
      const isSearching = document.querySelector(".busy") !== null;
      return { ms: performance.now() - startedAt, isFormer: isFormer(), isSearching };
    }, before.toLocaleString("en-US"));
    expect(waited).toMatchObject({ isFormer: false, isSearching: true });
    expect(waited.ms).toBeLessThan(MOST_MS);
    await page.locator(".busy").getByRole("button", { name: "Cancel" }).click();
    await page.keyboard.press("Control+z");
    await bagsWhen(page, (now) => now === before);
  });
});
