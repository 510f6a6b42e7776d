import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { getDocumentProxy } from "unpdf";
import { afterAll, beforeAll, expect, it } from "vitest";
import { sample } from "../helpers/screen.ts";
import { drystead, type Ended } from "../helpers/terminal.ts";

/* PDF files as another library than wrote them reads them: PDF.js, in the build of unpdf. */

const LINE = "By high ground";
const SITE = "Miller farm, “north” yard";
/** How long a machine under load may take, ms. */
const SLOW_MS = 300_000;
let folder = "";
let ended: Ended;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "drystead-print-test-"));
  const plan = JSON.parse(readFileSync(sample("demo.geojson"), "utf8"));
  plan.drystead.title = SITE;
  writeFileSync(join(folder, "north.geojson"), JSON.stringify(plan));
  const words = ["--out", "pages", "--paper", "a4", "--line", LINE, "--no-data", "-4321"];
  ended = await drystead(
    ["print", "north.geojson", "--terrain", sample("demo.tif"), ...words],
    folder,
  );
}, SLOW_MS);
afterAll(() => rmSync(folder, { recursive: true }));

async function textOf(page: { getTextContent(): Promise<{ items: readonly object[] }> }) {
  const { items } = await page.getTextContent();
  const text = items.map((item) => ("str" in item ? `${item.str}` : "")).join(" ");
  return text.replace(/\s+/g, " ");
}

it("print writes one PDF file for the line named: title, labels, text, and number and site on every page", async () => {
  expect([ended.code, ended.out]).toEqual([0, ""]);
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
