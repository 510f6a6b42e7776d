import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { oneVisit } from "../helpers/one-visit.ts";
import { bags, bagsAtRest, json, open, openBlock, samplePlan } from "../helpers/screen.ts";

/* One visit: is there time for the demo's drawn ring? */
let page: Page;
oneVisit({ graphics: false }, async (arrived) => {
  page = arrived;
  await openBlock(page, "time", "gauge-and-forecast");
});

const heading = (name: string) =>
  page.locator("aside").getByRole("button", { name: new RegExp(`^${name}\\b`) });
const verdict = () => page.locator(".time-verdict");
const saysThat = (words: RegExp) =>
  expect.poll(() => verdict().textContent(), { timeout: 8000 }).toMatch(words);
const rows = () => page.getByLabel("One row for each time: time, level, and low and high if given");
const slider = () => page.getByRole("slider", { name: "Through the forecast" });

/** Every six hours from Monday 07:00: 22 ft, up to 31 ft on Thursday, then falling. */
const STAGES = [22, 22.5, 23.5, 25, 26.5, 28, 29, 29.8, 30.3, 30.6, 30.8, 30.9, 31, 30.8, 30.4];
const GOOD = STAGES.map((stage, k) => {
  const day = 6 + Math.floor((7 + 6 * k) / 24);
  const clock = String((7 + 6 * k) % 24).padStart(2, "0");
  return `2026-04-${String(day).padStart(2, "0")} ${clock}:00 -05:00, ${stage}`;
});

describe("the demo's forecast", () => {
  it("makes the drawn ring late at the slow pace, and names what would make it possible", async () => {
    await saysThat(/^Late at slow pace: behind from Wed 08:00/);
    const ways = () => page.locator(".time-ways").textContent();
    await expect
      .poll(ways, { timeout: 20_000 })
      .toContain("B By high ground, 14,276 bags, late if the river runs high");
    expect(await ways()).toContain("68 people instead");
    expect(await ways()).toContain("Do not save time on freeboard.");
  });

  it("is stepped through by the slider without a change of the plan", async () => {
    const undo = () =>
      page.locator('.menu [aria-label*="undo" i]').first().getAttribute("aria-label");
    expect(await undo()).toBe("Nothing to undo");
    await slider().focus();
    for (let step = 0; step < 20; step++) await page.keyboard.press("ArrowLeft");
    const words = page.locator(".moment-words");
    expect(await words.textContent()).toMatch(/^Wed Apr 8, 11:00, stage 30\.0 ft[\d,]+ of 16,358/);
    expect(await bags(page)).toBe(17_879);
    expect(await undo()).toBe("Nothing to undo");
    await page.keyboard.press("Escape");
    await words.waitFor({ state: "detached" });
  });
});

describe("a forecast that is pasted", () => {
  it("with a wrong line is refused by that line, and nothing typed is lost", async () => {
    await page.getByRole("button", { name: "Edit or replace the rows" }).click();
    const wrong = GOOD.with(3, "2026-04-07 01:00 -05:00, high water").join("\n");
    await rows().fill(wrong);
    await page.getByRole("button", { name: "Take this forecast" }).click();
    const why = page.locator(".forecast-draft .field-why");
    expect(await why.textContent()).toContain(
      'Line 4, column 26: expected a level such as 31.2; "high water"',
    );
    expect(await rows().inputValue()).toBe(wrong);
    await saysThat(/Wed 08:00/);
  });

  it("is taken as one step: late at both paces, in time with more people, and undone", async () => {
    await rows().fill(GOOD.join("\n"));
    await page.getByRole("button", { name: "Take this forecast" }).click();
    await rows().waitFor({ state: "detached" });
    await saysThat(/^Late: behind from Wed 00:00, worst at \d\+\d\d/);
    expect(await page.locator('[data-block="time"]').textContent()).toContain("taken as ft");

    await heading("People and hours").click();
    const people = page.locator('[data-block="time"] [data-setting="practice.people"] input');
    await people.fill("600");
    await people.press("Enter");
    await saysThat(
      /^Time not known: part is on HOLD; the rest takes [\d to]+ h, nights included\.$/,
    );
    await heading("Crew and time").focus();
    await page.keyboard.press("Control+z");
    await saysThat(/^Late: behind/);
    await page.keyboard.press("Control+z");
    await saysThat(/^Late at slow pace/);
  });
});

describe("the sheet", () => {
  it("tells the crew who builds which stretch when", async () => {
    await page.keyboard.press("p");
    const sheet = page.locator(".sheet-page").filter({ hasText: "Build sequence by crew" });
    await sheet.first().waitFor();
    const first = sheet.locator('[data-table="build-sequence"] tbody tr').first();
    expect(await first.textContent()).toMatch(/^HOLD4\+09 to 4\+38do not build/);
    expect((await sheet.allTextContents()).join(" ")).toContain("68 people instead");
    await page.keyboard.press("Escape");
  });
});

/** Every six hours from Monday 07:00: up to 32.2 ft already on Wednesday at 19:00. */
const HIGHER = [22, 23, 24.5, 26.5, 28.5, 30, 31, 31.6, 32, 32.1, 32.2, 32, 31.5, 31, 30.4];

describe("a newer forecast over an earlier one, with part of the line built", () => {
  const changed = () => page.getByRole("region", { name: "What changed" });

  it("says what changed, what to do with what is built, and keeps the earlier one", async () => {
    const plan = samplePlan("demo.geojson");
    const mark = { state: "to-height", atS: 1_775_500_000, planNumber: "1", by: "Crew 1" };
    const rest = { clearedBy: "", note: "", photoId: "" };
    plan.drystead.progress = [{ lineId: "a", fromM: 0, toM: 30.48, ...mark, ...rest }];
    await open(page, json("part-built.geojson", plan));
    await openBlock(page, "time");
    expect(await changed().count()).toBe(0);
    await page.getByRole("button", { name: "Edit or replace the rows" }).click();
    await rows().fill(GOOD.map((row, k) => row.replace(/[\d.]+$/, String(HIGHER[k]))).join("\n"));
    await page.getByRole("button", { name: "Take this forecast" }).click();
    await changed().waitFor();
    const said = () => changed().textContent();
    expect(await said()).toMatch(
      /^What changedForecast crest stage 32\.2 ft, Wed Apr 8,? 19:00; the earlier forecast had stage 31\.0 ft, Thu Apr 9,? 07:00: 1\.20? ft higher, 12(\.0)? h sooner\./,
    );
    expect(await said()).toMatch(
      /100 ft \(1\d %\) is built to the former height: widen its base first, then raise it by 1\.20? ft\./,
    );
    expect(await said()).toMatch(/1 earlier forecast kept in the plan: .+, replaced .+ UTC\./);
    await expect.poll(said, { timeout: 20_000 }).toMatch(/it takes [\d,]+ bags, [\d,]+ more than/);
  });

  it("takes as many bags as it said once the line is sized for the new crest", async () => {
    const [, atCrest, more] = /it takes ([\d,]+) bags, ([\d,]+) more than now/
      .exec((await changed().textContent())!)!
      .map((figure) => Number(figure.replaceAll(",", "")));
    expect(atCrest! - more!).toBe(17_879);
    await changed().getByRole("button", { name: "Size for stage 32.2 ft" }).click();
    await changed().getByText("The line is sized for this crest.").waitFor();
    expect(await bagsAtRest(page)).toBe(atCrest);
  });
});
