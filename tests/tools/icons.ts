/** Draws the icons of the installed program from `public/icon.svg`: `node --import tsx tests/tools/icons.ts`. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import { findBrowser } from "./browser.mjs";

const PUBLIC = fileURLToPath(new URL("../../public/", import.meta.url));
const PAPER = "#f8f5ee";
/** Names, sides in pixels, and the share of the side that the drawing takes: a mask may cut off the rest. */
const ICONS = [
  ["icon-192.png", 192, 1],
  ["icon-512.png", 512, 1],
  ["icon-maskable.png", 512, 0.8],
  ["icon-touch.png", 180, 1],
] as const;

const svg = readFileSync(`${PUBLIC}icon.svg`, "utf8");
const source = `data:image/svg+xml,${encodeURIComponent(svg)}`;
const browser = await chromium.launch({ executablePath: findBrowser(), args: ["--no-sandbox"] });
for (const [name, side, share] of ICONS) {
  const page = await browser.newPage({ viewport: { width: side, height: side } });
  const back = name === "icon-maskable.png" || name === "icon-touch.png" ? PAPER : "transparent";
  await page.setContent(
    `<body style="margin:0;display:grid;place-items:center;height:100vh;background:${back}">
     <img src="${source}" style="width:${100 * share}vw">`,
  );
  await page.locator("img").evaluate((image: HTMLImageElement) => image.decode());
  await page.screenshot({ path: PUBLIC + name, omitBackground: true });
}
await browser.close();
