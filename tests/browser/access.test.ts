import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults } from "axe-core";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type House, openHouse, type Visit } from "./harness.ts";
import { planIsSized } from "./screen.ts";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(async () => {
  await house.close();
});

async function seriousViolations(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  const results = await page.evaluate(() =>
    (window as unknown as { axe: { run: () => Promise<AxeResults> } }).axe.run(),
  );
  return results.violations
    .filter(({ impact }) => impact === "serious" || impact === "critical")
    .flatMap(({ id, nodes }) =>
      nodes.map((node) => `${id}: ${node.target.join(" ")} ${node.failureSummary ?? ""}`),
    );
}

async function inVisit(theme: "light" | "dark", work: (visit: Visit) => Promise<void>) {
  const visit = await house.visit({ theme, width: 1280, height: 720 });
  await planIsSized(visit.page);
  await work(visit);
  expect(visit.troubles).toEqual([]);
  expect(house.strayRequests).toEqual([]);
  await visit.leave();
}

describe.each(["light", "dark"] as const)("the %s screen", (theme) => {
  it("has no serious violation of the axe rules, closed and with every block open", async () => {
    await inVisit(theme, async ({ page }) => {
      expect(await seriousViolations(page)).toEqual([]);
      for (const summary of await page.locator("details:not([open]) > summary").all()) {
        if (await summary.isVisible()) await summary.click();
      }
      expect(await seriousViolations(page)).toEqual([]);
    });
  });
});

describe("at 1280 x 720", () => {
  it("the map has more than half the screen beside the worksheet, and nothing scrolls sideways", async () => {
    await inVisit("light", async ({ page }) => {
      const map = (await page.locator(".map-place").boundingBox())!;
      expect(map.width * map.height).toBeGreaterThan(0.5 * 1280 * 720);
      const overflow = await page.evaluate(
        () => document.documentElement.scrollWidth - window.innerWidth,
      );
      expect(overflow).toBeLessThanOrEqual(0);
    });
  });
});
