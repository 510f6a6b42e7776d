import type { Browser, Page } from "playwright-core";
import { type Refusal, refusal } from "../../shared/failure.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { withLabels } from "./page-labels.ts";
import { serveProgram } from "./served-program.ts";

export type PaperName = "Letter" | "A4";

/** What the pages of one line must be of: calculated by the terminal, apart from the browser. */
export interface LineToPrint {
  /** A plan file in which this line is the chosen one. */
  readonly planPath: string;
  readonly lineId: string;
  readonly letter: string;
  /** The plan's title, on every page. */
  readonly site: string;
  /** The plan's number, on every page. */
  readonly number: string;
  readonly pdfPath: string;
}

/** One run of the browser. */
export interface Printing {
  /** Path of the browser. */
  readonly executablePath: string;
  readonly paper: PaperName;
  readonly system: UnitSystem;
  /** Rasters and their side-car files. */
  readonly terrainPaths: readonly string[];
  readonly lines: readonly LineToPrint[];
  /** Takes the PDF file of a line. */
  readonly write: (line: LineToPrint, pdf: Uint8Array, pages: number) => Promise<void>;
}

/** How long the pages of one line may take on a slow machine, milliseconds. */
const SLOW_MS = 300_000;
/** The browser asks no other host; the pages are drawn without a graphics card. */
const FLAGS = [
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--no-first-run",
  "--use-angle=swiftshader",
  "--enable-unsafe-swiftshader",
];
const ROOM = ".sheets";
const PAGE = ".sheet-page";

/**
 * Opens plan and rasters in the built program and prints the pages of each line.
 * @throws Refusal `print/not-built`, `print/browser-failed`, `print/no-pages`, `print/no-sections`, `print/other-plan`
 */
export async function printPages(printing: Printing): Promise<void> {
  const { executablePath, paper, system, terrainPaths, lines, write } = printing;
  const served = await serveProgram();
  let browser: Browser | null = null;
  try {
    browser = await startBrowser(executablePath);
    const context = await browser.newContext({ serviceWorkers: "block", reducedMotion: "reduce" });
    context.setDefaultTimeout(SLOW_MS);
    await context.addInitScript(
      `localStorage.setItem("drystead.paper", "${paper}"); localStorage.setItem("drystead.units", "${system}");`,
    );
    const page = await context.newPage();
    await page.goto(served.address);
    await page.locator(".alternative").first().waitFor();
    let files = [...terrainPaths];
    for (const line of lines) {
      await page
        .getByLabel("Plan or elevation data files")
        .setInputFiles([...files, line.planPath]);
      files = [];
      const labels = await pagesOf(page, line);
      const title = `${line.site}, line ${line.letter}`;
      const pdf = await page.pdf({
        ...{ preferCSSPageSize: true, printBackground: true },
        ...{ tagged: true, outline: true },
      });
      await write(line, await withLabels(pdf, title, labels), labels.length);
    }
  } finally {
    await browser?.close();
    served.close();
  }
}

async function startBrowser(executablePath: string): Promise<Browser> {
  const { chromium } = await import("playwright-core");
  const isRoot = process.getuid?.() === 0;
  const args = isRoot ? [...FLAGS, "--no-sandbox"] : FLAGS;
  return chromium.launch({ executablePath, args }).catch((thrown: Error) => {
    const cause = thrown.message.split("\n")[0]!;
    throw refusal("print/browser-failed", { path: executablePath, cause });
  });
}

/**
 * The label of each page, once the pages are whole and every one of them is of this line of this plan.
 * @throws Refusal `print/no-pages`, `print/no-sections`, `print/other-plan`
 */
export async function pagesOf(page: Page, line: LineToPrint): Promise<string[]> {
  const { lineId, number, site } = line;
  const isOfLine = `[data-line=${JSON.stringify(lineId)}][data-plan-number="${number}"]`;
  const ready = `${ROOM}[data-pages="ready"]${isOfLine}`;
  const whole = page.locator(`${ready}:not(:has([data-laid="no"], [data-laid="failed"]))`);
  const failed = page.locator(`${ready} [data-laid="failed"] .section-failed`).first();
  const ended = whole.or(failed).first();
  const atRest = `document.fonts.ready.then(() => new Promise((done) =>
    requestAnimationFrame(() => requestAnimationFrame(() => done(true)))))`;
  try {
    if ((await page.locator(ROOM).count()) === 0) {
      await page.getByRole("button", { name: "Print", exact: true }).first().click();
    }
    await ended.waitFor();
    await page.evaluate(atRest);
    await ended.waitFor();
  } catch {
    throw await noPages(page, number);
  }
  if (await failed.isVisible()) {
    throw refusal("print/no-sections", { said: await failed.innerText() });
  }
  const read = await page.locator(PAGE).evaluateAll((pages) =>
    pages.map((each) => ({
      label: each.getAttribute("data-page-label") ?? "",
      site: each.querySelector(".title-site strong")?.textContent ?? "",
      number: each.querySelector(".title-cells strong")?.textContent ?? "",
    })),
  );
  for (const each of read) {
    if (each.number === number && each.site === site) continue;
    const came = { number: each.number, site: each.site };
    throw refusal("print/other-plan", { expected: { number, site }, came, page: each.label });
  }
  return read.map(({ label }) => label);
}

async function noPages(page: Page, number: string): Promise<Refusal> {
  const rooms = await page
    .locator(ROOM)
    .evaluateAll((all) => all.map((each) => each.getAttribute("data-plan-number")));
  const other = rooms.find((shown) => shown !== null && shown !== number);
  if (other) {
    const [expected, came] = [number, other].map((each) => ({ number: each, site: null }));
    return refusal("print/other-plan", { expected: expected!, came: came!, page: null });
  }
  const said = await page.locator(".sheets-none p, .notice-error .notice-text").allTextContents();
  return refusal("print/no-pages", { afterS: SLOW_MS / 1000, said });
}
