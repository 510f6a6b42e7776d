import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "playwright-core";
import { getDocumentProxy } from "unpdf";
import { afterAll, beforeAll, expect, it } from "vitest";
import { pagesOf } from "../../workers/command/print-pages.ts";
import { FLAGS } from "../helpers/harness.ts";
import { type RangeServer, rangeServer } from "../helpers/range-server.ts";
import { sample } from "../helpers/screen.ts";
import { drystead, type Ended } from "../helpers/terminal.ts";
import { findBrowser } from "../tools/browser.mjs";

/* PDF files as another library than wrote them reads them: PDF.js, in the build of unpdf. */

const LINE = "By high ground";
const SITE = "Miller farm, “north” yard";
/** How long a machine under load may take, ms. */
const SLOW_MS = 300_000;
let folder = "";
let ended: Ended;
/** The elevation data is at an address: it is counted on by ranges, and copied for the pages. */
let server: RangeServer;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "drystead-print-test-"));
  const plan = JSON.parse(readFileSync(sample("demo.geojson"), "utf8"));
  plan.drystead.title = SITE;
  writeFileSync(join(folder, "north.geojson"), JSON.stringify(plan));
  const words = ["--out", "pages", "--paper", "a4", "--line", LINE, "--no-data", "-4321"];
  server = await rangeServer(new Uint8Array(readFileSync(sample("demo.tif"))), "demo.tif");
  ended = await drystead(
    ["print", "north.geojson", "--terrain", server.at("well"), ...words],
    folder,
  );
}, SLOW_MS);
afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true });
});

async function textOf(page: { getTextContent(): Promise<{ items: readonly object[] }> }) {
  const { items } = await page.getTextContent();
  const text = items.map((item) => ("str" in item ? `${item.str}` : "")).join(" ");
  return text.replace(/\s+/g, " ");
}

it("print writes one PDF file for the line named: title, labels, text, and number and site on every page", async () => {
  expect([ended.code, ended.out]).toEqual([0, ""]);
  expect(ended.said).toContain('"demo.tif" is copied whole, 2 MB, for the pages.');
  expect(readdirSync(join(folder, "pages"))).toEqual(["north-line-B.pdf"]);
  const said = /Line B, plan number (\w{4}-\w\w): (\d+) pages written to pages\/north-line-B\.pdf/;
  const [, number, count] = said.exec(ended.said) ?? [];
  const bytes = new Uint8Array(readFileSync(join(folder, "pages/north-line-B.pdf")));
  const pdf = await getDocumentProxy(bytes);
  const { info } = await pdf.getMetadata();
  expect(info).toMatchObject({ Title: `${SITE}, line B` });
  expect(pdf.numPages).toBe(Number(count));
  const labels = (await pdf.getPageLabels()) ?? [];
  expect(labels).toHaveLength(pdf.numPages);
  expect(labels.slice(0, 3)).toEqual(["Build 1", "Stakes 1", "Stakes 2"]);
  expect(new Set(labels).size).toBe(labels.length);
  expect(await pdf.getMarkInfo()).toMatchObject({ Marked: true });
  for (const [index, label] of labels.entries()) {
    const page = await pdf.getPage(index + 1);
    const { width, height } = page.getViewport({ scale: 1 });
    expect([width / 72, height / 72].map((inches) => Math.round(inches * 25.4))).toEqual([
      210, 297,
    ]);
    const text = await textOf(page);
    expect(text, label).toContain(number);
    expect(text, label).toContain(SITE);
    expect(text, label).toContain(`Line B, ${LINE}:`);
  }
});

it("print refuses at once pages with another title or number, and cross-sections that could not be drawn", async () => {
  const browser = await chromium.launch({ executablePath: findBrowser(), args: FLAGS });
  const page = await browser.newPage();
  const line = {
    lineId: "b",
    letter: "B",
    site: SITE,
    number: "7F3A-21",
    planPath: "",
    pdfPath: "",
  };
  const shown = (laid: string, site: string, number: string, more = "") =>
    page.setContent(`<div class="sheets" data-pages="ready" data-line="b" data-plan-number="7F3A-21">
      <div data-laid="${laid}"><section class="sheet-page" data-page-label="Build 1">
      <p class="title-site"><strong>${site}</strong></p>
      <dl class="title-cells"><strong>${number}</strong></dl>${more}</section></div></div>`);
  await shown("yes", SITE, "7F3A-21");
  expect(await pagesOf(page, line)).toEqual(["Build 1"]);
  await shown("yes", "Another farm", "7F3A-21");
  await expect(pagesOf(page, line)).rejects.toMatchObject({ code: "print/other-plan" });
  await shown("yes", SITE, "AAAA-00");
  await expect(pagesOf(page, line)).rejects.toMatchObject({ code: "print/other-plan" });
  await shown("failed", SITE, "7F3A-21", '<p class="section-failed">No cross-sections.</p>');
  await expect(pagesOf(page, line)).rejects.toMatchObject({
    failure: { code: "print/no-sections", given: { said: "No cross-sections." } },
  });
  await browser.close();
});
