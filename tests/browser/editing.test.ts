import type { CDPSession, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import type { Visit } from "../helpers/harness.ts";
import { oneVisit } from "../helpers/one-visit.ts";
import {
  type At,
  bags,
  bagsAtRest,
  bagsOf,
  bagsWhen,
  chosen,
  corners,
  inMore,
  mapIsIdle,
  openBlock,
  planIsSized,
  startDrag,
} from "../helpers/screen.ts";

/* Two visits, as a person makes them, the second without a map; every test leaves the plan as it found it. */
let visit: Visit;
let page: Page;
let atStart: number;
let finger: CDPSession;

/** A corner of the drawn ring that lies on open ground, and a place further out. */
async function northWestCorner(): Promise<{ from: At; to: At }> {
  await mapIsIdle(page);
  const from = (await corners(page)).reduce((a, b) => (a.x + a.y < b.x + b.y ? a : b));
  return { from, to: { x: from.x - 30, y: from.y - 30 } };
}

async function undoToStart(): Promise<void> {
  await page.keyboard.press("Control+z");
  await bagsWhen(page, (now) => now === atStart);
}

/** How many different colours, roughly, a small picture of the map has. */
async function coloursOfMap(): Promise<number> {
  const picture = await page.locator(".map-place").screenshot();
  return page.evaluate(async (png) => {
    const image = new Image();
    image.src = `data:image/png;base64,${png}`;
    await image.decode();
    const paper = new OffscreenCanvas(64, 64).getContext("2d");
    paper?.drawImage(image, 0, 0, 64, 64);
    const { data } = paper?.getImageData(0, 0, 64, 64) ?? { data: [] };
    const seen = new Set<number>();
    for (let i = 0; i < data.length; i += 4) {
      seen.add(((data[i]! >> 4) << 8) | ((data[i + 1]! >> 4) << 4) | (data[i + 2]! >> 4));
    }
    return seen.size;
  }, picture.toString("base64"));
}

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

describe("on the map", () => {
  oneVisit({}, async (arrived, visited) => {
    page = arrived;
    visit = visited;
    atStart = await bagsAtRest(page);
    finger = await page.context().newCDPSession(page);
  });

  describe("the first start", () => {
    it("opens on a finished plan: three alternatives, sized, their checks said", async () => {
      const cards = page.locator(".alternative");
      expect(await cards.count()).toBe(3);
      for (const n of [0, 1, 2]) {
        await cards
          .nth(n)
          .getByText(/^[\d,]+ bags/)
          .waitFor();
      }
      const [a, b, c] = await Promise.all([0, 1, 2].map((n) => bagsOf(cards.nth(n))));
      expect(a).toBeGreaterThan(b! * 1.2);
      expect(c).toBeGreaterThan(b!);
      await openBlock(page, "checks");
      await page.locator('.checks [data-check="over-limit"]').first().waitFor();
      expect(await page.getByLabel("Title of the plan").inputValue()).toContain("Pellow farm");
    });

    it("draws ground, water and levee, not an empty map", async () => {
      await expect.poll(() => coloursOfMap(), { timeout: 20_000 }).toBeGreaterThan(40);
    });

    it("flips between alternatives by one key, and totals and checks follow", async () => {
      await page.keyboard.press("]");
      const second = await bagsWhen(page, (now) => now !== atStart);
      expect(second).toBeLessThan(atStart);
      await expect
        .poll(() => page.locator('.checks [data-check="over-limit"]').count(), { timeout: 20_000 })
        .toBe(0);
      expect(await page.locator(".checks .check").count()).toBeGreaterThan(0);
      await page.keyboard.press("[");
      await bagsWhen(page, (now) => now === atStart);
    });
  });

  describe("dragging a corner", () => {
    it("moves the totals while the button is down, and is one step of undo and redo", async () => {
      const { from, to } = await northWestCorner();
      await startDrag(page, from, to);
      const during = await bagsWhen(page, (now) => now !== atStart);
      await page.mouse.move(to.x - 20, to.y - 20, { steps: 4 });
      await bagsWhen(page, (now) => now > during);
      await page.mouse.up();
      const after = await bagsAtRest(page);
      expect(after).toBeGreaterThan(atStart);

      await undoToStart();
      await page.keyboard.press("Control+Shift+z");
      await bagsWhen(page, (now) => now === after);
      await undoToStart();
    });
  });

  describe("drawing a ring by mouse", () => {
    it("makes a new alternative that is sized and chosen, and undo takes it away", async () => {
      await mapIsIdle(page);
      const old = await corners(page);
      const left = Math.min(...old.map(({ x }) => x)) - 20;
      const right = Math.max(...old.map(({ x }) => x)) + 20;
      const top = Math.min(...old.map(({ y }) => y)) - 20;
      const bottom = Math.max(...old.map(({ y }) => y)) + 20;
      await page.getByRole("button", { name: "Find a line" }).click();
      await page.getByRole("button", { name: "Draw a ring" }).click();
      for (const x of [left, right]) await page.mouse.click(x, top);
      for (const x of [right, left]) await page.mouse.click(x, bottom);
      await page.keyboard.press("Enter");
      const drawn = page.locator(".alternative").nth(3);
      await drawn.waitFor();
      await chosen(page)
        .getByText(/^[\d,]+ bags/)
        .waitFor();
      await mapIsIdle(page);
      expect(await drawn.getAttribute("data-chosen")).toBe("true");
      expect(await corners(page)).toHaveLength(4);
      expect(await bags(page)).toBeGreaterThan(5000);
      await page.keyboard.press("Control+z");
      await drawn.waitFor({ state: "detached" });
      await bagsWhen(page, (now) => now === atStart);
    });
  });

  describe("a finger on a corner", () => {
    it("moves the map where the corner was not tapped before, and leaves the plan alone", async () => {
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
      const before = await corners(page);
      const own = await northWest();
      await tap({ x: before[own]!.x - 60, y: before[own]!.y - 60 });
      await drag(before[own]!, { x: 30, y: 30 });
      expect((await moved(before)).every(({ x }) => x > 15)).toBe(true);
      expect(await bagsAtRest(page)).toBe(atStart);
    });
  });

  describe("what is being done is kept", () => {
    it("when the tab is closed in mid-drag and the program opened again, with its undo", async () => {
      const { from, to } = await northWestCorner();
      await startDrag(page, from, to);
      const during = await bagsAtRest(page);
      expect(during).not.toBe(atStart);
      await page.close({ runBeforeUnload: true });
      page = await visit.again();
      await planIsSized(page);
      await bagsWhen(page, (now) => now === during);
      await undoToStart();
    });
  });
});

describe("without a map", () => {
  oneVisit({ graphics: false }, async (arrived) => {
    page = arrived;
    atStart = await bagsAtRest(page);
  });

  describe("the stage slider", () => {
    it("moves the totals while it is held, and one slide is one step of undo", async () => {
      const slider = page.getByRole("slider", { name: "Stage" });
      await page.locator(".worksheet-rest").evaluate((rest) => rest.scrollTo(0, 0));
      await page.locator('.verdict[data-short="false"]').waitFor();
      await page.locator('html[data-verdicts="current"]').waitFor();
      // The slider lies under the verdict, which is drawn a frame later.
      await page.waitForTimeout(300);
      const box = (await slider.boundingBox())!;
      const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
      await startDrag(page, middle, { x: middle.x + box.width / 6, y: middle.y });
      const during = await bagsWhen(page, (now) => now > atStart);
      await page.mouse.move(middle.x + box.width / 4, middle.y, { steps: 4 });
      await bagsWhen(page, (now) => now > during);
      await page.mouse.up();
      await bagsAtRest(page);
      await undoToStart();
    });

    it("moves by the keyboard", async () => {
      await page.getByRole("slider", { name: "Stage" }).focus();
      await page.keyboard.press("ArrowLeft");
      expect(await bagsWhen(page, (now) => now !== atStart)).toBeLessThan(atStart);
      await undoToStart();
    });
  });
});
