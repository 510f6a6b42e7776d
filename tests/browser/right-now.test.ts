import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { oneVisit } from "../helpers/one-visit.ts";
import {
  bags,
  bagsAtRest,
  bagsWhen,
  chosen,
  corners,
  mapIsIdle,
  openBlock,
  openPages,
  startDrag,
} from "../helpers/screen.ts";

/* Two visits, one of them without a map; every test leaves the plan as it found it. */
let page: Page;
const arrived = (opened: Page) => {
  page = opened;
};

async function setStage(text: string): Promise<void> {
  const stage = page.getByLabel("Sized-for stage", { exact: true }).first();
  await stage.fill(text);
  await stage.press("Enter");
}

/** Keeps requests of a verb from reaching the engine, as if it had no time for them. */
async function hold(verb: string): Promise<() => Promise<void>> {
  await page.evaluate((held) => {
    const kept = window as unknown as { post: Worker["postMessage"]; waiting: (() => void)[] };
    kept.post ??= Worker.prototype.postMessage;
    kept.waiting = [];
    Worker.prototype.postMessage = function post(message: { verb?: string }) {
      const send = () => kept.post.call(this, message);
      if (message.verb === held) kept.waiting.push(send);
      else send();
    };
  }, verb);
  return () =>
    page.evaluate(() => {
      const kept = window as unknown as { post: Worker["postMessage"]; waiting: (() => void)[] };
      Worker.prototype.postMessage = kept.post;
      for (const send of kept.waiting.splice(0)) send();
    });
}

const root = (state: string) => page.locator(`html[${state}]`);
const heading = (block: string) => page.locator(`[data-block="${block}"] > h2`);

const summary = (block: string) => heading(block).locator(".disclosure-summary");

interface LostContext {
  restoreContext(): void;
}

/** Takes the graphics context of both pictures away, as a driver that fails does. */
async function loseGraphics(): Promise<void> {
  await page.evaluate(() => {
    const kept = window as unknown as { lost: LostContext[] };
    kept.lost = [...document.querySelectorAll<HTMLCanvasElement>(".maplibregl-canvas")].map(
      (canvas) => {
        const extension = canvas.getContext("webgl2")!.getExtension("WEBGL_lose_context")!;
        extension.loseContext();
        return extension;
      },
    );
  });
}

async function giveGraphicsBack(): Promise<void> {
  await page.evaluate(() => {
    for (const each of (window as unknown as { lost: LostContext[] }).lost) each.restoreContext();
  });
}

/** The two pictures of the map one over the other, as the screen shows them. */
async function mapShot(): Promise<Buffer> {
  await mapIsIdle(page);
  await page.mouse.move(2, 2);
  return page.locator(".map-stack").screenshot();
}

/** Mean difference of two pictures of the same size, 0..255 a channel. */
async function difference(one: Buffer, other: Buffer): Promise<number> {
  const urls = [one, other].map((png) => `data:image/png;base64,${png.toString("base64")}`);
  return page.evaluate(async (pictures) => {
    const read = async (src: string) => {
      const image = new Image();
      image.src = src;
      await image.decode();
      const paper = new OffscreenCanvas(image.width, image.height).getContext("2d")!;
      paper.drawImage(image, 0, 0);
      return paper.getImageData(0, 0, image.width, image.height).data;
    };
    const [a, b] = await Promise.all(pictures.map(read));
    const sum = a!.reduce((total, value, i) => total + Math.abs(value - b![i]!), 0);
    return sum / a!.length;
  }, urls);
}

describe("when the graphics are lost and come back", () => {
  oneVisit({}, arrived);

  const lost = () => page.locator(".map-lost");

  it("says so meanwhile, and then shows the water of the stage that was set meanwhile", async () => {
    const atStart = await bagsAtRest(page);
    const before = await mapShot();
    await setStage("30 ft");
    await bagsWhen(page, (now) => now < atStart);
    const lowerBags = await bagsAtRest(page);
    const wanted = await mapShot();
    const apart = await difference(before, wanted);
    expect(apart).toBeGreaterThan(0.2);
    await page.keyboard.press("Control+z");
    await bagsWhen(page, (now) => now === atStart);

    await loseGraphics();
    await lost().waitFor();
    await setStage("30 ft");
    await bagsWhen(page, (now) => now === lowerBags);
    await page.waitForTimeout(1000);
    await giveGraphicsBack();
    await lost().waitFor({ state: "detached" });
    await expect
      .poll(async () => difference(await mapShot(), wanted), { timeout: 20_000 })
      .toBeLessThan(apart / 5);

    await page.locator(".map-stack").scrollIntoViewIfNeeded();
    const [corner] = await corners(page);
    await startDrag(page, corner!, { x: corner!.x + 30, y: corner!.y + 30 });
    await page.mouse.up();
    await bagsWhen(page, (now) => now !== lowerBags);
    await page.keyboard.press("Control+z");
    await page.keyboard.press("Control+z");
    await bagsWhen(page, (now) => now === atStart);
  });
});

describe("what needs no map", () => {
  oneVisit({ graphics: false }, arrived);

  describe("while the plan as it stands is not counted yet", () => {
    it("greys the bags, says no verdict of the former plan, moves nothing, and gives no pages", async () => {
      const atStart = await bagsAtRest(page);
      await root('data-verdicts="current"').waitFor();
      expect(await chosen(page).locator(".alternative-verdict > span").isVisible()).toBe(true);
      for (const block of ["time", "checks", "holding"]) {
        expect(await summary(block).isVisible()).toBe(true);
      }
      const number = page.locator(".bags > .figure");
      const placeOf = () => number.boundingBox();
      const place = await placeOf();

      const release = await hold("size");
      await setStage("32 ft");
      await root('data-sizing="counting"').waitFor();
      expect(await bags(page)).toBe(atStart);
      const styleOf = (element: Element, pseudo: string) =>
        getComputedStyle(element, pseudo).content;
      expect(
        await number.evaluate((element) => Number(getComputedStyle(element).opacity)),
      ).toBeLessThan(1);
      expect(await page.locator(".bags-words").evaluate(styleOf, "::after")).toBe('"counting"');
      for (const block of ["time", "checks", "holding"]) {
        expect(await summary(block).isVisible()).toBe(false);
        expect(await heading(block).locator("button").evaluate(styleOf, "::after")).toBe(
          '"counting"',
        );
      }
      for (const former of [".crest-fact", ".profile-plot"]) {
        const opacity = (element: Element) => Number(getComputedStyle(element).opacity);
        expect(await page.locator(former).evaluate(opacity)).toBeLessThan(1);
      }
      expect(await chosen(page).locator(".alternative-verdict > span").isVisible()).toBe(false);
      expect(await page.locator(".profile-plot").textContent()).toContain("Water at 31.0");
      const then = (await placeOf())!;
      for (const side of ["x", "y", "width", "height"] as const) {
        expect(Math.abs(then[side] - place![side])).toBeLessThan(1);
      }

      await openPages(page);
      const sheets = page.getByRole("dialog", { name: "Print" });
      await sheets.getByText("Counting the plan").waitFor();
      expect(await sheets.getByRole("button", { name: /Print|CSV|GeoJSON/ }).count()).toBe(0);
      await release();
      await sheets.getByRole("button", { name: "Print" }).waitFor();
      expect(await sheets.textContent()).toContain("32.0 ft");
      await page.keyboard.press("Escape");
      await root('data-sizing="current"').waitFor();
      expect(await bagsAtRest(page)).toBeGreaterThan(atStart);
      await page.keyboard.press("Control+z");
      await bagsWhen(page, (now) => now === atStart);
    });
  });

  /* Last, because the ring that is found stays in the plan. */
  describe("while a search is under way", () => {
    it("sizes the plan for another stage before the search has answered", async () => {
      await bagsAtRest(page);
      await openBlock(page, "line");
      await page.getByLabel("Stay within").selectOption({ label: "800 ft" });
      const events = await page.evaluate(async () => {
        const happened: string[] = [];
        const post = Worker.prototype.postMessage;
        const search = new Promise<void>((ended) => {
          Worker.prototype.postMessage = function posted(message) {
            if (message.verb !== "findRing") return post.call(this, message);
            Worker.prototype.postMessage = post;
            this.addEventListener("message", ({ data }) => {
              if (data.id !== message.id || data.kind === "progress") return;
              happened.push("the search ended");
              ended();
            });
            const { timeCapMs: _, ...request } = message.request;
            post.call(this, { ...message, request: { ...request, judge: "proof" } });
            happened.push("the search began");
            slider.stepDown(5);
            slider.dispatchEvent(new Event("input", { bubbles: true }));
          };
        });
        const card = document.querySelector('.alternative[data-chosen="true"]')!;
        const figures = () => card.querySelector(".alternative-figures")?.textContent;
        const former = figures();
        const watch = new MutationObserver(() => {
          if (figures() === former) return;
          watch.disconnect();
          happened.push("the plan was sized");
        });
        watch.observe(card, { subtree: true, childList: true, characterData: true });
        const slider = document.querySelector<HTMLInputElement>(
          '[data-block="water"] .stage-slider input[type="range"]',
        )!;
        document.querySelector<HTMLButtonElement>(".find-ring-button")!.click();
        await search;
        return happened;
      });
      expect(events).toEqual(["the search began", "the plan was sized", "the search ended"]);
    });
  });
});
