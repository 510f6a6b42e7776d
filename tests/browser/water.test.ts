import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { OLD_CHANNEL } from "../../sample-terrain/layout.ts";
import { placedOnSite } from "../../sample-terrain/plans.ts";
import { oneVisit } from "../helpers/one-visit.ts";
import {
  bagsAtRest,
  checkInFull,
  chosen,
  corners,
  json,
  mapIsIdle,
  open,
  openBlock,
  samplePlan,
  showMarks,
  startDrag,
} from "../helpers/screen.ts";

/* One visit, as a person makes it. */
let page: Page;
oneVisit({}, (arrived) => {
  page = arrived;
});

const check = (id: string) => page.locator(`.checks [data-check="${id}"]`);
const waterSummary = () => page.locator('[data-block="water"] .pane-note');
const legend = () => page.getByRole("region", { name: "Legend" });
const mark = (kind: string) => page.locator(`.water-mark[data-kind="${kind}"]`);

async function followed(words: RegExp): Promise<void> {
  await expect.poll(() => waterSummary().textContent(), { timeout: 20_000 }).toMatch(words);
}

describe("the ring that the demo opens on", () => {
  it("overtops above the forecast stage of 31 ft and the freeboard of 1 ft", async () => {
    await followed(/^overtops above stage 32\.0 ft; 1 Must fix$/);
    expect(await (await checkInFull(page, "overtops")).textContent()).toContain(
      "freeboard is not protection",
    );
    expect(await check("water-gets-in").count()).toBe(0);
    expect(await page.locator(".water-mark").count()).toBe(0);
    await showMarks(page, "Water paths");
    expect(await mark("way-in").count()).toBe(0);
    expect(await mark("first-over").getAttribute("aria-label")).toContain("over the top of levee");
    expect(await legend().textContent()).toContain("overtops first");
  });
});

describe("a culvert drawn under the line", () => {
  const pipe = () => check("culvert").first();
  const inList = () => page.getByRole("region", { name: "Culverts and drains" });
  const severity = () => pipe().getAttribute("data-severity");

  it("is a Must fix while it is open, and something to watch once it is plugged", async () => {
    await openBlock(page, "gauge-and-forecast", "reach");
    await mapIsIdle(page);
    await page.getByRole("button", { name: "Draw a culvert" }).click();
    const [from, to] = await corners(page);
    const middle = { x: (from!.x + to!.x) / 2, y: (from!.y + to!.y) / 2 };
    const legPx = Math.hypot(to!.x - from!.x, to!.y - from!.y);
    const across = { x: (30 * (from!.y - to!.y)) / legPx, y: (30 * (to!.x - from!.x)) / legPx };
    await page.mouse.click(middle.x - across.x, middle.y - across.y);
    await page.mouse.click(middle.x + across.x, middle.y + across.y);
    const plugged = inList().getByRole("checkbox", { name: "Culvert 1 is plugged" });
    await plugged.waitFor();
    await openBlock(page, "checks");
    await expect.poll(() => check("culvert").count(), { timeout: 20_000 }).toBe(1);
    expect(await severity()).toBe("stop");
    expect(await (await checkInFull(page, "culvert")).textContent()).toContain(
      'crosses culvert "Culvert 1", which is not plugged.',
    );
    await followed(/^water gets in above stage 30\.\d ft; \d Must fix$/);

    await plugged.check();
    await expect.poll(() => severity(), { timeout: 20_000 }).not.toBe("stop");
    await followed(/^overtops above stage 32\.0 ft; 1 Must fix$/);
    expect(await pipe().textContent()).toContain('plug in "Culvert 1"');

    await page.keyboard.press("Control+z");
    await expect.poll(() => severity(), { timeout: 20_000 }).toBe("stop");
    await page.keyboard.press("Control+z");
    await expect.poll(() => check("culvert").count(), { timeout: 20_000 }).toBe(0);
    await followed(/^overtops above stage 32\.0 ft; 1 Must fix$/);
    await page.locator('[data-block="reach"] > :is(h2, h3) > button').click();
  });
});

/** Length from the first corner of the chosen line to the second, by the share of its length on the page. */
async function firstLegFt(): Promise<number> {
  const at = await corners(page);
  const legs = at.slice(1).map(({ x, y }, k) => Math.hypot(x - at[k]!.x, y - at[k]!.y));
  const [, length] = / ft ([\d,]+) ft/.exec((await chosen(page).textContent())!)!;
  return (Number(length!.replaceAll(",", "")) * legs[0]!) / legs.reduce((sum, leg) => sum + leg, 0);
}

describe("a line tied to the road bank", () => {
  it("is not dry once its end is pulled off the bank, and the place is named", async () => {
    await page.keyboard.press("]");
    await page.keyboard.press("]");
    await followed(/^overtops above stage 32\.0 ft/);
    await bagsAtRest(page);
    await mapIsIdle(page);
    const [end, next] = await corners(page);
    const off = { x: end!.x + (next!.x - end!.x) * 0.9, y: end!.y + (next!.y - end!.y) * 0.9 };
    await startDrag(page, end!, off);
    await page.mouse.up();
    await followed(/^water gets in above stage 30\.9 ft; \d Must fix$/);

    const said = (await (await checkInFull(page, "water-gets-in")).textContent())!;
    const place =
      /The water comes in (?:around the end )?(at 0\+(\d\d), over ground at 87[34]\.\d\d ft)/;
    const [, words, station] = place.exec(said)!;
    expect(Number(station)).toBeLessThanOrEqual((await firstLegFt()) + 1);
    expect(await check("water-gets-in").getAttribute("data-severity")).toBe("stop");
    expect(await chosen(page).textContent()).toContain("water gets in");
    await mark("way-in").click();
    const popover = page.getByRole("group", { name: "The water comes in here" });
    expect(await popover.textContent()).toContain(words);
    await page.keyboard.press("Escape");

    await page.getByRole("button", { name: "Compare" }).click();
    await page.getByRole("dialog", { name: "Lines side by side" }).waitFor();
    const rows = page.locator("table.compare tbody tr");
    expect(await rows.nth(0).textContent()).toMatch(/no overland path in\s*stage 32\.0 ft/);
    expect(await rows.nth(2).textContent()).toMatch(/water gets in\s*stage 30\.9 ft/);
    await page.keyboard.press("Escape");
    await page.keyboard.press("Control+z");
    await followed(/^overtops above stage 32\.0 ft/);
  });
});

/** Level water that comes from the river alone. */
function levelPlan(elevationM: number) {
  const plan = samplePlan("demo.geojson");
  plan.features = plan.features.filter(
    ({ properties }: { properties: { role: string } }) => properties.role === "structure",
  );
  plan.features.push({
    type: "Feature",
    properties: { role: "source", name: "River" },
    geometry: { type: "Point", coordinates: placedOnSite([20, 454]) },
  });
  plan.features.push({
    type: "Feature",
    properties: { role: "alignment", name: "Round a spot" },
    geometry: { type: "Polygon", coordinates: [squareRound([560, 360])] },
  });
  Object.assign(plan.drystead.water, { by: "elevation", elevationM, fallPerM: 0 });
  plan.drystead.chosenId = null;
  return plan;
}

function squareRound([east, north]: readonly [number, number]) {
  const around = [
    [-5, -5],
    [5, -5],
    [5, 5],
    [-5, 5],
    [-5, -5],
  ] as const;
  return around.map(([x, y]) => placedOnSite([east + x, north + y]));
}

/** Lightness 0..255 of the map round a place, over 24 x 24 CSS pixels. */
async function lightness(at: readonly [number, number]): Promise<number> {
  await mapIsIdle(page);
  const map = page.locator(".map-canvas");
  const box = (await map.boundingBox())!;
  const read = async (name: string) => Number(await map.getAttribute(`data-${name}`));
  const worldPx = 512 * 2 ** (await read("zoom"));
  const mercator = (lat: number) => Math.log(Math.tan(Math.PI / 4 + (lat * Math.PI) / 360));
  const x = ((at[0] - (await read("lon"))) / 360) * worldPx;
  const y = ((mercator(await read("lat")) - mercator(at[1])) / (2 * Math.PI)) * worldPx;
  const clip = {
    x: box.x + box.width / 2 + x - 12,
    y: box.y + box.height / 2 + y - 12,
    width: 24,
    height: 24,
  };
  expect(Math.abs(x)).toBeLessThan(box.width / 2 - 12);
  expect(Math.abs(y)).toBeLessThan(box.height / 2 - 12);
  const png = (await page.screenshot({ clip })).toString("base64");
  return page.evaluate(async (picture) => {
    const image = new Image();
    image.src = `data:image/png;base64,${picture}`;
    await image.decode();
    const paper = new OffscreenCanvas(24, 24).getContext("2d")!;
    paper.drawImage(image, 0, 0);
    const { data } = paper.getImageData(0, 0, 24, 24);
    const sum = data.reduce((total, value, i) => (i % 4 === 3 ? total : total + value), 0);
    return sum / (3 * 24 * 24);
  }, png);
}

/** Square metres that the check of low, unconnected ground names. */
async function lowAreaM2(): Promise<number> {
  const said = (await (await checkInFull(page, "low-unconnected")).textContent())!;
  return Number(/([\d,]+) m² of ground is below/.exec(said)![1]!.replaceAll(",", ""));
}

describe("the old channel, with a source marked in the river", () => {
  /* scipy.ndimage.label 1.17.1 on the computed grid: 19,658 low cells at 265 m and 30 at 265.5 m, of 1.0006 m2. */
  it("is low but not connected at 265 m, and water at 265.5 m", async () => {
    await page.keyboard.press("u");
    await open(page, json("low.geojson", levelPlan(265)));
    await expect
      .poll(() => legend().textContent(), { timeout: 20_000 })
      .toContain("connected to a marked source");
    expect(Math.abs((await lowAreaM2()) / (19_658 * 1.0006) - 1)).toBeLessThan(0.001);
    expect(await legend().textContent()).toContain("low, not connected");
    const channel = placedOnSite(OLD_CHANNEL[4]!);
    await page.getByRole("button", { name: "Zoom out" }).click();
    await page.waitForTimeout(500);
    const dotted = await lightness(channel);

    await open(page, json("high.geojson", levelPlan(265.5)));
    await expect.poll(lowAreaM2, { timeout: 20_000 }).toBeLessThan(50);
    const wet = await lightness(channel);
    expect(dotted - wet).toBeGreaterThan(8);
  });
});
