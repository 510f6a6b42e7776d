import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { HAZARDS } from "../../shared/words/watch.ts";
import { type House, openHouse, type Visit } from "../helpers/harness.ts";
import { FOREIGN, NEVER } from "../helpers/never-said.ts";
import { planIsSized } from "../helpers/screen.ts";

let house: House;
let visit: Visit;
let page: Page;

beforeAll(async () => {
  house = await openHouse();
  visit = await house.visit({ graphics: false });
  page = visit.page;
  await planIsSized(page);
});
afterAll(async () => {
  await visit.leave();
  await house.close();
});

/** What the trade says with a word that is otherwise not ours: numbered sheets, and sand weighed dry. */
const OURS = /Sheet \d of \d|[\d,]+ (?:tons|t) dry/g;

/** Every text and spoken name on the pages; titles of the documents cited are theirs. */
async function stringsOf(pages: Page): Promise<string[]> {
  return pages.locator(".sheet").evaluate((sheet) => {
    const found: string[] = [];
    const blocks = "p, li, td, th, dt, dd, h2, h3, text, title, figcaption";
    for (const each of sheet.querySelectorAll("*")) {
      if (each.closest(".sheet-sources")) continue;
      found.push(each.getAttribute("aria-label") ?? "", each.getAttribute("alt") ?? "");
      if (each.matches(blocks) && !each.querySelector(blocks)) found.push(each.textContent ?? "");
    }
    return found.map((text) => text.trim()).filter((text) => text !== "");
  });
}

/** The plan's number as the pages in either system of units have it. */
const numbers = new Set<string>();

describe.each(["us", "metric"] as const)("the pages in %s units", (system) => {
  beforeAll(async () => {
    const units = page.locator('input[name="unit-system"]');
    if (!(await units.nth(system === "us" ? 0 : 1).isChecked())) await page.keyboard.press("u");
    await planIsSized(page);
    await page.keyboard.press("p");
    await page.locator(".section-row figure svg").first().waitFor();
  });
  afterAll(() => page.keyboard.press("Escape"));

  it("are numbered sheets for crews, each page full and with the plan's number, and no office pages", async () => {
    const pages = await page.locator(".sheet-page").evaluateAll((all) =>
      all.map((each) => ({
        sheet: each.querySelector(".title-sheet strong")?.textContent,
        number: each.querySelector(".title-cells strong")?.textContent ?? "",
      })),
    );
    const sheets = [...new Set(pages.map(({ sheet }) => sheet))];
    expect(sheets).toEqual(sheets.map((_, n) => `Sheet ${n + 1} of ${sheets.length}`));
    expect(sheets.length).toBe(6);
    for (const { number } of pages) numbers.add(number);
    expect([...numbers].join()).toMatch(/^[0-9A-F]{4}-[0-9A-F]{2}$/);
    const overPx = () =>
      page.locator(".sheet-body").evaluateAll((bodies) =>
        Math.max(
          ...bodies.map((body) => {
            const last = body.lastElementChild!.getBoundingClientRect();
            return last.bottom - body.getBoundingClientRect().bottom;
          }),
        ),
      );
    await expect.poll(overPx).toBeLessThanOrEqual(1);
  });

  it("say on each page what must be fixed, and to the patrol the hazards, the deadliest first", async () => {
    const bands = await page.locator(".sheet-page .sheet-band").allTextContents();
    expect(bands).toHaveLength(await page.locator(".sheet-page").count());
    for (const band of bands) expect(band).toMatch(/^1 Must fix: .*over the height limit of/);
    const leave = await page.locator(".watch-leave").textContent();
    expect(leave).toMatch(/If the levee fails, water comes suddenly and fast, up to .* deep at/);
    const hazards = await page.locator(".watch-hazards li").allTextContents();
    expect(hazards).toEqual(HAZARDS.map(({ what, act }) => `${what}: ${act}`));
  });

  it("draw the plan at the scale that it states", async () => {
    const bar = page.locator(".plan-bar").first();
    const [lengthM, widthPx, words] = await bar.evaluate((element) => [
      Number(element.getAttribute("data-length-m")),
      (element as SVGGraphicsElement).getCTM()!.a * (element as SVGGraphicsElement).getBBox().width,
      element.parentElement!.textContent ?? "",
    ]);
    const toPx = 96 / 0.0254;
    const feet = /1 in = (\d+) ft/.exec(words)?.[1];
    const ratio = feet ? Number(feet) * 12 : Number(/1 : (\d+)/.exec(words)![1]);
    expect(widthPx / ((lengthM / ratio) * toPx)).toBeCloseTo(1, 2);
  });

  it("use the trade's words, promise nothing, and have no figure of the other units", async () => {
    const strings = await stringsOf(page);
    expect(strings.length).toBeGreaterThan(700);
    const wrong = strings
      .map((text) => text.replace(OURS, ""))
      .filter((text) => NEVER.test(text) || FOREIGN[system].test(text));
    expect(wrong).toEqual([]);
  });
});
