/** Takes the README's pictures of the demo and of its printed pages: `node --import tsx tests/tools/picture.ts`. */
import { writeFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { openHouse } from "../helpers/harness.ts";
import { mapIsIdle, planIsSized, sample } from "../helpers/screen.ts";

/** How long the pages may take on a slow machine, ms. */
const SLOW_MS = 180_000;
/** High enough for a whole page with the bar over it. */
const PAGE_VIEW = { width: 1000, height: 1300 };

const house = await openHouse();
const { page } = await house.visit({ width: 1440, height: 900, coarse: false });
await planIsSized(page);
await page.waitForTimeout(2000);
await mapIsIdle(page);
await page.screenshot({ path: sample("screen.png") });

await page.setViewportSize(PAGE_VIEW);
await page.keyboard.press("p");
const whole = page.locator('.sheets[data-pages="ready"]:not(:has([data-laid="no"]))');
await whole.waitFor({ timeout: SLOW_MS });
for (const short of ["Build", "Stakes", "Sequence"]) {
  const shown = page.locator(`[data-page-label="${short} 1"]`);
  await shown.evaluate((element) => element.scrollIntoView({ block: "end" }));
  const picture = await shown.screenshot({ timeout: SLOW_MS });
  writeFileSync(sample(`page-${short.toLowerCase()}.webp`), await asWebp(page, picture));
}
await house.close();

/** A PNG picture as WebP, by the browser. */
async function asWebp(on: Page, png: Buffer): Promise<Buffer> {
  const base64 = await on.evaluate(async (text) => {
    const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
    const picture = await createImageBitmap(new Blob([bytes], { type: "image/png" }));
    const canvas = new OffscreenCanvas(picture.width, picture.height);
    canvas.getContext("2d")!.drawImage(picture, 0, 0);
    const made = await canvas.convertToBlob({ type: "image/webp", quality: 0.8 });
    const letters = Array.from(new Uint8Array(await made.arrayBuffer()), (byte) =>
      String.fromCharCode(byte),
    );
    return btoa(letters.join(""));
  }, png.toString("base64"));
  return Buffer.from(base64, "base64");
}
