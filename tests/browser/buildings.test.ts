import { serialize } from "flatgeobuf/lib/mjs/geojson.js";
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { seriousViolations } from "../helpers/axe.ts";
import { oneVisit } from "../helpers/one-visit.ts";
import { inMore, openBlock, samplePlan } from "../helpers/screen.ts";

/** Buildings in GeoParquet, far from the demo. */
const ELSEWHERE = "tests/fixtures/footprints/degrees-snappy.parquet";

let page: Page;
let answer: string | null = null;
oneVisit({ width: 1440, height: 900, graphics: false }, (arrived) => {
  page = arrived;
});

/** Two of the demo's buildings as a county's file of footprints would have them, the first of them twice. */
function footprints() {
  const { features } = samplePlan("demo.geojson") as {
    features: { properties: { role: string; name: string }; geometry: object }[];
  };
  const buildings = features.filter(({ properties }) => properties.role === "structure").slice(1);
  const county = buildings.map(({ properties: { name }, geometry }, index) => ({
    type: "Feature",
    properties: { SITEADDR: name, PRIORITY: index === 0 ? "first" : "", PARCEL: `P-${index}` },
    geometry,
  }));
  const whole = { type: "FeatureCollection", features: [...county, county[0]] };
  const bytes = serialize(whole as Parameters<typeof serialize>[0], 4326);
  return { name: "county.fgb", mimeType: "", buffer: Buffer.from(bytes) };
}

async function type(label: string, text: string) {
  const field = page.locator(".county-stock").getByLabel(label, { exact: true });
  await field.fill(text);
  await field.press("Enter");
}

/** How many answers of buildings this device has kept: as many again where all were checked anew. */
function keptAnswers(): Promise<number> {
  return page.evaluate(
    () =>
      new Promise<number>((resolve, reject) => {
        const open = indexedDB.open("drystead-buildings");
        open.onerror = () => reject(open.error);
        open.onsuccess = () => {
          const all = open.result.transaction("answers").objectStore("answers").getAll();
          all.onsuccess = () => {
            open.result.close();
            resolve(all.result.reduce((sum, { buildings }) => sum + buildings.length, 0));
          };
        };
      }),
  );
}

it("buildings are imported, checked, chosen by the stock, opened in the plan, and left as they were", async () => {
  const title = await page.getByLabel("Title of the plan").inputValue();
  const noMap = page.getByText("The map is not shown: this browser has no WebGL 2 graphics.");
  await (await inMore(page, "All buildings")).click();
  await page.getByRole("dialog", { name: "All buildings" }).waitFor();
  await page.locator(".county").filter({ has: noMap }).waitFor();
  const files = page.getByLabel("Footprints of all buildings");
  await files.setInputFiles(ELSEWHERE);
  await page.locator(".county-wrong").waitFor();
  expect(await page.locator(".county-wrong").textContent()).toContain(
    "none of the file's 4 lies on it",
  );
  await files.setInputFiles(footprints());
  await page.locator(".county-brand").getByText("2 buildings").waitFor();
  await page.getByRole("button", { name: /Columns of the file/ }).click();
  const again = page.getByLabel("Take the outline that repeats another");
  await again.check();
  await page.locator(".county-brand").getByText("3 buildings").waitFor();
  await again.uncheck();
  await page.locator(".county-brand").getByText("2 buildings").waitFor();
  await page.getByLabel("Id from").selectOption("PARCEL");
  await page.locator('.county-table [data-id="P-1"]').waitFor();
  await page.getByText(/flooded buildings can be ringed/).waitFor();
  const counts = await page.locator(".county-count").allTextContents();
  expect(counts.reduce((sum, text) => sum + Number(/\d+$/.exec(text)?.[0]), 0)).toBe(2);

  await type("Bags", "60000");
  await page.locator(".county-figure").waitFor();
  await page.locator(".county-curve svg").waitFor();
  expect(await seriousViolations(page, [".county"])).toEqual([]);

  const row = page.locator('.county-row[data-state="chosen"]').first();
  await row.focus();
  await page.keyboard.press("Enter");
  const callout = page.locator(".county-callout");
  expect(await callout.textContent()).toMatch(/[\d,]+ bags/);
  answer = await page.locator(".county-figure strong").textContent();

  await callout.getByRole("button", { name: /Open in plan/ }).click();
  await page
    .locator(".alternative-figures")
    .getByText(/^[\d,]+ bags/)
    .first()
    .waitFor();
  expect(await page.locator(".alternative").count()).toBe(1);
  await page.locator(".map-room").filter({ has: noMap }).waitFor();
  await page.locator(".acts").getByRole("button", { name: "All buildings" }).click();
  await page.locator(".county-figure").waitFor();
  expect(await page.locator(".county-figure strong").textContent()).toBe(answer);
  await page.locator('.county[data-stale="false"]').waitFor();

  await page.locator(".county").getByRole("button", { name: "Print", exact: true }).click();
  const list = page.getByRole("dialog", { name: "Rings to build" });
  await list.locator('[data-laid="yes"]').waitFor();
  expect(await list.locator(".ring-list-name b").count()).toBe(1);
  expect(await seriousViolations(page, [".sheets"])).toEqual([]);
  await list.getByRole("button", { name: "Back to the buildings" }).click();

  await page.getByRole("button", { name: "One building" }).click();
  expect(await page.getByLabel("Title of the plan").inputValue()).toBe(title);
});

it("a check and its list are there again after a reload, and nothing is checked anew", async () => {
  expect(await keptAnswers()).toBe(2);
  await page.reload();
  await openBlock(page, "line");
  await page.getByRole("group", { name: /footprints, / }).waitFor();
  await (await inMore(page, "All buildings")).click();
  await page.locator(".county-brand").getByText("2 buildings").waitFor();
  await page.locator('.county-table [data-id="P-1"]').waitFor();
  await page.locator(".county-figure").waitFor();
  expect(await page.locator(".county-figure strong").textContent()).toBe(answer);
  expect(await keptAnswers()).toBe(2);
});
