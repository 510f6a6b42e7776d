import type { Locator, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { oneVisit } from "../helpers/one-visit.ts";
import { openBlock, openPages } from "../helpers/screen.ts";

/* One visit, as a floodplain manager makes it: what do stability, seepage and pumps come to? */
let page: Page;
oneVisit({ graphics: false }, (arrived) => {
  page = arrived;
});

const block = () => page.locator('[data-block="holding"]');
const summary = () => block().locator("> h2 .disclosure-summary");
const said = () => block().locator(".holding-verdict");
const part = (name: string) => block().getByRole("region", { name, exact: true });

async function verdict(words: RegExp): Promise<void> {
  await expect.poll(() => said().textContent(), { timeout: 10_000 }).toMatch(words);
}

/** Waits until the text there is as wanted: answers for a line come one after the other. */
const reads = (place: Locator, words: RegExp) =>
  expect.poll(() => place.textContent(), { timeout: 20_000 }).toMatch(words);

async function type(label: string, text: string): Promise<void> {
  const field = block().getByLabel(label, { exact: true });
  await field.fill(text);
  await field.press("Enter");
}

async function undo(): Promise<void> {
  await page.keyboard.press("Control+z");
}

describe("the block Stability, seepage, pumps", () => {
  it("says the verdict in short while it is closed, and every part when it is open", async () => {
    await reads(summary(), /^over limit$/);
    await openBlock(page, "holding");
    await verdict(/^calculates at 1\.5 or more, at the friction assumed, but has 1 Must fix$/);
    await reads(block().locator(".holding-pumps"), /^Pumps: \d+ working/);
    await reads(part("Stability"), /Against sliding\s*\d\.\d to \d\.\d of 1\.5 required/);
    await reads(part("Seepage"), /Through bags alone[\d.]+ to [\d,.]+ gpm/);
    await reads(part("Inside"), /Lowest place, the sump87\d\.\d\d ft/);
    await reads(part("Pumps"), /Proposed\d working and 1 spare/);
    await reads(part("Room to raise"), /More on the same base/);
    const drawing = part("Inside").getByRole("img", { name: /^Level inside without pumps/ });
    expect(await drawing.getAttribute("aria-label")).toMatch(/after 24 h .* as high as outside/);
  });

  it("marks the weakest station, and shows what a factor is made of", async () => {
    const station = part("Stability")
      .getByRole("button", { name: /^Mark station/ })
      .first();
    const at = await station.textContent();
    await station.click();
    await page.getByRole("heading", { name: `Cross-section at ${at}` }).waitFor();
    await part("Stability").locator(".figure").first().focus();
    const makeup = page.locator("#makeup");
    await makeup.getByText("friction × (weight − uplift) / thrust").waitFor();
    expect(await makeup.textContent()).toContain("uplift under the base");
  });

  it("changes its verdict with friction and uplift, and undo brings it back", async () => {
    await part("Stability")
      .getByRole("button", { name: /^Friction, weight, uplift/ })
      .click();
    await type("Friction, low", "0.1");
    await verdict(/^below the 1\.5 required on \d+ ft, at low friction/);
    await type("Friction, high", "0.11");
    await verdict(/^below the 1\.5 required at \d\+\d\d$/);
    await undo();
    await verdict(/^below the 1\.5 required on \d+ ft, at low friction/);
    await undo();
    await verdict(/^calculates at 1\.5 or more, at the friction assumed/);
    const factors = part("Stability").locator(".figure").first();
    const before = await factors.textContent();
    await block()
      .getByLabel(/^Uplift/)
      .selectOption("full");
    await expect.poll(() => factors.textContent()).not.toBe(before);
    await undo();
    await expect.poll(() => factors.textContent()).toBe(before);
  });

  it("asks for the creep ratios of the soil that is stated", async () => {
    await part("Seepage")
      .getByRole("button", { name: /^Soil, poly sheeting, fill/ })
      .click();
    await block()
      .getByLabel(/^Soil below/)
      .selectOption("fine-sand");
    await expect
      .poll(() => part("Seepage").textContent())
      .toMatch(/Creep, Lane[\d.]+ of 7 required.*Creep, Bligh[\d.]+ of 15 required/);
    await undo();
    await expect.poll(() => part("Seepage").textContent()).not.toContain("of 7 required");
  });
});

describe("the forces on the section", () => {
  it("are drawn by the keyboard, in place of the dimensions, with their factors in words", async () => {
    const toggle = page.getByRole("button", { name: "Forces", exact: true });
    expect(await toggle.getAttribute("aria-pressed")).toBe("false");
    await toggle.focus();
    await page.keyboard.press("Enter");
    expect(await toggle.getAttribute("aria-pressed")).toBe("true");
    const labels = page.locator(".section-room .free-body text");
    await expect
      .poll(() => labels.allTextContents())
      .toEqual([
        expect.stringMatching(/^thrust [\d,]+ lb\/ft$/),
        expect.stringMatching(/^weight [\d,]+ lb\/ft$/),
        expect.stringMatching(/^uplift [\d,]+ lb\/ft$/),
      ]);
    expect(await page.locator(".section-room .section-dimensions").count()).toBe(0);
    expect(await page.locator(".forces-words").textContent()).toMatch(
      /^sliding [\d.]+ to [\d.]+, overturning [\d.]+; 1\.5 required$/,
    );
    await toggle.click();
    expect(await page.locator(".free-body").count()).toBe(0);
  });
});

describe("what is compared and printed", () => {
  it("has what each line calculates at, and whether it is in time", async () => {
    await page.getByRole("button", { name: "Compare" }).click();
    const table = page.getByRole("dialog").locator("table");
    expect(await table.locator("thead").textContent()).toMatch(/Sliding, overturningTime$/);
    for (const row of await table.locator("tbody tr").all()) {
      await reads(
        row.locator(".compare-words").first(),
        /^(as required|in doubt|below required)(; \d Must fix)?.*(sliding|overturning) \d/,
      );
      await reads(
        row.locator(".compare-words").last(),
        /^(in time\d+ to \d+ h|late at slow pacebehind from .*|late if the river runs highbehind from .*)$/,
      );
    }
    await page.keyboard.press("Escape");
  });

  it("has a sheet for the crew: where to stop, the sump, the pumps, when people leave", async () => {
    await openPages(page);
    const sheets = page.getByRole("region", { name: /Watch and logs/ });
    await sheets.first().waitFor();
    const text = (await sheets.allTextContents()).join(" ");
    expect(text).toContain("LEAVE at stage 30.0 ft, Wed 11:00");
    expect(text).toMatch(/32\.0Overtops above this/);
    expect(text).toMatch(/27\.6Water can reach it/);
    expect(text).toMatch(
      /\d+ ft from Barn corner B4\. .*weakest against sliding: [\d.]+ to [\d.]+, 1\.5 required/,
    );
    expect(text).toContain("Never plug or cap it");
    expect(text).toMatch(/Sump: inside \d\+\d\d, ground \d+\.\d\d ft/);
    expect(text).toMatch(/\d at work \+ 1 spare/);
    expect(text).toContain("Life jackets");
    expect(text).not.toMatch(/-93\.\d/);
  });
});
