import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { oneVisit } from "../helpers/one-visit.ts";
import { mapIsIdle, open, openBlock, openPages, planIsSized } from "../helpers/screen.ts";
import { soundTags, tiff, tiffBytes } from "../helpers/tiff-bytes.ts";

/* One visit: a person opens ground of their own over the demo, which starts a plan there. */
const SLOW_MS = 60_000;

let page: Page;
oneVisit({ width: 1440, height: 900, graphics: false }, (arrived) => {
  page = arrived;
});

const CELLS = 160;
const LOWEST_M = 100;
const MIDDLE = "482080 4982920";
/** Ground that rises evenly to the north from 100 m, 1 m in 40: 160 m square, far from the demo. */
function ownGround() {
  const cells = Float32Array.from(
    { length: CELLS * CELLS },
    (_, i) => LOWEST_M + (CELLS - 1 - Math.floor(i / CELLS)) / 40,
  );
  const bytes = new Uint8Array(cells.buffer);
  const tags = {
    ...soundTags(bytes.length),
    ...{ 256: tiff.short(CELLS), 257: tiff.short(CELLS), 278: tiff.short(CELLS) },
  };
  return { name: "own.tif", mimeType: "image/tiff", buffer: Buffer.from(tiffBytes(tags, bytes)) };
}

const heading = (name: string) =>
  page.locator("aside").getByRole("button", { name: new RegExp(`^${name}\\b`) });
const setting = (path: string) =>
  page.locator(`[data-block="time"] [data-setting="${path}"] input`);
const verdict = () => page.locator(".time-verdict");

async function type(path: string, text: string): Promise<void> {
  await setting(path).fill(text);
  await setting(path).press("Enter");
}

/** A building in the middle of the ground by its coordinates there, and the ring round it. */
async function findRing(): Promise<void> {
  const steps = page.getByRole("region", { name: "Steps" });
  await steps.getByRole("button", { name: "Type coordinates" }).click();
  await page.getByLabel("Coordinates: lon, lat or grid x, y").fill(MIDDLE);
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: "Put a rectangle there" }).click();
  await steps.getByRole("button", { name: "Find the ring" }).click();
  await page.locator(".alternative").first().waitFor();
}

/** 101.5 m at the start of work, 102.5 m two days later. */
const ROWS = [
  "2026-04-06 07:00 -05:00, 101.5",
  "2026-04-07 07:00 -05:00, 102",
  "2026-04-08 07:00 -05:00, 102.5",
];

describe("a new plan over ground of one's own", () => {
  it("has nothing of the demo's crew, soil or river", async () => {
    await open(page, ownGround());
    await page.getByRole("region", { name: "Example" }).waitFor({ state: "detached" });
    await mapIsIdle(page);
    await heading("Crew and time").click();
    for (const path of ["practice.people", "time.startAt", "time.shifts"]) {
      expect(await setting(path).inputValue()).toBe("");
    }
    expect(await setting("practice.people").getAttribute("placeholder")).toBe("typically 60");
    const text = (await page.locator("body").textContent())!;
    expect(text).toContain("type people, start of work and shifts");
    expect(text).not.toMatch(/60 people|1 shift of|Invented for the demo|Tue 7 Apr/);
  });

  it("says that time is not known, on the cards, in Time, side by side and on paper", async () => {
    await page.getByLabel("Sized-for water elevation", { exact: true }).first().fill("102.5 m");
    await page.keyboard.press("Enter");
    await findRing();
    await planIsSized(page);
    await openBlock(page, "time");
    const rows = page.getByLabel("One row for each time: time, level, and low and high if given");
    await rows.fill(["time, elevation_m", ...ROWS].join("\n"));
    await page.getByRole("button", { name: "Take this forecast" }).click();
    const words = "Time not known: no crew; type people, start of work and shifts.";
    await expect.poll(() => verdict().textContent(), { timeout: SLOW_MS }).toBe(words);
    const figures = page.locator(".alternative");
    await expect
      .poll(() => figures.textContent(), { timeout: SLOW_MS })
      .toMatch(/(?:hours|time) not known/);
    for (const part of ['[data-block="time"]', ".alternative", '[data-block="checks"]']) {
      const said = (await page.locator(part).allTextContents()).join(" ");
      expect(said).not.toMatch(/\b(is|only) in time|^in time|done \d+ h before/i);
    }
    await openPages(page);
    const sheet = page.getByRole("region", { name: "Build sequence" }).first();
    expect(await sheet.textContent()).toContain(words);
    expect(await sheet.textContent()).not.toMatch(/(?<!leave )in time\b/i);
    await page.getByRole("button", { name: "Back to the plan" }).first().click();
    await sheet.waitFor({ state: "detached" });
  });

  it("is timed once people, start and shifts are typed or taken, and not before the last of them", async () => {
    await type("practice.people", "80");
    await expect
      .poll(() => verdict().textContent(), { timeout: SLOW_MS })
      .toBe("Time not known: no start of work; type start of work and shifts.");
    await page.getByRole("button", { name: "Start with the forecast's first row" }).click();
    await expect
      .poll(() => verdict().textContent(), { timeout: SLOW_MS })
      .toBe("Time not known: no shifts; type shifts.");
    await page.getByRole("button", { name: "Use 2 for Shifts in 24 hours" }).click();
    await expect
      .poll(() => verdict().textContent(), { timeout: SLOW_MS })
      .not.toContain("ot known");
    expect(await page.locator(".time-result").textContent()).toMatch(
      /Daylight, first day\s*06:\d\d to 19:\d\d/,
    );
  });
});
