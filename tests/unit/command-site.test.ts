import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readPlanFile } from "../../shared/plan-file.ts";
import { ownFolder } from "../helpers/own-folder.ts";
import { ROOT } from "../helpers/terminal.ts";

const PLAN = join(ROOT, "sample-terrain/demo.geojson");
const RASTER = join(ROOT, "sample-terrain/demo.tif");
const TILTED = join(ROOT, "sample-terrain/tilted.geojson");
const TILTED_RASTER = join(ROOT, "sample-terrain/tilted.tif");

const { folder, drystead, written } = ownFolder();

/** The plan's features that are alignments, as GeoJSON. */
function alignmentsOf(text: string) {
  return JSON.parse(text).features.filter(
    (each: { properties: { role: string } }) => each.properties.role === "alignment",
  );
}

/** Totals by `size` of one alternative of a plan file. */
async function sizedBySize(path: string, raster: string, name: string) {
  const { code, out } = await drystead(["size", path, "--terrain", raster]);
  expect(code).toBe(0);
  return JSON.parse(out).alternatives.find((each: { name: string }) => each.name === name).totals;
}

describe("site", () => {
  it("prints the plan with the found ring as one more feature, whose figures are those of `size`", async () => {
    const { code, out, said } = await drystead(["site", PLAN, "--terrain", RASTER]);
    expect(code).toBe(0);
    const before = readPlanFile(readFileSync(PLAN, "utf8"));
    const after = readPlanFile(out);
    if (!before.ok || !after.ok) throw new Error("A plan file was refused.");
    const { alignments, carried: _, ...rest } = after.value.plan;
    const { alignments: drawn, carried: __, ...same } = before.value.plan;
    expect(rest).toEqual(same);
    expect(alignments.at(-1)!.setbackM).toBe(rest.practice.setbackM);
    expect(alignments.slice(0, -1)).toEqual(drawn);
    const found = alignmentsOf(out).at(-1);
    expect(found.geometry.type).toBe("Polygon");
    expect(found.properties).toMatchObject({
      ...{ role: "alignment", name: "Found ring", windowM: 60, maxCorners: 24 },
      howGood: { kind: "estimate", gapShare: expect.any(Number) },
      encloses: ["structure-1", "structure-2", "structure-3"],
    });
    const totals = await sizedBySize(written("found.geojson", out), RASTER, "Found ring");
    expect(found.properties).toMatchObject(totals);
    expect(totals.bags).toBeGreaterThan(1000);
    expect(said).toContain(`Found ring: ${totals.bags.toLocaleString("en-US")} bags`);
    expect(said).toMatch(/bags fewer than "Drawn ring" \(2\d %\)/);
  });

  it("gives a line tied in at both ends where high ground saves a part, and a second one its own name", async () => {
    const plan = JSON.parse(readFileSync(PLAN, "utf8"));
    plan.drystead.water.stageM -= 0.2;
    const low = written("low.geojson", JSON.stringify(plan));
    const options = ["--terrain", RASTER, "--judge", "none", "--key-in-m", "2"];
    const first = await drystead(["site", low, ...options, "--window-m=60"]);
    expect(first.code).toBe(0);
    const line = alignmentsOf(first.out).at(-1);
    expect(line.geometry.type).toBe("LineString");
    expect(line.properties.howGood).toBe(null);
    expect(line.properties.pieces[0].tieIns).toHaveLength(2);
    const twice = await drystead([
      ...["site", written("once.geojson", first.out), ...options],
      ...["--building", "House", "--max-corners", "9"],
    ]);
    expect(twice.code).toBe(0);
    const names = alignmentsOf(twice.out).map(
      (each: { properties: { name: string } }) => each.properties.name,
    );
    expect(names.slice(-2)[0]).toBe("Found line");
    expect(new Set(names).size).toBe(names.length);
    const house = alignmentsOf(twice.out).at(-1);
    expect(house.properties.encloses).toEqual(["structure-1"]);
    expect(house.geometry.coordinates[0].length).toBeLessThanOrEqual(10);
  });

  it("ends with 1 and the reason when no ring is possible", async () => {
    const plan = JSON.parse(readFileSync(TILTED, "utf8"));
    const bare = plan.features.filter(
      (each: { properties: { role: string } }) => each.properties.role !== "structure",
    );
    const none = written("none.geojson", JSON.stringify({ ...plan, features: bare }));
    const options = ["--terrain", TILTED_RASTER, "--judge", "none"];
    const cases: readonly (readonly [readonly string[], string])[] = [
      [["site", none, ...options], "site/no-structure"],
      [["site", TILTED, ...options, "--window-m", "2"], "site/window-too-small"],
      [["site", TILTED, ...options, "--building", "Castle"], "plan/no-such-structure"],
      [["site", TILTED, "--terrain", join(folder, "absent.tif")], "file/missing"],
    ];
    for (const [words, code] of cases) {
      const ended = await drystead(words);
      expect(ended.code, code).toBe(1);
      expect(ended.out).toBe("");
      expect(ended.said).toContain(`(${code})`);
    }
  });

  it("ends with 2 and tells how it is used for a command line that cannot be followed", async () => {
    const raster = ["--terrain", TILTED_RASTER];
    for (const words of [
      ["site"],
      ["site", TILTED],
      ["site", TILTED, TILTED, ...raster],
      ["site", TILTED, ...raster, "--window-m", "wide"],
      ["site", TILTED, ...raster, "--max-corners", "3"],
      ["site", TILTED, ...raster, "--judge", "maybe"],
      ["site", TILTED, ...raster, "--window"],
    ]) {
      const ended = await drystead(words);
      expect(ended.code, words.join(" ")).toBe(2);
      expect(ended.out).toBe("");
      expect(ended.said).toContain("drystead site PLAN.geojson");
    }
  });
});
