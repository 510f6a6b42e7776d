import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { seriousViolations } from "../helpers/axe.ts";
import { oneVisit } from "../helpers/one-visit.ts";
import {
  bags,
  bagsAtRest,
  bagsOf,
  bagsWhen,
  chosen,
  mapIsIdle,
  openBlock,
  planIsSized,
} from "../helpers/screen.ts";

/* One visit, as a person makes it; every test leaves the plan as it found it. */
let page: Page;
let atStart: number;
oneVisit({ graphics: false }, async (arrived) => {
  page = arrived;
  atStart = await bagsAtRest(page);
  await openBlock(page, "line");
});

const cards = () => page.locator(".alternative");
const panel = () => page.locator(".find-ring");

async function undo(): Promise<void> {
  await page.keyboard.press("Control+z");
}

/** Presses the button and waits until the ring stands in the plan and has been judged. */
async function findTheRing(): Promise<void> {
  await panel().getByRole("button", { name: "Find the ring" }).click();
  await expect.poll(() => cards().count(), { timeout: 30_000 }).toBe(4);
  await panel()
    .getByText(/^Estimate, not a proof/)
    .waitFor({ timeout: 60_000 });
  await planIsSized(page);
}

async function startAgain(): Promise<void> {
  await undo();
  await expect.poll(() => cards().count()).toBe(3);
  await bagsWhen(page, (now) => now === atStart);
}

describe("finding the ring round some of the buildings", () => {
  it("is one of the acts in the bar, and goes round those that are ticked", async () => {
    await panel().getByLabel("Barn").uncheck();
    await panel().getByLabel("Machine shed").uncheck();
    await page.getByRole("button", { name: "Find a line" }).click();
    await page.getByRole("button", { name: "Find the ring that needs the fewest bags" }).click();
    await expect.poll(() => cards().count(), { timeout: 30_000 }).toBe(4);
    await planIsSized(page);
    expect(await bagsAtRest(page)).toBeLessThan(0.5 * atStart);
    await panel().getByLabel("Barn").check();
    await panel().getByLabel("Machine shed").check();
    await startAgain();
  });
});

describe("with the ring found", () => {
  let found: number;

  it("stands beside the drawn one, chosen, with at least a fifth fewer bags; undo takes it away", async () => {
    await findTheRing();
    found = await bagsAtRest(page);
    expect(await chosen(page).locator(".alternative-named").textContent()).toBe("Found ring");
    expect(await bagsOf(cards().first())).toBe(atStart);
    expect(found).toBeLessThan(0.8 * atStart);
    const words = await panel().locator(".saving").textContent();
    expect(words).toContain("D against A, Drawn ring");
    expect(words).toContain(`${(atStart - found).toLocaleString("en-US")} fewer`);
    await undo();
    await expect.poll(() => cards().count()).toBe(3);
    await page.keyboard.press("Control+Shift+z");
    await expect.poll(() => cards().count()).toBe(4);
    expect(await bagsWhen(page, (now) => now === found)).toBe(found);
  });

  it("has no serious violation of the axe rules, with the cost of a move shown", async () => {
    await panel()
      .getByLabel(/^Why here/)
      .check();
    await panel()
      .getByText(/toward the water/)
      .waitFor();
    expect(await seriousViolations(page, [".worksheet", ".profile-room"])).toEqual([]);
    const tab = page.getByRole("tab", { name: "Move sideways" });
    expect(await tab.getAttribute("aria-selected")).toBe("true");
    const bars = page.locator(".sideways path:is(.sideways-water, .sideways-land)");
    expect(
      (await bars.evaluateAll((all) => all.map((each) => each.getAttribute("d")))).join(""),
    ).toMatch(/^M.*v[1-9]/);
    await panel()
      .getByLabel(/^Why here/)
      .uncheck();
  });

  it("follows the stage with the slider, all of it one step of undo", async () => {
    await panel().getByLabel("Follow the stage").check();
    const slider = page.getByRole("slider", { name: "Stage" });
    await slider.focus();
    const summary = page.locator('[data-block="line"] h2 .disclosure-summary');
    const before = await summary.textContent();
    for (let presses = 0; presses < 6; presses++) await page.keyboard.press("ArrowRight");
    await bagsWhen(page, (now) => now > 1.15 * found);
    await expect.poll(() => summary.textContent(), { timeout: 30_000 }).not.toBe(before);
    const searching = panel().getByText("searching", { exact: true });
    await expect.poll(() => searching.count(), { timeout: 30_000 }).toBe(0);
    const followed = await bagsAtRest(page);
    expect(await searching.count()).toBe(0);
    await undo();
    await bagsWhen(page, (now) => now === found);
    expect(await summary.textContent()).toBe(before);
    await page.keyboard.press("Control+Shift+z");
    await bagsWhen(page, (now) => now === followed);
    await undo();
    await bagsWhen(page, (now) => now === found);
    await startAgain();
  });
});

describe("improving a drawn line", () => {
  it("needs fewer bags, leaves a pinned corner where it is, and is one step of undo", async () => {
    await openBlock(page, "corners");
    const longitude = () => page.getByLabel(/^East of corner 1$/);
    const pinnedAt = await longitude().inputValue();
    await page.getByRole("button", { name: "Pin corner 1", exact: true }).click();
    const isPinned = () =>
      page.getByRole("button", { name: "Pin corner 1", exact: true }).getAttribute("aria-pressed");
    await expect.poll(isPinned).toBe("true");
    await panel().getByRole("button", { name: "Improve A" }).click();
    await panel()
      .getByText(/^Improved: .* fewer than as drawn/)
      .waitFor({ timeout: 30_000 });
    await mapIsIdle(page);
    const improved = await bagsWhen(page, (now) => now < atStart);
    expect(improved).toBeLessThan(0.9 * atStart);
    expect(await longitude().inputValue()).toBe(pinnedAt);
    expect(await isPinned()).toBe("true");
    await undo();
    await bagsWhen(page, (now) => now === atStart);
    await undo();
    await expect.poll(isPinned).toBe("false");
    expect(await bags(page)).toBe(atStart);
  });
});
