import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { PDFDocument } from "@cantoo/pdf-lib";
import { getDocumentProxy } from "unpdf";
import { afterEach, describe, expect, it } from "vitest";
import { withLabels } from "../../workers/command/page-labels.ts";
import { ownFolder } from "../helpers/own-folder.ts";
import { drystead, ROOT } from "../helpers/terminal.ts";

const PLAN = join(ROOT, "sample-terrain/demo.geojson");
const RASTER = join(ROOT, "sample-terrain/demo.tif");

const { folder } = ownFolder();

describe("print refuses with 1, a reason and nothing written", () => {
  const chromePath = process.env.CHROME_PATH;
  afterEach(() => {
    if (chromePath === undefined) delete process.env.CHROME_PATH;
    else process.env.CHROME_PATH = chromePath;
  });
  const refused = async (plan: string, raster: string, reason: RegExp, ...words: string[]) => {
    const before = readdirSync(folder);
    const asked = ["print", plan, "--terrain", raster, "--out", "pages", ...words];
    const { code, out, said } = await drystead(asked, folder);
    expect([code, out]).toEqual([1, ""]);
    expect(said).toMatch(reason);
    expect(said).not.toMatch(/\n\s+at |\.pdf/);
    expect(readdirSync(folder)).toEqual(before);
  };

  it("without a browser, saying what to install", async () => {
    process.env.CHROME_PATH = join(folder, "no-browser");
    await refused(PLAN, RASTER, /Expected an installed Chrome.*CHROME_PATH is .*no-browser/);
  });
  it("a plan that states no water, and one without a line", async () => {
    const { drystead: settings, ...collection } = JSON.parse(readFileSync(PLAN, "utf8"));
    const dry = join(folder, "dry.geojson");
    writeFileSync(dry, JSON.stringify({ ...collection, drystead: { version: 1 } }));
    await refused(dry, RASTER, /water's level; the plan states none/);
    const { water } = settings;
    const none = { type: "FeatureCollection", features: [], drystead: { version: 1, water } };
    const empty = join(folder, "empty.geojson");
    writeFileSync(empty, JSON.stringify(none));
    await refused(empty, RASTER, /Expected a ring or line; the plan has none/);
  });
  it("elevation data whose unit nobody stated, naming the option", async () => {
    const raster = join(ROOT, "tests/fixtures/rasters/unit-none.tif");
    await refused(PLAN, raster, /--vertical-unit m, ft or us-ft/);
  });
  it("a line that the plan does not have", async () => {
    await refused(PLAN, RASTER, /came "Q"\. It has A "/, "--line", "Q");
  });
});

describe("print with a command line that cannot be followed ends with 2 and the usage", () => {
  it.each([
    [["a.geojson", "--terrain", "a.tif"], /needs --out/],
    [["a.geojson", "--out", "x"], /needs --terrain/],
    [["a.geojson", "--terrain", "a.tif", "--out", "x", "--paper", "a5"], /came a5/],
  ])("%j", async (words, reason) => {
    const { code, out, said } = await drystead(["print", ...words], folder);
    expect([code, out]).toEqual([2, ""]);
    expect(said).toMatch(reason);
    expect(said).toContain("drystead print PLAN.geojson");
  });
});

describe("labels of PDF pages", () => {
  const blank = async (pages: number) => {
    const document = await PDFDocument.create();
    for (let page = 0; page < pages; page += 1) document.addPage();
    return document.save();
  };
  it("are read back by another library, with the title", async () => {
    const labels = ["Build 1", "Stakes 1", "Stakes 2", "Stakes 4", "Östliche (a) 1"];
    const pdf = await getDocumentProxy(await withLabels(await blank(5), "Hof „Nord“", labels));
    expect(await pdf.getPageLabels()).toEqual(labels);
    expect((await pdf.getMetadata()).info).toMatchObject({ Title: "Hof „Nord“" });
  });
  it("are refused where the file has another number of pages", async () => {
    await expect(withLabels(await blank(2), "", ["Build 1"])).rejects.toThrow(/Expected 1 pages/);
  });
});
