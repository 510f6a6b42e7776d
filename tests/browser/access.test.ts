import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { seriousViolations } from "../helpers/axe.ts";
import { type House, openHouse, type Visit } from "../helpers/harness.ts";
import { openPages, planIsSized } from "../helpers/screen.ts";

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(async () => {
  await house.close();
});

describe.each(["light", "dark"] as const)("the %s screen", (theme) => {
  let visit: Visit;
  let page: Page;
  beforeAll(async () => {
    visit = await house.visit({ theme });
    page = visit.page;
    await planIsSized(page);
  });
  afterAll(async () => {
    await visit.leave();
  });
  afterEach(() => {
    expect(visit.troubles).toEqual([]);
    expect(house.strayRequests).toEqual([]);
  });

  it("gives the map about two fifths of 1280 x 720, and nothing scrolls sideways", async () => {
    const map = (await page.locator(".map-place").boundingBox())!;
    expect(map.width * map.height).toBeGreaterThan(0.41 * 1280 * 720);
    const overflow = await page.evaluate(
      () => document.documentElement.scrollWidth - window.innerWidth,
    );
    expect(overflow).toBeLessThanOrEqual(0);
  });

  it("has no serious violation of the axe rules as it starts", async () => {
    expect(await seriousViolations(page)).toEqual([]);
  });

  it("nor with each row of the worksheet open in its turn, and all that is in it", async () => {
    const rows = page.locator(".disclosure-row > h2 > button");
    expect(await rows.count()).toBe(6);
    for (const row of await rows.all()) {
      await row.click();
      const closed = page.locator(
        "details:not([open]) > summary:visible, .disclosure-part [aria-expanded=false]:visible, .more-button[aria-expanded=false], .verdict [aria-expanded=false]",
      );
      while ((await closed.count()) > 0) await closed.first().click();
      expect(await seriousViolations(page, [".worksheet"])).toEqual([]);
    }
  });

  it("nor with the alternatives compared", async () => {
    await page.getByRole("button", { name: "Compare" }).click();
    await page.getByRole("dialog").waitFor();
    expect(await seriousViolations(page)).toEqual([]);
    await page.keyboard.press("Escape");
  });

  it("nor on the sheets", async () => {
    await openPages(page);
    await page.locator(".sheets-bar").getByRole("button", { name: "Print" }).waitFor();
    expect(await seriousViolations(page)).toEqual([]);
  });
});
