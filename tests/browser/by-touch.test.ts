import type { CDPSession, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { oneVisit } from "../helpers/one-visit.ts";
import { type At, bagsAtRest, bagsWhen, corners, inMore, mapIsIdle } from "../helpers/screen.ts";

/* One visit with one finger; every test leaves the plan as it found it. */
let page: Page;
let finger: CDPSession;
oneVisit({}, async (arrived) => {
  page = arrived;
  finger = await page.context().newCDPSession(page);
});

async function touch(type: "touchStart" | "touchMove" | "touchEnd", at?: At): Promise<void> {
  await finger.send("Input.dispatchTouchEvent", { type, touchPoints: at ? [at] : [] });
}

async function tap(at: At): Promise<void> {
  await touch("touchStart", at);
  await touch("touchEnd");
}

async function drag(from: At, by: At): Promise<void> {
  const steps = 12;
  await touch("touchStart", from);
  for (let step = 1; step <= steps; step++) {
    await touch("touchMove", {
      x: from.x + (by.x * step) / steps,
      y: from.y + (by.y * step) / steps,
    });
  }
  await touch("touchEnd");
  await mapIsIdle(page);
}

/** The corner that lies furthest up and left, by index. */
async function northWest(): Promise<number> {
  const all = await corners(page);
  const sums = all.map(({ x, y }) => x + y);
  return sums.indexOf(Math.min(...sums));
}

/** How far each corner has moved on the page since. */
async function moved(before: readonly At[]): Promise<At[]> {
  const now = await corners(page);
  return now.map(({ x, y }, k) => ({ x: x - before[k]!.x, y: y - before[k]!.y }));
}

const undo = () => page.locator('[aria-label^="Undo: Move corner"]');

describe("a finger on a corner", () => {
  it("moves the map where the corner was not tapped before, and leaves the plan alone", async () => {
    const atStart = await bagsAtRest(page);
    const before = await corners(page);
    await drag(before[await northWest()]!, { x: 40, y: 30 });
    const by = await moved(before);
    expect(by[0]!.x).toBeGreaterThan(20);
    for (const each of by) {
      expect(Math.abs(each.x - by[0]!.x)).toBeLessThan(0.5);
      expect(Math.abs(each.y - by[0]!.y)).toBeLessThan(0.5);
    }
    expect(await bagsAtRest(page)).toBe(atStart);
    expect(await undo().count()).toBe(0);
  });

  it("moves that corner alone once it was tapped, as one step of undo", async () => {
    const atStart = await bagsAtRest(page);
    const before = await corners(page);
    const own = await northWest();
    await tap(before[own]!);
    await page.getByText("Drag it to move it").waitFor();
    await drag(before[own]!, { x: -30, y: -30 });
    await bagsWhen(page, (now) => now !== atStart);
    const by = await moved(before);
    for (const [k, each] of by.entries()) {
      if (k === own) expect(each.x).toBeLessThan(-20);
      else expect(Math.hypot(each.x, each.y)).toBeLessThan(0.5);
    }
    await (await inMore(page, /^Undo: Move corner/)).click();
    await bagsWhen(page, (now) => now === atStart);
  });

  it("moves the map again after a tap elsewhere", async () => {
    const atStart = await bagsAtRest(page);
    const before = await corners(page);
    const own = await northWest();
    await tap({ x: before[own]!.x - 60, y: before[own]!.y - 60 });
    await drag(before[own]!, { x: 30, y: 30 });
    expect((await moved(before)).every(({ x }) => x > 15)).toBe(true);
    expect(await bagsAtRest(page)).toBe(atStart);
  });
});
