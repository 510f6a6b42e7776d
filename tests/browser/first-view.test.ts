import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { seriousViolations } from "../helpers/axe.ts";
import { cutTexts } from "../helpers/first-view.ts";
import { oneVisit } from "../helpers/one-visit.ts";
import { bagsWhen, exampleIsTaken, inMore, mapIsIdle, openBlock } from "../helpers/screen.ts";

let page: Page;

describe("what needs no map", () => {
  oneVisit({ width: 1440, height: 900, theme: "light", graphics: false }, (arrived) => {
    page = arrived;
    return exampleIsTaken(page);
  });

  it("says that the map is not shown, what goes on and what to do, and still what must be fixed", async () => {
    const note = page.locator(".map-place").getByRole("alert");
    expect(await note.textContent()).toMatch(/no WebGL 2 graphics.*not empty ground.*reload/);
    expect(await page.locator(".verdict").textContent()).toContain("Must fix");
    expect(await page.locator(".notices [data-code]").count()).toBe(0);
    expect(await page.locator(".map-scale, .map-controls").count()).toBe(0);
    expect(await seriousViolations(page, [".map-place"])).toEqual([]);
  });

  describe.each([
    [1440, 900],
    [1280, 720],
  ] as const)("at %i x %i", (width, height) => {
    it("no text of the bar or the worksheet is cut, with six lines and each row open too", async () => {
      await page.setViewportSize({ width, height });
      await mapIsIdle(page);
      expect(await cutTexts(page, ".top-bar, .worksheet")).toEqual([]);
      const rows = await page
        .locator(".disclosure-row")
        .evaluateAll((all) => all.map((each) => each.getAttribute("data-block")!));
      expect(rows).toEqual(["ground", "line", "section", "holding", "time", "checks"]);
      for (const row of rows) {
        await openBlock(page, row);
        await page.waitForTimeout(250);
        expect(await cutTexts(page, ".worksheet")).toEqual([]);
      }
      await openBlock(page, "ground");
      const copy = page.getByRole("button", { name: /^Copy line/ });
      for (let lines = 4; lines <= 6; lines++) {
        await page.getByRole("button", { name: "Find a line" }).click();
        await copy.click();
        await page
          .locator(".alternative")
          .nth(lines - 1)
          .waitFor();
        await bagsWhen(page, (bags) => bags === 17_879);
        await page.locator('html[data-verdicts="current"]').waitFor();
        expect(await cutTexts(page, ".top-bar")).toEqual([]);
      }
      const widths = await page
        .locator(".alternative")
        .evaluateAll((all) => all.map((each) => each.getBoundingClientRect().width));
      expect(Math.min(...widths)).toBeGreaterThanOrEqual(194);
      for (let lines = 5; lines >= 3; lines--) {
        await page.keyboard.press("Control+z");
        await page.locator(".alternative").nth(lines).waitFor({ state: "detached" });
      }
    });
  });

  /** What one press opens, and what is in reach then. */
  const BEHIND: readonly (readonly [string, () => Promise<void>, readonly string[]])[] = [
    [
      "Find a line",
      () => page.getByRole("button", { name: "Find a line" }).click(),
      [
        "Find the ring that needs the fewest bags",
        "Draw a ring",
        "Draw a tied-in line",
        "Ring at a setback",
        "Copy line A",
      ],
    ],
    [
      "More",
      () => page.getByRole("button", { name: "More", exact: true }).click(),
      [
        ...["Undo", "Redo", "Open plan or elevation data", "Save plan", "New plan"],
        ...["Example plans", "Night screen", "All lines on the map", "Base map", "Keys"],
        "Sources and limits",
      ],
    ],
    [
      "the chosen card",
      () => page.locator('.alternative[data-chosen="true"] .alternative-face').click(),
      ["Rename", "Copy", "Move left", "Move right", "Delete"],
    ],
    [
      "Gauge and forecast",
      () => openBlock(page, "gauge-and-forecast"),
      [
        "Through the forecast",
        "Gauge and datum",
        "Fall along the river",
        "Where it goes",
        "NDSU-11",
      ],
    ],
    [
      "All figures",
      () => page.getByRole("button", { name: "All figures" }).click(),
      [
        "Whole job, person-hours",
        "Published tables",
        "Not reached overland",
        "Length over the height limit",
      ],
    ],
    [
      "Elevation data",
      () => openBlock(page, "ground"),
      ["Open elevation data files", "Accuracy of the elevations", "Vertical datum"],
    ],
    [
      "Line",
      () => openBlock(page, "line"),
      [
        ...[
          "Tied-in line",
          "No-go area",
          "Import",
          "Improve A",
          "Make the ring",
          "Corners",
          "Reaches",
        ],
        "Why here?",
      ],
    ],
    ["Levee type", () => openBlock(page, "section"), ["Crown", "Height limit", "Roll width"]],
    [
      "Stability, seepage, pumps",
      () => openBlock(page, "holding"),
      [
        "Friction, weight, uplift",
        "Soil, poly sheeting, fill",
        "Margin and spares",
        "Room to raise",
      ],
    ],
    ["Crew and time", () => openBlock(page, "time"), ["Forecast", "People and hours"]],
    ["All checks", () => openBlock(page, "checks"), ["4.4 ft, limit 4.0 ft", "Always"]],
    [
      "the leave stage",
      () => page.getByRole("button", { name: /leave stage$/ }).click(),
      ["Stage to leave at", "Hour to leave", "What sets it"],
    ],
  ];

  describe("two steps from the first view", () => {
    it("begins with every row closed", async () => {
      const open = page.locator('.disclosure-row[data-open="true"] > h2 > button');
      for (const title of await open.all()) await title.click();
      expect(await open.count()).toBe(0);
    });

    it.each(BEHIND)("are enough for what is behind %s", async (_, open, labels) => {
      const places = labels.map((label) => page.getByText(label).filter({ visible: true }).first());
      const inSight = await Promise.all(places.map((place) => place.isVisible()));
      expect(inSight, labels.join(", ")).toContain(false);
      await open();
      for (const place of places) await place.waitFor({ timeout: 5000 });
      await page.keyboard.press("Escape");
    });
  });

  it("says to a crew too that the map is not shown, draws no scale of nothing, and goes on to the next stake", async () => {
    await (await inMore(page, /^Field/)).click();
    const field = page.getByRole("dialog", { name: "Field views" });
    await field.getByRole("button", { name: "Map", exact: true }).click();
    expect(await field.getByRole("alert").textContent()).toMatch(/map is not shown.*Water may lie/);
    expect(await field.locator(".crew-scale, .crew-map-keys, .crew-show").count()).toBe(0);
    await field.getByRole("button", { name: "Stake 0+25" }).click();
    await field.getByRole("button", { name: "Open stake" }).click();
    expect(await field.locator(".crew-station").textContent()).toBe("0+25");
  });
});
