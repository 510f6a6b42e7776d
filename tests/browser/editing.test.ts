import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { type House, openHouse, type Visit } from "./harness.ts";
import {
  type At,
  bags,
  bagsOf,
  bagsWhen,
  chosen,
  corners,
  mapIsIdle,
  planIsSized,
  startDrag,
} from "./screen.ts";

let house: House;
let visit: Visit;
let page: Page;

beforeAll(async () => {
  house = await openHouse();
});
afterAll(async () => {
  await house.close();
});
beforeEach(async () => {
  visit = await house.visit();
  page = visit.page;
  await planIsSized(page);
});
afterEach(async () => {
  await visit.leave();
  expect(visit.troubles).toEqual([]);
  expect(house.strayRequests).toEqual([]);
});

/** A corner of the drawn ring that lies on open ground, and a place further out. */
async function northWestCorner(): Promise<{ from: At; to: At }> {
  const from = (await corners(page)).reduce((a, b) => (a.x + a.y < b.x + b.y ? a : b));
  return { from, to: { x: from.x - 40, y: from.y - 50 } };
}

describe("the first start", () => {
  it("opens on a finished plan: three alternatives, sized, their checks said", async () => {
    const cards = page.locator(".alternative");
    expect(await cards.count()).toBe(3);
    const [a, b, c] = await Promise.all([0, 1, 2].map((n) => bagsOf(cards.nth(n))));
    expect(a).toBeGreaterThan(b! * 1.2);
    expect(c).toBeGreaterThan(b!);
    expect(await page.locator('[data-check="over-limit"]').count()).toBeGreaterThan(0);
    expect(
      (await page.getByText("Pellow farm").count()) +
        (await page.locator(".plan-title input").count()),
    ).toBeGreaterThan(0);
  });

  it("draws ground, water and levee, not an empty map", async () => {
    const colours = await page.evaluate(() => {
      const canvas = document.querySelector<HTMLCanvasElement>(".map-canvas canvas");
      if (!canvas) return 0;
      const small = new OffscreenCanvas(64, 64);
      const paper = small.getContext("2d");
      paper?.drawImage(canvas, 0, 0, 64, 64);
      const { data } = paper!.getImageData(0, 0, 64, 64);
      const seen = new Set<number>();
      for (let i = 0; i < data.length; i += 4) {
        seen.add(((data[i]! >> 4) << 8) | ((data[i + 1]! >> 4) << 4) | (data[i + 2]! >> 4));
      }
      return seen.size;
    });
    expect(colours).toBeGreaterThan(12);
  });

  it("flips between alternatives by one key, and totals, checks and profile follow", async () => {
    const first = await bags(page);
    await page.keyboard.press("]");
    const second = await bagsWhen(page, (now) => now !== first);
    expect(second).toBeLessThan(first);
    expect(await page.locator('[data-check="over-limit"]').count()).toBe(0);
    await page.keyboard.press("[");
    expect(await bagsWhen(page, (now) => now !== second)).toBe(first);
  });
});

describe("dragging a corner", () => {
  it("moves the totals while the button is down, and is one step of undo and redo", async () => {
    const before = await bags(page);
    const { from, to } = await northWestCorner();
    await startDrag(page, from, to);
    const during = await bagsWhen(page, (now) => now !== before);
    await page.mouse.move(to.x - 30, to.y - 30, { steps: 4 });
    const further = await bagsWhen(page, (now) => now !== during);
    await page.mouse.up();
    expect(further).toBeGreaterThan(before);
    const after = await bags(page);

    await page.keyboard.press("Control+z");
    expect(await bagsWhen(page, (now) => now === before)).toBe(before);
    await page.keyboard.press("Control+Shift+z");
    expect(await bagsWhen(page, (now) => now === after)).toBe(after);
  });

  it("is kept when the page is loaded again in mid-drag", async () => {
    const before = await bags(page);
    const { from, to } = await northWestCorner();
    await startDrag(page, from, to);
    const during = await bagsWhen(page, (now) => now !== before);
    await page.reload();
    await planIsSized(page);
    expect(await bagsWhen(page, (now) => now === during)).toBe(during);
    await page.keyboard.press("Control+z");
    expect(await bagsWhen(page, (now) => now === before)).toBe(before);
  });

  it("is kept when the tab is closed and the program opened again", async () => {
    const before = await bags(page);
    const { from, to } = await northWestCorner();
    await startDrag(page, from, to);
    await page.mouse.up();
    const after = await bagsWhen(page, (now) => now !== before);
    await page.close({ runBeforeUnload: true });
    page = await visit.again();
    await planIsSized(page);
    expect(await bagsWhen(page, (now) => now === after)).toBe(after);
  });
});

describe("the stage slider", () => {
  it("moves totals and checks, and one slide is one step of undo", async () => {
    const before = await bags(page);
    const slider = page.getByRole("slider", { name: "Stage" });
    const box = (await slider.boundingBox())!;
    const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    await startDrag(page, middle, { x: middle.x + box.width / 6, y: middle.y });
    const during = await bagsWhen(page, (now) => now > before);
    await page.mouse.move(middle.x + box.width / 4, middle.y, { steps: 4 });
    await bagsWhen(page, (now) => now > during);
    await page.mouse.up();
    await page.keyboard.press("Control+z");
    expect(await bagsWhen(page, (now) => now === before)).toBe(before);
  });

  it("moves by the keyboard", async () => {
    const before = await bags(page);
    await page.getByRole("slider", { name: "Stage" }).focus();
    await page.keyboard.press("ArrowLeft");
    expect(await bagsWhen(page, (now) => now !== before)).toBeLessThan(before);
  });
});

describe("drawing a ring by mouse", () => {
  it("makes a new alternative that is sized and chosen, and undo takes it away", async () => {
    const old = await corners(page);
    const left = Math.min(...old.map(({ x }) => x)) - 30;
    const right = Math.max(...old.map(({ x }) => x)) + 30;
    const top = Math.min(...old.map(({ y }) => y)) - 30;
    const bottom = Math.max(...old.map(({ y }) => y)) + 30;
    await page.getByRole("button", { name: "Add an alternative" }).click();
    await page.getByRole("button", { name: "Draw a ring" }).click();
    for (const [x, y] of [
      [left, top],
      [right, top],
      [right, bottom],
    ] as const) {
      await page.mouse.click(x, y);
    }
    await page.mouse.click(left, bottom);
    await page.keyboard.press("Enter");
    await page.locator(".alternative").nth(3).waitFor();
    await chosen(page)
      .getByText(/^[\d,]+ bags/)
      .waitFor();
    await mapIsIdle(page);
    expect(await page.locator(".alternative").nth(3).getAttribute("data-chosen")).toBe("true");
    expect(await corners(page)).toHaveLength(4);
    expect(await bags(page)).toBeGreaterThan(5000);
    await page.keyboard.press("Control+z");
    await page.locator(".alternative").nth(3).waitFor({ state: "detached" });
  });
});
