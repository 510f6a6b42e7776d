import { execFileSync } from "node:child_process";
import { readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { preview } from "vite";
import { findBrowser } from "../tools/browser.mjs";
import { recordingProxy } from "./recording-proxy.ts";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const SOURCES = [
  "index.html",
  "public",
  "vite.config.ts",
  "package-lock.json",
  "src",
  "shared",
  "workers",
];

/** How every test starts the browser. */
export const FLAGS = [
  "--no-sandbox",
  "--use-angle=swiftshader",
  "--enable-unsafe-swiftshader",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/** One person at one browser: what was kept in it lasts as long as the visit. */
export interface Visit {
  readonly page: Page;
  /** Console errors, uncaught exceptions and failed requests so far, in words. */
  readonly troubles: readonly string[];
  /** Opens the program in a second tab, or again after the first was closed. */
  readonly again: () => Promise<Page>;
  readonly leave: () => Promise<void>;
}

/** The built program, served on this machine, and a browser to visit it with. */
export interface House {
  readonly address: string;
  readonly visit: (options?: VisitOptions) => Promise<Visit>;
  /** Requests of any page or worker for another host than localhost. */
  readonly strayRequests: readonly string[];
  readonly close: () => Promise<void>;
}

interface VisitOptions {
  readonly width?: number;
  readonly height?: number;
  readonly theme?: "light" | "dark";
}

/** Builds when a source is newer than the bundle, serves the bundle and starts a browser. */
export async function openHouse(): Promise<House> {
  const { address, close } = await serveBuilt();
  const proxy = await recordingProxy();
  const browser = await chromium.launch({
    executablePath: findBrowser(),
    args: FLAGS,
    proxy: { server: proxy.address, bypass: "localhost" },
  });
  return {
    address,
    strayRequests: proxy.requests,
    visit: (options) => visit(browser, address, options ?? {}),
    async close() {
      await browser.close();
      await proxy.close();
      await close();
    },
  };
}

/** Builds when a source is newer than the bundle, and serves the bundle on this machine. */
export async function serveBuilt() {
  buildWhenStale();
  const server = await preview({
    root: ROOT,
    logLevel: "error",
    preview: { host: "localhost", port: 4273, strictPort: false },
  });
  const address = server.resolvedUrls?.local[0];
  if (!address) throw new Error("The preview server gave no address.");
  return { address, close: () => server.close() };
}

async function visit(browser: Browser, address: string, options: VisitOptions): Promise<Visit> {
  const context = await browser.newContext({
    viewport: { width: options.width ?? 1280, height: options.height ?? 720 },
    acceptDownloads: true,
    reducedMotion: "reduce",
  });
  if (options.theme) {
    await context.addInitScript((theme) => {
      localStorage.setItem("drystead.theme", theme);
    }, options.theme);
  }
  const troubles: string[] = [];
  const again = () => openPage(context, address, troubles);
  return { page: await again(), troubles, again, leave: () => context.close() };
}

async function openPage(
  context: BrowserContext,
  address: string,
  troubles: string[],
): Promise<Page> {
  const page = await context.newPage();
  page.on("console", (message) => {
    if (message.type() === "error") troubles.push(`console: ${message.text()}`);
  });
  page.on("pageerror", (error) => troubles.push(`uncaught: ${error.stack ?? error.message}`));
  page.on("requestfailed", (request) => {
    const reason = request.failure()?.errorText ?? "failed";
    if (reason !== "net::ERR_ABORTED") troubles.push(`${reason}: ${request.url()}`);
  });
  page.on("response", (answer) => {
    if (answer.status() >= 400) troubles.push(`${answer.status()}: ${answer.url()}`);
  });
  await page.goto(address);
  return page;
}

function buildWhenStale(): void {
  const built = modified(join(ROOT, "dist/index.html"));
  if (SOURCES.every((source) => modified(join(ROOT, source)) < built)) return;
  execFileSync("npm", ["run", "-s", "build"], { cwd: ROOT, stdio: ["ignore", 2, 2] });
}

/** Latest change of a file, or of any file in a folder, ms; 0 when there is none. */
function modified(path: string): number {
  const found = statSync(path, { throwIfNoEntry: false });
  if (!found) return 0;
  if (!found.isDirectory()) return found.mtimeMs;
  return Math.max(0, ...readdirSync(path).map((name) => modified(join(path, name))));
}
