import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { SECTIONS } from "../../shared/sections.ts";
import { leveeTypeText } from "../../shared/words/levee-types.ts";
import { unitsOf } from "../../shared/words/units.ts";
import { seriousViolations } from "../helpers/axe.ts";
import { oneVisit } from "../helpers/one-visit.ts";
import { bagsAtRest, bagsWhen, buildStretch, openBlock } from "../helpers/screen.ts";

const boxed = SECTIONS.find(({ fill }) => fill === "sand")!;
const narrow = SECTIONS.find(({ id }) => id === "two-bag-wall")!;

/* One visit, as a person makes it: a ring of one section, and two stretches that are built otherwise. */
let page: Page;
let atStart: number;
oneVisit({ graphics: false }, async (arrived) => {
  page = arrived;
  atStart = await bagsAtRest(page);
  await openBlock(page, "line", "reaches");
});

/** Long enough for a whole plan to be sized on a busy machine. */
const SOON = { timeout: 15_000 };
const reach = (n: number) => page.locator(`[data-reach="${n}"]`);
const quantities = () => page.locator('[data-block="quantities"]');
const cut = () => page.locator(".section-room");

describe("a stretch of the demo's ring beside the shed", () => {
  it("is built of boards and sand in one step, and is seen so on worksheet and section", async () => {
    await buildStretch(page, "1+00", "2+50", boxed.id);
    await bagsWhen(page, (bags) => bags < atStart);
    await expect
      .poll(() => reach(2).locator(".reach-takes").textContent(), SOON)
      .toMatch(/plywood/);
    expect(await page.locator("[data-reach]").count()).toBe(3);
    await expect.poll(() => cut().textContent(), SOON).toContain(boxed.name);
    expect(await cut().locator(".section-plywood").getAttribute("d")).toMatch(/^M/);
    expect(await cut().locator(".section-bag").count()).toBe(0);
  });

  it("has its materials counted, by reach too, each with its make-up", async () => {
    const taken = quantities().locator(".amount", { hasText: "Plywood" }).locator(".figure");
    await page.mouse.move(2, 2);
    await taken.first().focus();
    const makeup = page.locator("#makeup");
    await expect.poll(() => makeup.textContent(), SOON).toContain("panels");
    await page.keyboard.press("Escape");
    await quantities().getByRole("button", { name: "All figures" }).click();
    const rows = quantities().locator(".reach-table tbody tr");
    expect(await rows.count()).toBe(3);
    expect(await rows.nth(1).textContent()).toContain(boxed.name);
    expect(await rows.nth(0).textContent()).not.toContain(boxed.name);
  });

  it("moves with its ends, and takes a figure of its own", async () => {
    const before = await reach(2).locator(".reach-takes").textContent();
    await reach(2).getByLabel("End of reach 2").fill("2+20");
    await page.keyboard.press("Enter");
    await expect
      .poll(() => reach(3).locator(".reach-where").textContent(), SOON)
      .toContain("2+20 to");
    await expect.poll(() => reach(2).locator(".reach-takes").textContent(), SOON).not.toBe(before);
    await page.keyboard.press("Escape");
    await reach(2).locator("summary").click();
    const sand = () => reach(2).locator(".reach-takes").textContent();
    const wide = await sand();
    await reach(2).locator('[data-figure="widthRatio"] input').fill("1");
    await page.keyboard.press("Enter");
    await expect.poll(sand, SOON).not.toBe(wide);
    expect(await reach(2).locator(".reach-cautions li").count()).toBe(
      leveeTypeText("plywood-box", unitsOf("us")).cautions.length,
    );
  });
});

describe("a tight squeeze beside the barn", () => {
  it("is found, and leads to a section that fits, which settles it", async () => {
    await openBlock(page, "section");
    await page.locator('[data-setting="practice.setbackM"] input').fill("10 ft");
    await page.keyboard.press("Enter");
    await openBlock(page, "checks");
    const tight = page.locator('.checks [data-check="setback"]', { hasText: "Barn" });
    await expect.poll(() => tight.count(), SOON).toBe(1);
    await page.locator('html[data-verdicts="current"]').waitFor();
    await tight.locator(".check-face").click();
    await tight.getByRole("button", { name: "Build this stretch otherwise" }).click();
    const form = page.getByRole("form", { name: "Build a stretch otherwise" });
    await expect.poll(() => form.getByLabel("Stretch from").inputValue(), SOON).toMatch(/^5\+10/);
    await form.getByRole("button", { name: "Build so" }).click();
    await expect.poll(() => page.locator("[data-reach]").count(), SOON).toBe(5);
    await openBlock(page, "checks");
    await page.locator(".checks .check").first().waitFor();
    await expect.poll(() => tight.count(), SOON).toBe(0);
    await openBlock(page, "line");
    for (const _ of ["the stretch", "the setback"]) await page.keyboard.press("Control+z");
    await expect.poll(() => page.locator("[data-reach]").count(), SOON).toBe(3);
  });
});

describe("a narrow wall in a ditch, the river forecast a foot higher", () => {
  it("is said to calculate below what is required", async () => {
    await buildStretch(page, "4+00", "4+50", narrow.id);
    await page.locator('[data-setting="water.stageM"] input').fill("32");
    await page.keyboard.press("Enter");
    await openBlock(page, "checks");
    const sliding = page.locator('.checks [data-check="sliding"][data-severity="stop"]');
    await expect
      .poll(() => sliding.allTextContents(), SOON)
      .toContainEqual(expect.stringMatching(/^4\+.*sliding 0\.\d of 1\.5/));
    await expect.poll(() => cut().textContent(), SOON).toContain(narrow.name);
    expect(await cut().locator(".section-bag-over").count()).toBeGreaterThan(0);
  });

  it("makes no serious violation of the axe rules", async () => {
    expect(await seriousViolations(page)).toEqual([]);
  });

  it("is taken back step by step to the plan as it was", async () => {
    await openBlock(page, "line");
    for (const _ of ["the stage", "the wall"]) await page.keyboard.press("Control+z");
    await expect.poll(() => page.locator("[data-reach]").count(), SOON).toBe(3);
    for (const _ of ["its figure", "its end", "the stretch"])
      await page.keyboard.press("Control+z");
    await bagsWhen(page, (bags) => bags === atStart);
    expect(await page.locator("[data-reach]").count()).toBe(1);
  });
});
