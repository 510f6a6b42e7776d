import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { oneVisit } from "../helpers/one-visit.ts";
import {
  bags,
  bagsAtRest,
  bagsWhen,
  dropText,
  json,
  open,
  openBlock,
  samplePlan,
} from "../helpers/screen.ts";

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

describe("a way left open for vehicles", () => {
  const row = () => page.locator(".closure");
  const typed = async (label: string, text: string) => {
    await openBlock(page, "line", "closures");
    await row().getByLabel(label, { exact: true }).fill(text);
    await page.keyboard.press("Enter");
  };
  /** Severity and words of what the checks say of it. */
  const said = async () => {
    await openBlock(page, "checks");
    const check = page.locator('.checks [data-check^="closure"]').first();
    await check.waitFor();
    return `${await check.getAttribute("data-severity")}: ${await check.textContent()}`;
  };

  it("is not known until it is typed who closes it and when, is closed in time or not, and is taken back", async () => {
    await openBlock(page, "line", "closures");
    await page.getByRole("button", { name: "Leave a way open" }).click();
    expect(await said()).toMatch(/^caution: .*left open, not known/);
    await typed("Close at stage", "29");
    expect(await said()).toMatch(/^caution: .*left open, not known/);
    await typed("People kept for it", "20");
    await expect.poll(said).toMatch(/^stop: .*left open, closed too late/);
    await typed("Close at stage", "23");
    await expect.poll(said).toMatch(/^note: .*left open, 1,039 bags/);
    await typed("to", "20+00");
    expect(await row().textContent()).toContain("Expected 0+00 to 8+60; 20+00 came.");
    await openBlock(page, "line", "closures");
    await page.getByRole("button", { name: "Delete closure 1" }).click();
    expect(await row().count()).toBe(0);
    await expect.poll(() => bags(page)).toBe(17_879);
    await openBlock(page, "time");
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

/** One forecast of an invented gauge, April 6, 2026, Central time, in every format: 22.6, 26.0 and 31.0 ft. */
const RDB = [
  "# Invented values in the form of a USGS file",
  "agency_cd\tsite_no\tdatetime\ttz_cd\t71001_00065\t71001_00065_cd",
  "5s\t15s\t20d\t6s\t14n\t10s",
  ...["07:00\tCDT\t22.60", "13:00\tCDT\t26.00", "19:00\tCDT\t31.00"].map(
    (rest) => `USGS\t09999001\t2026-04-06 ${rest}\tP`,
  ),
].join("\n");
const WATERML = `<?xml version="1.0"?>
<wml2:MeasurementTimeseries xmlns:wml2="http://www.opengis.net/waterml/2.0">
<wml2:defaultPointMetadata><wml2:DefaultTVPMeasurementMetadata><wml2:uom code="ft"/></wml2:DefaultTVPMeasurementMetadata></wml2:defaultPointMetadata>
${["07:00:00-05:00,22.6", "13:00:00-05:00,26.0", "19:00:00-05:00,31.0"]
  .map((row) => row.split(","))
  .map(
    ([hour, level]) =>
      `<wml2:point><wml2:MeasurementTVP><wml2:time>2026-04-06T${hour}</wml2:time><wml2:value>${level}</wml2:value></wml2:MeasurementTVP></wml2:point>`,
  )
  .join("\n")}
</wml2:MeasurementTimeseries>`;
const AGENCY = [
  "Date/Time\tStage (ft)\tFlow (kcfs)",
  "Apr 06 2026 07:00 AM CDT\t22.6\t10.1",
  "Apr 06 2026 01:00 PM CDT\t26.0\t14.9",
  "Apr 06 2026 07:00 PM CDT\t31.0\t25.3",
].join("\n");
const SHEF_A = ".A CEDW4 20260406 C DH07/HGIFF 22.6/DH13/HGIFF 26.0/DH19/HGIFF 31.0";
const SHEF_B = ".B DMX 20260406 C DH07/HGIFF/DH13/HGIFF/DH19/HGIFF\nCEDW4 22.6/26.0/31.0\n.END";
const SHEF_E = ".E CEDW4 20260406 C DH07/HGIFF/DIH6/22.6/26.0/31.0";

/** A file of each format, and the same with one thing wrong, and where. */
const FORMATS = [
  ["agency.txt", AGENCY, AGENCY.replace("26.0", "high"), /Line 3, column 26/],
  ["msg.a", SHEF_A, SHEF_A.replace("26.0", "2x.0"), /Line 1, column \d+/],
  ["b.txt", SHEF_B, SHEF_B.replace("26.0", "2x.0"), /Line 2, column \d+/],
  ["message", SHEF_E, SHEF_E.replace("26.0", "2x.0"), /Line 1, column \d+/],
  ["gauge.rdb", RDB, RDB.replace("26.00", "high"), /Line 5, column 36/],
  ["gauge.xml", WATERML, WATERML.replace("26.0", "high"), /Line 5, column \d+/],
] as const;

describe("a forecast as agencies give it", () => {
  const understood = () => page.getByRole("region", { name: "Understood", exact: true });
  const isUnderstood = async () => {
    await expect.poll(() => understood().textContent()).toMatch(/3 rows of stage in ft/);
    const cells = await understood().locator("tbody tr").last().locator("td").allTextContents();
    expect(cells).toEqual([expect.stringMatching(/Apr 6.*19:00 (CDT|UTC-05:00)/), "31.00 ft"]);
  };
  const close = () => page.getByRole("button", { name: "Keep the earlier one" }).click();
  const why = () => page.locator(".forecast-draft .field-why").textContent();

  it.each(FORMATS)(
    "is understood pasted and dropped, and refused by its place: %s",
    async (...of) => {
      const [name, text, wrong, place] = of;
      await page.getByRole("button", { name: "Edit or replace the rows" }).click();
      await rows().focus();
      await page.keyboard.press("Control+a");
      await page.keyboard.insertText(text);
      await isUnderstood();
      await close();
      await dropText(page, name, text);
      await isUnderstood();
      expect(await rows().inputValue()).toBe(text);
      await rows().fill(wrong);
      await page.getByRole("button", { name: "Take this forecast" }).click();
      await expect.poll(why).toMatch(place);
      await close();
      expect(await bags(page)).toBe(17_879);
    },
  );

  it("is asked for the clock where a zone may be several", async () => {
    await dropText(page, "agency.txt", AGENCY.replaceAll("CDT", "BST"));
    await expect.poll(why).toMatch(/Line 2, column 1: .*"BST" may be/);
    await page.getByLabel("Clock of the times").selectOption("America/Chicago");
    await isUnderstood();
    await page.getByLabel("Clock of the times").selectOption("");
    await close();
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

describe("ground read in the field", () => {
  const said = (what: string) => page.locator(`[data-survey="${what}"]`);
  const readings = () => page.getByLabel(/^Readings from the field/);
  const take = () => page.getByRole("button", { name: "Take these readings" }).click();
  /** The elevation data has 873.53, 873.44 and 873.40 ft there: the ground is 0.50 ft higher. */
  const HIGHER_GROUND = "station, ground_ft\n0+50, 874.03\n1+00, 873.94\n1+50, 873.90";

  it("is counted with, its difference is offered for all elevations, and both are undone", async () => {
    await open(page, json("demo.geojson", samplePlan("demo.geojson")));
    await bagsWhen(page, (bags) => bags === 17_879);
    await openBlock(page, "ground", "ground-survey");
    await page.getByRole("radio", { name: "Ground elevations" }).check();
    await readings().fill(`${HIGHER_GROUND}\n9999+00, 873.90`);
    await take();
    const why = page.locator(".survey-readings .field-why");
    expect(await why.textContent()).toMatch(/[Ll]ine 5/);
    expect(await bags(page)).toBe(17_879);

    await readings().fill(HIGHER_GROUND);
    await take();
    const surveyed = await bagsWhen(page, (bags) => bags < 17_879);
    await said("difference").waitFor();
    expect(await said("difference").textContent()).toContain(
      "0.50 ft higher than in the elevation data on average, at 3 stakes",
    );
    await page.getByRole("button", { name: "Correct all elevations by +0.50 ft" }).click();
    await bagsWhen(page, (bags) => bags < surveyed - 1000);
    expect(await said("corrected").textContent()).toContain("+0.50 ft");
    await said("difference").waitFor({ state: "detached" });
    await heading("Elevation data").focus();
    await page.keyboard.press("Control+z");
    await bagsWhen(page, (bags) => bags === surveyed);
    await page.keyboard.press("Control+z");
    await bagsWhen(page, (bags) => bags === 17_879);
  });

  it("beside the line tells of the error there and changes no height", async () => {
    await readings().fill("station, offset, ground_ft\n0+50, 6 L, 874.1\n1+00, 6 R, 874.0");
    await take();
    await expect
      .poll(() => page.locator('[data-block="ground-survey"] > :is(h2, h3)').textContent())
      .toContain("2 readings");
    expect(await bagsAtRest(page)).toBe(17_879);
  });
});
