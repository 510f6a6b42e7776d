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

/**
 * What no test needs of the browser. The first three draw the address bar's suggestions: a page of 400 scripts that is
 * loaded anew for each visit. The rest is what Playwright switches off, given again because the last list alone counts.
 */
const WITHOUT = [
  "WebUIOmniboxPopup",
  "WebUIOmniboxAimPopup",
  "WebUIOmniboxFullPopup",
  "AimEnabled",
  "AvoidCorsURLLoaderRestartOnRedirect",
  "AvoidUnnecessaryBeforeUnloadCheckSync",
  "DestroyProfileOnBrowserClose",
  "HttpsFirstBalancedModeAutoEnable",
  "HttpsUpgrades",
  "LensOverlay",
  "MediaRouter",
  "NetworkTimeServiceQuerying",
  "OptimizationHints",
  "PaintHolding",
  "PreconnectToSearch",
  "TcpPortRandomizationWin",
  "ThirdPartyStoragePartitioning",
];

/** How every test starts the browser. */
export const FLAGS = [
  `--disable-features=${WITHOUT.join(",")}`,
  "--no-sandbox",
  "--use-angle=swiftshader",
  "--enable-unsafe-swiftshader",
  // Pages are put together without graphics: that leaves the map alone to be drawn by a processor.
  "--disable-gpu-rasterization",
  "--disable-gpu-compositing",
  // No second try at compiling beside the first: there is no free processor for it.
  "--js-flags=--no-concurrent-recompilation",
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
  /** Ends its visits. Browser and server go on for the next house, and end when none is opened for a while. */
  readonly close: () => Promise<void>;
}

export interface VisitOptions {
  /** Where the program is, if not at the house's own address. */
  readonly address?: string;
  readonly width?: number;
  readonly height?: number;
  readonly theme?: "light" | "dark";
  /**
   * Draws a quarter of the pixels, which takes far less time without a graphics card; places on the page are the
   * same. So unless it is false, which visits ask for that look at the pixels.
   */
  readonly coarse?: boolean;
  /**
   * False for a browser without graphics: the map says so and everything else works, in a third of the time that a
   * map takes without a graphics card. For visits that neither look at the map nor touch it.
   */
  readonly graphics?: boolean;
  /** Lets the browser keep the program's files for a start without a network, which ordinary visits do without. */
  readonly offline?: boolean;
}

/** How long a page may take to show what is waited for on a busy machine, ms. */
const SLOW_MS = 60_000;

/** How long browser and server wait for the next house, ms. */
const LINGER_MS = 3000;

let estate: ReturnType<typeof openEstate> | null = null;
let leaving: NodeJS.Timeout | undefined;

/** The built program on a server, a browser, and the proxy that it must use. */
async function openEstate() {
  const { address, close } = await serveBuilt();
  const proxy = await recordingProxy();
  const browser = await chromium.launch({
    executablePath: findBrowser(),
    args: FLAGS,
    proxy: { server: proxy.address, bypass: "localhost" },
  });
  return {
    address,
    browser,
    requests: proxy.requests,
    async close() {
      await browser.close();
      await proxy.close();
      await close();
    },
  };
}

/**
 * Opens the built program to visits with one browser and one server, shared by the houses that follow each other;
 * builds first when a source is newer than the bundle.
 */
export async function openHouse(): Promise<House> {
  clearTimeout(leaving);
  const open = await estate;
  if (open && !open.browser.isConnected()) estate = null;
  estate ??= openEstate();
  const { address, browser, requests } = await estate;
  const before = requests.length;
  return {
    address,
    get strayRequests() {
      return requests.slice(before);
    },
    visit: (options) => visit(browser, address, options ?? {}),
    async close() {
      await Promise.all(browser.contexts().map((context) => context.close()));
      leaving = setTimeout(closeEstate, LINGER_MS);
    },
  };
}

async function closeEstate(): Promise<void> {
  const open = await estate;
  estate = null;
  await open?.close();
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
    deviceScaleFactor: (options.coarse ?? true) ? 0.5 : 1,
    acceptDownloads: true,
    reducedMotion: "reduce",
    serviceWorkers: options.offline ? "allow" : "block",
  });
  context.setDefaultTimeout(SLOW_MS);
  await context.addInitScript(() => {
    Object.assign(globalThis, { drysteadMarks: true });
  });
  if (!(options.graphics ?? true)) await context.addInitScript(takeGraphicsAway);
  if (options.theme) {
    await context.addInitScript((theme) => {
      localStorage.setItem("drystead.theme", theme);
    }, options.theme);
  }
  const troubles: string[] = [];
  const again = () => openPage(context, options.address ?? address, troubles);
  return { page: await again(), troubles, again, leave: () => context.close() };
}

/** Runs in the page before its own scripts: no canvas gives a context for graphics. */
function takeGraphicsAway(): void {
  const given = HTMLCanvasElement.prototype.getContext;
  HTMLCanvasElement.prototype.getContext = function (
    this: HTMLCanvasElement,
    ...[kind, options]: Parameters<typeof given>
  ) {
    return kind.startsWith("webgl") ? null : given.call(this, kind, options);
  } as typeof given;
}

async function openPage(
  context: BrowserContext,
  address: string,
  troubles: string[],
): Promise<Page> {
  const page = await context.newPage();
  page.on("console", (message) => {
    const isOfLayer = message.type() === "warning" && message.text().startsWith("layers[");
    if (message.type() === "error" || isOfLayer) troubles.push(`console: ${message.text()}`);
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
  // vitest's own NODE_ENV would build the page as for development
  const env = { ...process.env, NODE_ENV: "production" };
  execFileSync("npm", ["run", "-s", "build"], { cwd: ROOT, env, stdio: ["ignore", 2, 2] });
}

/** Latest change of a file, or of any file in a folder, ms; 0 when there is none. */
function modified(path: string): number {
  const found = statSync(path, { throwIfNoEntry: false });
  if (!found) return 0;
  if (!found.isDirectory()) return found.mtimeMs;
  return Math.max(0, ...readdirSync(path).map((name) => modified(join(path, name))));
}
