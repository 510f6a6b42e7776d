import { existsSync, openAsBlob } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { asFailure, failureOf, Refusal } from "../../shared/failure.ts";
import { planFileName } from "../../src/document/files.ts";
import { fileName } from "../../src/pages/download.ts";
import { openTerrain } from "../../workers/raster/terrain.ts";
import { madeFile } from "../helpers/raster-files.ts";
import { said } from "../helpers/said.ts";
import { shell } from "../helpers/terminal.ts";
import { tiff, tiffWith } from "../helpers/tiff-bytes.ts";

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));
const damaged = async (name: string) => ({
  name,
  blob: await openAsBlob(here(`../fixtures/damaged/${name}`)),
});

async function refusalOf(files: Parameters<typeof openTerrain>[0]) {
  const opened = await openTerrain(files, "metre").catch(asFailure);
  if (!("code" in opened)) throw new Error("The raster was opened.");
  return said(opened);
}

describe("a damaged raster", () => {
  it.each([
    ["abort-stripoffsets-float.tif", "raster/damaged"],
    ["abort-tileoffsets-double.tif", "raster/damaged"],
    ["deflate-bitflip-f32-deflate-strips.tif", "raster/damaged"],
    ["deflate-bitflip-i16-deflate-p2-tiles.tif", "raster/damaged"],
    ["scale-y-1e7.tif", "raster/cell-size"],
  ])("%s is refused with %s", async (name, code) => {
    const failure = await refusalOf([await damaged(name)]);
    expect(failure.code).toBe(code);
    expect(failure.message).toContain(name);
  });

  it("whose placement shrinks every height to nothing is refused, not read as 0", async () => {
    const matrix = [1, 0, 0, 482_000, 0, -1, 0, 4_983_000, 0, 0, 5e-318, 0, 0, 0, 0, 1];
    const keys = [...[1, 1, 0, 4], ...[1024, 0, 1, 1], ...[1025, 0, 1, 1], ...[3072, 0, 1, 26915]];
    const bytes = tiffWith({
      33550: undefined,
      33922: undefined,
      34264: tiff.double(...matrix),
      34735: tiff.short(...keys, 4099, 0, 1, 9001),
    });
    expect((await refusalOf([madeFile("shrunk.tif", bytes)])).code).toBe("raster/height-scale");
  });

  it("is what is said of 200 files that are no raster but it", async () => {
    const others = Array.from({ length: 199 }, (_, k) => madeFile(`note-${k}.txt`, "hello"));
    const failure = await refusalOf([...others, await damaged("abort-stripoffsets-float.tif")]);
    expect(failure).toMatchObject({
      ...{ code: "raster/several", given: { first: { code: "raster/damaged" } } },
    });
    expect(failure.message).toContain("abort-stripoffsets-float.tif");
    expect(failure.message).toContain("199 more");
    expect(failure.message.length).toBeLessThan(600);
  });
});

describe("a refusal", () => {
  it("quotes no more of a file than can be read", () => {
    const long = "x".repeat(475_690);
    for (const mark of [`"${long}"`, long]) {
      const failure = failureOf("raster/no-data-unreadable", { name: "dem.tif", mark });
      const { message } = said(failure);
      expect(message.length).toBeLessThan(1500);
      expect(message).toMatch(/^"dem\.tif" marks its holes .*not a number\.$/);
      expect(new Refusal(failure).message.length).toBeLessThan(1500);
      expect(said(asFailure(new Error(message))).message.length).toBeLessThan(1500);
    }
  });
});

describe("names of downloads", () => {
  const name = { title: "A very long title ".repeat(9), extension: "csv", type: "text/csv" };
  it("stay apart and short however long the title is", () => {
    const names = ["Line A", "Line B"].flatMap((alternative) =>
      ["stations", "sequence"].map((what) => fileName({ ...name, alternative, what })),
    );
    expect(new Set(names).size).toBe(4);
    for (const each of names) expect(each.length).toBeLessThanOrEqual(64);
    expect(names[0]).toMatch(/^A-very-long-title.*-Line-A-stations\.csv$/);
    expect(planFileName(name.title).length).toBeLessThanOrEqual(68);
  });
});

describe.runIf(existsSync("/dev/full"))("the terminal program", () => {
  const size = "drystead size sample-terrain/tilted.geojson --terrain sample-terrain/tilted.tif";

  it("says that the disk is full, with 1 and without a stack", () => {
    const { code, said } = shell(`${size} > /dev/full`);
    expect(code).toBe(1);
    expect(said).toContain("the disk is full");
    expect(said).not.toMatch(/\n\s+at /);
  });

  it("ends quietly with 141 when nobody reads on", () => {
    const { out, said } = shell(`${size} | true; echo \${PIPESTATUS[0]}`);
    expect(said).toBe("");
    expect(out.trim()).toBe("141");
  });
});
