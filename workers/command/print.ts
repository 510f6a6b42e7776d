import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { Refusal } from "../../shared/failure.ts";
import { letterOfLine } from "../../shared/line-letter.ts";
import { writePlanFile } from "../../shared/plan-file.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { lineAsked } from "./asked-line.ts";
import { readPlan, terrainFiles } from "./files.ts";
import { installedBrowser } from "./find-browser.ts";
import { systemFrom, UNITS_OPTION } from "./report-units.ts";
import { serveProgram } from "./served-program.ts";
import { Misuse, type Terminal, type Verb } from "./verb.ts";
import { readWords } from "./words.ts";

const HELP = `drystead print PLAN.geojson --terrain RASTER... --out FOLDER
              [--paper letter|a4] [--line LINE] [--units us|metric]

Writes the printed pages of one line as PDF: one file for each sheet, and all.pdf with every sheet.

  PLAN.geojson       a plan file; it comes before --terrain
  --terrain RASTER   one raster, or the tiles of one survey; GeoTIFF or Esri ASCII grid
  --out FOLDER       where the files go; it is made if it is not there
  --paper            letter (when left out) or a4
  --line LINE        letter, name or id of the line; left out: the plan's chosen line, else its only one
  --units us|metric  units of the pages (us when left out)

The pages are those of the program on screen, laid out by an installed Chrome or Chromium (CHROME_PATH names
another), on this machine alone. The program must be built: npm run build.
`;

/** How long the pages may take on a slow machine, milliseconds. */
const SLOW_MS = 180_000;
/** What is opened, and pages that are laid out anew, rest after this long, milliseconds. */
const SETTLE_MS = 3000;
const SHEET = ".sheet-page";

/** `print`: the printed pages of one line as PDF files. */
export const print: Verb = {
  name: "print",
  summary: "the printed pages of one line as PDF",
  help: HELP,
  run: runPrint,
};

async function runPrint({ words, resolve, say }: Terminal): Promise<string> {
  const { plain, options } = readWords(words, {
    "--terrain": "many",
    "--out": "one",
    "--paper": "one",
    "--line": "one",
    ...UNITS_OPTION,
  });
  const [planPath, ...more] = plain;
  const rasters = options.get("--terrain");
  const out = options.get("--out")?.[0];
  if (planPath === undefined) throw new Misuse("print needs a plan file, before --terrain.");
  if (more.length > 0) throw new Misuse(`print takes one plan file; ${more[0]} is one too many.`);
  if (!rasters) throw new Misuse("print needs --terrain and at least one raster.");
  if (out === undefined) throw new Misuse("print needs --out and a folder.");
  const paper = paperFrom(options.get("--paper")?.[0]);
  const system = systemFrom(options);
  const { plan, notes } = await readPlan(resolve(planPath));
  for (const note of notes) say(`Note: ${note}`);
  const line = lineAsked(plan, options.get("--line")?.[0]);
  await terrainFiles(rasters.map(resolve));
  const browserPath = installedBrowser(process.env);
  const folder = resolve(out);
  await mkdir(folder, { recursive: true });
  const own = await mkdtemp(join(tmpdir(), "drystead-print-"));
  try {
    const planFile = join(own, "plan.geojson");
    await writeFile(planFile, writePlanFile({ ...plan, chosenId: line.id }));
    const files = [...rasters.map(resolve), planFile];
    const title = `${plan.title}, line ${letterOfLine(plan, line.id)}`;
    const written = await inBrowser(browserPath, { paper, system, files }, (page) =>
      writePdfs(page, folder, title),
    );
    for (const name of written) say(`${join(out, name)} written.`);
  } finally {
    await rm(own, { recursive: true, force: true });
  }
  return "";
}

type PaperName = "Letter" | "A4";

function paperFrom(word = "letter"): PaperName {
  if (word === "letter") return "Letter";
  if (word === "a4") return "A4";
  throw new Misuse(`--paper is letter or a4; came ${word}.`);
}

interface Printed {
  readonly paper: PaperName;
  readonly system: UnitSystem;
  readonly files: readonly string[];
}

/** Opens plan and rasters in the built program and hands its pages over. */
async function inBrowser<T>(
  executablePath: string,
  { paper, system, files }: Printed,
  use: (page: Page) => Promise<T>,
): Promise<T> {
  const { chromium } = await import("playwright-core");
  const served = await serveProgram();
  const args = ["--no-sandbox", "--use-angle=swiftshader", "--enable-unsafe-swiftshader"];
  const browser = await chromium.launch({ executablePath, args });
  try {
    const context = await browser.newContext({ serviceWorkers: "block", reducedMotion: "reduce" });
    context.setDefaultTimeout(SLOW_MS);
    await context.addInitScript(
      `localStorage.setItem("drystead.paper", "${paper}"); localStorage.setItem("drystead.units", "${system}");`,
    );
    const page = await context.newPage();
    await page.goto(served.address);
    await page.locator(".alternative").first().waitFor();
    await page.getByLabel("Plan or elevation data files").setInputFiles([...files]);
    await page
      .getByText("plan.geojson")
      .first()
      .waitFor({ timeout: 5000 })
      .catch(() => {});
    await openPages(page);
    return await use(page);
  } finally {
    await browser.close();
    served.close();
  }
}

/** @throws Refusal `print/no-pages` with what the program says in their place */
async function openPages(page: Page): Promise<void> {
  await page
    .getByText(/^[\d,]+ bags/)
    .first()
    .waitFor();
  await page.waitForTimeout(SETTLE_MS);
  await page.keyboard.press("p");
  await page
    .locator(SHEET)
    .first()
    .waitFor()
    .catch(async () => {
      const said = await page.locator(".sheets-none, .notice").allTextContents();
      throw new Refusal(
        "print/no-pages",
        `Expected pages to print; the program made none. ${said.join(" ").slice(0, 400)}`,
        "Open the plan in the program, and correct what it says there.",
      );
    });
  await page.evaluate("document.fonts.ready.then(() => true)");
  await page.waitForTimeout(SETTLE_MS);
}

/** One file for each sheet and one with all of them; their names. */
async function writePdfs(page: Page, folder: string, title: string): Promise<string[]> {
  const labels = await page
    .locator(SHEET)
    .evaluateAll((pages) => pages.map((each) => each.getAttribute("aria-label") ?? ""));
  const sheets = [...new Set(labels.map((label) => label.split(":")[0]!))];
  const written: string[] = [];
  for (const sheet of [null, ...sheets]) {
    const name = sheet === null ? "all.pdf" : `${sheet.toLowerCase().replaceAll(" ", "-")}.pdf`;
    const named = sheet === null ? title : `${title}: ${sheet}`;
    await page.evaluate(`document.title = ${JSON.stringify(named)}`);
    const own = labels.flatMap((label, i) =>
      sheet === null || label.startsWith(`${sheet}:`) ? [i + 1] : [],
    );
    const pageRanges = `${own[0]}-${own.at(-1)}`;
    const path = join(folder, name);
    await page.pdf({
      path,
      pageRanges,
      preferCSSPageSize: true,
      printBackground: true,
      tagged: true,
    });
    written.push(name);
  }
  return written;
}
