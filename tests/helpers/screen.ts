import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Locator, Page } from "playwright-core";

const SAMPLES = fileURLToPath(new URL("../../sample-terrain/", import.meta.url));

/** A file of sample-terrain/ by its path. */
export function sample(name: string): string {
  return SAMPLES + name;
}

export function samplePlan(name: string) {
  return JSON.parse(readFileSync(sample(name), "utf8"));
}

/** Waits until the map has drawn everything it knows of, or has said that the browser has no graphics for it. */
export async function mapIsIdle(page: Page): Promise<void> {
  await page.locator('.map-canvas[data-state="idle"], .map-lost[data-state="none"]').waitFor();
}

/** Waits for the map and for the chosen alternative's totals, of the plan as it is on the elevation data that is open. */
export async function planIsSized(page: Page): Promise<void> {
  await page.locator('html[data-verdicts="current"]').waitFor();
  await chosen(page)
    .getByText(/^[\d,]+ bags/)
    .waitFor();
  await mapIsIdle(page);
}

/** Goes on with the example as a person does who looks at it, and waits until it says when to leave. */
export async function exampleIsTaken(page: Page): Promise<void> {
  await page.locator('html[data-verdicts="current"]').waitFor();
  await page.getByRole("button", { name: "Keep exploring" }).click();
  await page.getByText(/^Leave at|^Leave stage/).waitFor();
  await mapIsIdle(page);
}

/** Opens the demo's ground and plan in place of what is open. */
export async function openDemo(page: Page): Promise<void> {
  await open(page, [sample("demo.tif"), sample("demo.geojson")]);
  await page.locator(".alternative").nth(2).waitFor();
  await planIsSized(page);
}

export function chosen(page: Page): Locator {
  return page.locator('.alternative[data-chosen="true"]');
}

/** Bags of the chosen alternative, as its card shows them. */
export async function bags(page: Page): Promise<number> {
  return bagsOf(chosen(page));
}

export async function bagsOf(card: Locator): Promise<number> {
  const words = (await card.locator(".alternative-figures").textContent()) ?? "";
  return Number(/^([\d,]+) bags/.exec(words)?.[1]?.replaceAll(",", ""));
}

/** Waits until the chosen alternative's bags pass `test`, and returns them. */
export async function bagsWhen(page: Page, test: (bags: number) => boolean): Promise<number> {
  const deadline = Date.now() + 20_000;
  for (;;) {
    const now = await bags(page);
    if (test(now)) return now;
    if (Date.now() > deadline) throw new Error(`The bags stayed at ${now}.`);
    await page.waitForTimeout(50);
  }
}

/**
 * Waits until the chosen alternative's bags are of the plan as it is now and have stayed the same for a while, and
 * returns them. A pause alone is not enough: a machine under load pauses between two counts of one drag.
 */
export async function bagsAtRest(page: Page): Promise<number> {
  const isCurrent = () =>
    page.evaluate(() => document.documentElement.dataset.sizing === "current");
  let last = await bags(page);
  for (let same = 0; same < 6; ) {
    await page.waitForTimeout(100);
    const now = await bags(page);
    same = now === last && (await isCurrent()) ? same + 1 : 0;
    last = now;
  }
  return last;
}

/** Switches on marks of a kind on map and profile, by hand as a person does. */
export async function showMarks(page: Page, name: "Checks" | "Weakest places" | "Water paths") {
  const opener = page.getByRole("button", { name: /^Show( \(\d\))?$/ });
  const isNarrow = await opener.isVisible();
  if (isNarrow && (await opener.getAttribute("aria-expanded")) === "false") await opener.click();
  await page.getByRole("checkbox", { name, exact: true }).check();
  if (isNarrow) await opener.click();
}

export interface At {
  readonly x: number;
  readonly y: number;
}

/** Corners of the chosen alternative on the page, CSS pixels. */
export async function corners(page: Page): Promise<At[]> {
  const map = page.locator(".map-canvas");
  const box = await map.boundingBox();
  const text = await map.getAttribute("data-corners");
  if (!box || !text) throw new Error("The map shows no corners.");
  return text.split(";").map((pair) => {
    const [x, y] = pair.split(",").map(Number);
    return { x: box.x + x!, y: box.y + y! };
  });
}

/** Presses at one place, moves to another in steps, and leaves the button down. */
export async function startDrag(page: Page, from: At, to: At): Promise<void> {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(to.x, to.y, { steps: 8 });
}

/** Opens the menu More, and returns its command of that name. */
export async function inMore(page: Page, name: string | RegExp): Promise<Locator> {
  const item = page.locator(".menu").getByRole("button", { name });
  if (!(await item.isVisible())) {
    await page.getByRole("button", { name: "More", exact: true }).click();
  }
  return item;
}

/** Opens rows of the worksheet and parts inside them, one after another, where they are closed. */
export async function openBlock(page: Page, ...ids: readonly string[]): Promise<void> {
  for (const id of ids) {
    const title = page.locator(`[data-block="${id}"] > :is(h2, h3) > button`);
    if ((await title.getAttribute("aria-expanded")) === "false") await title.click();
  }
}

/** The first check of that id among All checks, opened to its full words. */
export async function checkInFull(page: Page, id: string): Promise<Locator> {
  await openBlock(page, "checks");
  const check = page.locator(`.checks [data-check="${id}"]`).first();
  const face = check.locator(".check-face");
  if ((await face.getAttribute("aria-expanded")) === "false") await face.click();
  return check;
}

/** Builds a stretch of the chosen line as another levee type; the reaches are open in the worksheet. */
export async function buildStretch(
  page: Page,
  from: string,
  to: string,
  section: string,
): Promise<void> {
  const form = page.getByRole("form", { name: "Build a stretch otherwise" });
  await form.getByLabel("Stretch from").fill(from);
  await form.getByLabel("Stretch to").fill(to);
  await form.getByLabel("Build the stretch as").selectOption(section);
  await form.getByRole("button", { name: "Build so" }).click();
}

/** Opens the printed pages. */
export async function openPages(page: Page): Promise<void> {
  await page.locator(".acts").getByRole("button", { name: "Print", exact: true }).click();
}

/** Gives files to the program as if chosen in the file dialog. */
export async function open(
  page: Page,
  files: readonly string[] | { name: string; mimeType: string; buffer: Buffer },
): Promise<void> {
  await page.getByLabel("Plan or elevation data files").setInputFiles(files as string[]);
}

/** Drops a text file on the page, as from a folder. */
export async function dropText(page: Page, name: string, text: string): Promise<void> {
  await page.evaluate(
    ([called, content]) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([content!], called!));
      const drop = new DragEvent("drop", { dataTransfer, bubbles: true, cancelable: true });
      document.body.dispatchEvent(drop);
    },
    [name, text],
  );
}

export function json(name: string, value: unknown) {
  const buffer = Buffer.from(JSON.stringify(value));
  return { name, mimeType: "application/geo+json", buffer };
}
