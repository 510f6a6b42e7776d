import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { ownFolder } from "../helpers/own-folder.ts";
import { drystead, ROOT, shell } from "../helpers/terminal.ts";

const PLAN = join(ROOT, "sample-terrain/demo.geojson");
const RASTER = join(ROOT, "sample-terrain/demo.tif");

const { folder } = ownFolder();

const exporting = (...words: string[]) =>
  drystead(["export", PLAN, "--terrain", RASTER, ...words], folder);
const read = (name: string) => readFileSync(join(folder, name), "utf8");

describe("export", () => {
  it.each([
    ["csv", /^row,site,line_letter,/],
    ["geojson", /^\{\n "type": "FeatureCollection"/],
    ["gpx", /^<\?xml .*\n<gpx version="1\.1"/],
    ["kml", /^<\?xml .*\n<kml xmlns="http:\/\/www\.opengis\.net\/kml\/2\.2"/],
    ["dxf", /^0\nSECTION\n/],
  ])(
    "writes %s to the file named, says so and what must be fixed, and prints nothing",
    async (as, begins) => {
      const { code, out, said } = await exporting("--as", as, "--out", `demo.${as}`);
      expect([code, out]).toEqual([0, ""]);
      expect(said).toMatch(
        /1 Must fix: fix it before this line is built\.\n.*47 stakes written to demo\./,
      );
      expect(read(`demo.${as}`)).toMatch(begins);
    },
  );

  it("takes the line by letter, name or id, and the units asked for", async () => {
    const lines = ["B", "b", "By high ground"].map((line) =>
      exporting("--as", "csv", "--out", "-", "--line", line, "--units", "metric"),
    );
    const outs = (await Promise.all(lines)).map(({ out }) => out);
    expect(new Set(outs).size).toBe(1);
    expect(outs[0]).toContain(",B,By high ground,");
    expect(outs[0]).toContain("top_of_levee_m");
  });

  it("replaces a file that is there and leaves nothing else beside it", async () => {
    mkdirSync(join(folder, "own"));
    writeFileSync(join(folder, "own/line.csv"), "old");
    await exporting("--as", "csv", "--out", "own/line.csv");
    expect(read("own/line.csv")).toMatch(/^row,/);
    expect(readdirSync(join(folder, "own"))).toEqual(["line.csv"]);
  });
});

describe("export refuses with 1, a reason and nothing written", () => {
  const refused = async (words: readonly string[], reason: RegExp) => {
    const before = readdirSync(folder);
    const { code, out, said } = await drystead(words, folder);
    expect([code, out]).toEqual([1, ""]);
    expect(said).toMatch(reason);
    expect(said).not.toMatch(/\n\s+at /);
    expect(readdirSync(folder)).toEqual(before);
  };
  const asked = (plan: string, ...words: string[]) => [
    ...["export", plan, "--terrain", RASTER, "--as", "csv", "--out", "x.csv"],
    ...words,
  ];

  it("a line that the plan does not have, naming those it has", async () => {
    await refused(asked(PLAN, "--line", "Q"), /came "Q"\. It has A ".+", B ".+"/);
  });
  it("a plan without a line, and one with several of which none is chosen", async () => {
    const text = readFileSync(PLAN, "utf8");
    const { drystead: settings, ...collection } = JSON.parse(text);
    const none = collection.features.filter(
      ({ properties }: { properties: { role: string } }) => properties.role !== "alignment",
    );
    const write = (name: string, value: object) => {
      const path = join(folder, name);
      writeFileSync(path, JSON.stringify(value));
      return path;
    };
    const empty = write("none.geojson", {
      ...collection,
      features: none,
      drystead: { ...settings, chosen: undefined, chosenId: undefined },
    });
    await refused(asked(empty), /the plan has none/);
    const free = write("free.geojson", {
      ...collection,
      drystead: { ...settings, chosen: null, chosenId: null },
    });
    await refused(asked(free), /Expected --line/);
  });
  it("a plan that states no water", async () => {
    const { drystead: _, ...collection } = JSON.parse(readFileSync(PLAN, "utf8"));
    const path = join(folder, "dry.geojson");
    writeFileSync(path, JSON.stringify({ ...collection, drystead: { version: 1 } }));
    await refused(asked(path), /water's level; the plan states none/);
  });
  it.each([
    ["none/x.csv", /there is no such folder/],
    [".", /it is a folder/],
    [PLAN, /is read by this command/],
    [RASTER, /is read by this command/],
    ["/dev/full", /the disk is full/],
  ])("to write to %s", async (out, reason) => {
    await refused(["export", PLAN, "--terrain", RASTER, "--as", "csv", "--out", out], reason);
  });
});

describe("export with a command line that cannot be followed ends with 2 and the usage", () => {
  it.each([
    [["a.geojson", "--terrain", "a.tif", "--out", "x"], /needs --as and one of csv, geojson/],
    [["a.geojson", "--terrain", "a.tif", "--out", "x", "--as", "shp"], /came shp/],
    [["a.geojson", "--terrain", "a.tif", "--as", "csv"], /needs --out/],
    [["a.geojson", "--as", "csv", "--out", "x"], /needs --terrain/],
    [["--as", "csv", "--out", "x"], /needs a plan file/],
  ])("%j", async (words, reason) => {
    const { code, out, said } = await drystead(["export", ...words], folder);
    expect([code, out]).toEqual([2, ""]);
    expect(said).toMatch(reason);
    expect(said).toContain("drystead export PLAN.geojson");
  });
});

it("export ends as a shell expects when nobody reads its standard output", () => {
  const { out, said } = shell(
    'drystead export demo.geojson --terrain demo.tif --as geojson --out - | head -c 10; echo "$PIPESTATUS"',
    join(ROOT, "sample-terrain"),
  );
  expect(out.slice(0, 10)).toBe('{\n "type":');
  expect(out.slice(10)).toMatch(/^141\n$/);
  expect(said).not.toMatch(/EPIPE|\n\s+at /);
});
