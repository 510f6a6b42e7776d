import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { oneVisit } from "../helpers/one-visit.ts";
import { corners, mapIsIdle, openPages, planIsSized } from "../helpers/screen.ts";

let page: Page;
oneVisit({ coarse: true }, (arrived) => {
  page = arrived;
});

/** Sizes of windows, CSS pixels: phones both ways, and screens at a zoom of 200 and 400 %. */
const SIZES = [
  [844, 390],
  [390, 844],
  [360, 640],
  [720, 450],
  [640, 360],
  [384, 512],
  [320, 256],
] as const;

const ROOMS = [
  ["Worksheet", ".worksheet-place"],
  ["Along the line", ".profile-place"],
  ["Cross-section", ".section-place"],
] as const;

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

async function boxOf(place: string): Promise<Box> {
  return (await page.locator(place).boundingBox())!;
}

/** Whether two boxes share more than an edge. */
function overlap(a: Box, b: Box): boolean {
  const isApart =
    a.x + a.width <= b.x + 0.5 ||
    b.x + b.width <= a.x + 0.5 ||
    a.y + a.height <= b.y + 0.5 ||
    b.y + b.height <= a.y + 0.5;
  return !isApart;
}

/** Brings a place into view and asks whether a press in its middle reaches it. */
async function isReachable(place: string): Promise<boolean> {
  const element = page.locator(place);
  await element.scrollIntoViewIfNeeded();
  return element.evaluate((own) => {
    const { left, top, width, height } = own.getBoundingClientRect();
    const hit = document.elementFromPoint(left + width / 2, top + height / 2);
    return hit !== null && own.contains(hit);
  });
}

describe.each(SIZES)("at %i x %i", (width, height) => {
  it("the map, the tabs and each room lie beside each other, and every tab works", async () => {
    await page.setViewportSize({ width, height });
    await mapIsIdle(page);
    const tabs = page.locator(".panel-tabs");
    for (const [name, place] of ROOMS) {
      const tab = tabs.getByRole("button", { name, exact: true });
      if ((await tab.getAttribute("aria-pressed")) !== "true") await tab.click();
      await page.locator(place).waitFor({ state: "visible" });
      const [map, bar, room] = [
        await boxOf(".map-room"),
        await boxOf(".panel-tabs"),
        await boxOf(place),
      ];
      for (const box of [map, room]) {
        expect(Math.min(box.width, box.height)).toBeGreaterThan(100);
      }
      expect([overlap(map, bar), overlap(map, room), overlap(bar, room)]).toEqual([
        false,
        false,
        false,
      ]);
      for (const each of [".map-canvas", ".panel-tabs", place]) {
        expect(await isReachable(each), `${each} with ${name} open`).toBe(true);
      }
    }
    await tabs.getByRole("button", { name: "Cross-section", exact: true }).click();
    await page.locator(".section-place").waitFor({ state: "hidden" });
    expect((await boxOf(".map-room")).height).toBeGreaterThan(150);
    const sideways = await page.evaluate(
      () => document.documentElement.scrollWidth - window.innerWidth,
    );
    expect(sideways).toBeLessThanOrEqual(0);
  });
});

it("on a phone the plan is as large as the low map lets it be, once Fit is pressed", async () => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.locator(".panel-tabs").getByRole("button", { name: "Worksheet", exact: true }).click();
  await page.getByRole("button", { name: "Fit", exact: true }).click();
  await mapIsIdle(page);
  const map = await boxOf(".map-canvas");
  const highPx = async () => {
    const ys = (await corners(page)).map(({ y }) => y);
    return Math.max(...ys) - Math.min(...ys);
  };
  await expect.poll(highPx, { timeout: 5000 }).toBeGreaterThan(0.35 * map.height);
  await mapIsIdle(page);
  for (const { x, y } of await corners(page)) {
    expect(x > map.x && x < map.x + map.width && y > map.y && y < map.y + map.height).toBe(true);
  }
});

it("on a phone the legend waits behind a button, and no sheet scrolls sideways", async () => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.reload();
  await planIsSized(page);
  const legend = page.getByRole("region", { name: "Legend" });
  expect(await legend.getByText("over limit").isVisible()).toBe(false);
  await legend.getByRole("button", { name: "Legend" }).click();
  expect(await legend.getByText("over limit").isVisible()).toBe(true);
  await openPages(page);
  await page.getByRole("button", { name: "To the stakes" }).click();
  const sheets = page.locator(".sheets");
  expect(await sheets.evaluate((room) => room.scrollWidth - room.clientWidth)).toBe(0);
  for (const head of await sheets.locator(".title-block").all()) {
    const box = (await head.boundingBox())!;
    expect(box.x + box.width).toBeLessThanOrEqual(390);
  }
});
