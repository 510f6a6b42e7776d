import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { oneVisit } from "../helpers/one-visit.ts";
import { bags, inMore, json, mapIsIdle, open, planIsSized, samplePlan } from "../helpers/screen.ts";
import { soundTags, tiff, tiffBytes } from "../helpers/tiff-bytes.ts";

let page: Page;
let again: () => Promise<Page>;
oneVisit({ width: 1440, height: 900, graphics: false }, (arrived, visit) => {
  page = arrived;
  again = visit.again;
});

const SIDE = 160;
/** Ground that rises evenly to the north from 100 m, far from the demo: 160 m square. */
function ownGround() {
  const cells = Float32Array.from(
    { length: SIDE * SIDE },
    (_, i) => 100 + (SIDE - 1 - Math.floor(i / SIDE)) / 40,
  );
  const tags = {
    ...soundTags(cells.byteLength),
    ...{ 256: tiff.short(SIDE), 257: tiff.short(SIDE), 278: tiff.short(SIDE) },
  };
  const buffer = Buffer.from(tiffBytes(tags, new Uint8Array(cells.buffer)));
  return { name: "own.tif", mimeType: "image/tiff", buffer };
}

const band = () => page.getByRole("region", { name: "Example" });
const more = async (name: string) => (await inMore(page, name)).click();

async function savedPlan() {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.keyboard.press("Control+s"),
  ]);
  return JSON.parse(readFileSync(await download.path(), "utf8"));
}

/** Waits until the example is sized on its own ground: its verdict is that of no other. */
async function exampleIsBack(): Promise<void> {
  await page
    .locator(".verdict")
    .getByText(/^Too high at 4\+09/)
    .waitFor();
  await planIsSized(page);
}

async function rename(title: string): Promise<void> {
  await page.getByLabel("Title of the plan").fill(title);
  await page.keyboard.press("Enter");
}

describe("the example that the program opens on", () => {
  it("says that it is one, until the band is put away; each example opened brings it back", async () => {
    expect(await band().textContent()).toContain("an invented farm");
    await band().getByRole("button", { name: "Keep exploring" }).click();
    expect(await band().count()).toBe(0);
    await more("Example plans");
    await page.getByRole("button", { name: "Tilted plane, for teaching" }).click();
    await band().waitFor();
    expect(await band().textContent()).toContain("an invented plane, for teaching");
    await more("Undo: Open Tilted plane, for teaching");
    await page.locator(".alternative").nth(2).waitFor();
    await planIsSized(page);
    expect(await bags(page)).toBe(17_879);
  });

  it("gives way at once to ground of one's own, and nothing of it stays in the plan", async () => {
    await rename("Tried out");
    await band().getByLabel("Elevation data of your own").setInputFiles(ownGround());
    await band().waitFor({ state: "detached" });
    await mapIsIdle(page);
    expect(await page.getByRole("alert", { name: "Plan on other elevation data" }).count()).toBe(0);
    const { drystead, features } = await savedPlan();
    expect(features).toEqual([]);
    expect(drystead.terrain).toEqual([{ name: "own.tif", bytes: ownGround().buffer.length }]);
    expect(drystead.practice.people).toBeNull();
    expect(drystead.holding.soil).toBe("unknown");
    expect(drystead.time.forecast).toBeNull();
    expect(JSON.stringify(drystead)).not.toMatch(/invented|Tried out/i);
  });

  it("comes back as it was changed, on its own ground, with undo; and the own ground with redo", async () => {
    const notice = page.locator('[data-code="plan/example-left"]');
    expect(await notice.textContent()).toContain("Undo brings the example back with your changes");
    await more("Undo: Open own.tif");
    await exampleIsBack();
    expect(await bags(page)).toBe(17_879);
    expect(await page.getByLabel("Title of the plan").inputValue()).toBe("Tried out");
    expect(await notice.count()).toBe(0);
    await more("Redo: Open own.tif");
    await band().waitFor({ state: "detached" });
    expect((await savedPlan()).drystead.terrain[0].name).toBe("own.tif");
    await mapIsIdle(page);
    await more("Undo: Open own.tif");
    await exampleIsBack();
  });

  it("gives way to a plan of one's own, which is not measured against the example's ground", async () => {
    const plan = samplePlan("demo.geojson");
    plan.drystead.terrain = [{ name: "county.tif", bytes: 12 }];
    await open(page, json("mine.geojson", plan));
    await band().waitFor({ state: "detached" });
    const firstRun = page.getByRole("region", { name: "First steps" });
    await firstRun.getByText(`was drawn on county.tif`).waitFor();
    expect(await page.getByRole("alert", { name: "Plan on other elevation data" }).count()).toBe(0);
    expect(await page.locator(".alternative").getByText(/bags/).count()).toBe(0);
    await more("Undo: Open mine.geojson");
    await exampleIsBack();
  });

  it("is still one after the page was closed and opened", async () => {
    await page.locator('[data-stored="yes"]').waitFor();
    await page.close();
    page = await again();
    await band().waitFor();
    await planIsSized(page);
  });
});
