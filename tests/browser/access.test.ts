import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { seriousViolations } from "../helpers/axe.ts";
import { oneVisit } from "../helpers/one-visit.ts";
import { inMore, mapIsIdle, openPages } from "../helpers/screen.ts";

const SIZES = [
  { width: 1440, height: 900 },
  { width: 844, height: 390 },
  { width: 390, height: 844 },
  { width: 1280, height: 720 },
] as const;

let page: Page;

async function flipTheme(): Promise<void> {
  const before = await page.locator("html").getAttribute("data-theme");
  await (await inMore(page, "Night screen")).click();
  await page.locator(`html:not([data-theme="${before}"])`).waitFor();
  await page.keyboard.press("Escape");
}

/** What the rules find in both themes, by theme; leaves the theme it found. */
async function violations(): Promise<Record<string, readonly string[]>> {
  const found: Record<string, readonly string[]> = {};
  for (let k = 0; k < 2; k++) {
    const theme = (await page.locator("html").getAttribute("data-theme")) ?? "";
    found[theme] = await seriousViolations(page);
    await flipTheme();
  }
  return found;
}

const NONE = { light: [], dark: [] };

describe("the screen as it starts, with its map", () => {
  oneVisit({}, (arrived) => {
    page = arrived;
  });

  it.each(SIZES)(
    "at $width x $height nothing scrolls sideways, and both themes keep the axe rules",
    async (size) => {
      await page.setViewportSize(size);
      await mapIsIdle(page);
      const overflow = () =>
        page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect(await overflow()).toBeLessThanOrEqual(0);
      expect(await violations()).toEqual(NONE);
    },
  );

  it("gives the map about two fifths of 1280 x 720", async () => {
    const map = (await page.locator(".map-place").boundingBox())!;
    expect(map.width * map.height).toBeGreaterThan(0.41 * 1280 * 720);
  });

  it("lends the sheets a picture of the map with its ground, in the colours of the day though it is dark", async () => {
    await flipTheme();
    expect(await page.locator("html").getAttribute("data-theme")).toBe("dark");
    await openPages(page);
    await page.getByLabel("Map and elevation data").check();
    const picture = page.getByAltText("Map of the site with ground, water and lines");
    await picture.waitFor();
    const shares = await picture.evaluate(async (element) => {
      const image = element as HTMLImageElement;
      await image.decode();
      const canvas = document.createElement("canvas");
      [canvas.width, canvas.height] = [120, 80];
      const brush = canvas.getContext("2d")!;
      brush.drawImage(image, 0, 0, 120, 80);
      const { data } = brush.getImageData(0, 0, 120, 80);
      let [white, dark] = [0, 0];
      for (let i = 0; i < data.length; i += 4) {
        const sum = data[i]! + data[i + 1]! + data[i + 2]!;
        if (sum > 3 * 250) white += 1;
        if (sum < 3 * 70) dark += 1;
      }
      return { white: white / 9600, dark: dark / 9600 };
    });
    expect(shares.white).toBeLessThan(0.1);
    expect(shares.dark).toBeLessThan(0.2);
  });
});

describe("what is opened from there", () => {
  oneVisit({ graphics: false }, async (arrived) => {
    page = arrived;
    await page.setViewportSize({ width: 1280, height: 720 });
  });

  it("keeps the rules in both themes with each row of the worksheet open, and all that is in it", async () => {
    const rows = page.locator(".disclosure-row > h2 > button");
    expect(await rows.count()).toBe(6);
    for (let k = 0; k < 2; k++) {
      for (const row of await rows.all()) {
        if ((await row.getAttribute("aria-expanded")) === "false") await row.click();
        const closed = page.locator(
          "details:not([open]) > summary:visible, .disclosure-part [aria-expanded=false]:visible, .more-button[aria-expanded=false], .verdict [aria-expanded=false]",
        );
        while ((await closed.count()) > 0) await closed.first().click();
        expect(await seriousViolations(page, [".worksheet"])).toEqual([]);
      }
      await flipTheme();
    }
  });

  it.each(["dialog of lines side by side", "sheets"] as const)(
    "keeps the rules in both themes in the %s",
    async (place) => {
      for (let k = 0; k < 2; k++) {
        if (place === "sheets") {
          await openPages(page);
          await page.locator(".sheets").getByRole("button", { name: "Print" }).waitFor();
        } else {
          await page.getByRole("button", { name: "Compare" }).click();
          await page.getByRole("dialog").waitFor();
        }
        expect(await seriousViolations(page)).toEqual([]);
        await page.keyboard.press("Escape");
        await flipTheme();
      }
    },
  );
});
