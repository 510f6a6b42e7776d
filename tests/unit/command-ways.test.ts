import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { ownFolder } from "../helpers/own-folder.ts";
import { ROOT } from "../helpers/terminal.ts";

const PLAN = join(ROOT, "sample-terrain/tilted.geojson");
const RASTER = join(ROOT, "sample-terrain/tilted.tif");
const ON_IT = [PLAN, "--terrain", RASTER];

const { folder, drystead } = ownFolder();

type Place = readonly [number, number];
const plan = JSON.parse(readFileSync(PLAN, "utf8"));
const ring: readonly Place[] = plan.features.find(
  (each: { geometry: { type: string }; properties: { role: string } }) =>
    each.geometry.type === "Polygon" && each.properties.role === "alignment",
).geometry.coordinates[0];
const middle = ([lon, lat]: Place, [toLon, toLat]: Place): Place => [
  (lon + toLon) / 2,
  (lat + toLat) / 2,
];
/** From the middle of the ring through the middle of its leg `k`, as far outside as inside. */
function across(k: number): Place[] {
  const inside = middle(ring[0]!, ring[2]!);
  const at = middle(ring[k]!, ring[k + 1]!);
  return [
    [inside[0] + 0.9 * (at[0] - inside[0]), inside[1] + 0.9 * (at[1] - inside[1])],
    [inside[0] + 1.1 * (at[0] - inside[0]), inside[1] + 1.1 * (at[1] - inside[1])],
  ];
}

/** Writes lines of a county's file. */
function written(
  name: string,
  ...lines: readonly { readonly at: readonly Place[]; readonly columns: object }[]
): string {
  const features = lines.map(({ at, columns }) => ({
    ...{ type: "Feature", properties: columns },
    geometry: { type: "LineString", coordinates: at },
  }));
  const path = join(folder, name);
  writeFileSync(path, JSON.stringify({ type: "FeatureCollection", features }));
  return name;
}

/** The lowest leg of the ring is under water; a culvert through it brings the water in. */
const DEEPEST = 0;
const OPEN = { FULLNAME: "Ditch 4", up: 328.084, down: 328.084, dia: 18 };
const COLUMNS = [
  ...["--first-invert-column", "up", "--last-invert-column", "down", "--invert-unit", "ft"],
  ...["--size-column", "dia", "--size-unit", "in"],
];

describe("culverts and roads of files", () => {
  it("count in a trace as those that are drawn: the ring lets water in until they are plugged", async () => {
    const culverts = written("culverts.geojson", { at: across(DEEPEST), columns: OPEN });
    const roads = written("roads.geojson", { at: [ring[0]!, ring[2]!], columns: { name: "Out" } });
    const ended = await drystead([
      ...["trace", ...ON_IT, "--culverts", culverts, ...COLUMNS, "--roads", roads],
    ]);
    expect(ended).toMatchObject({ code: 0 });
    const { alternatives, pipes, roads: ways } = JSON.parse(ended.out);
    expect(pipes).toMatchObject([
      { kind: "culvert", name: "Ditch 4", plugged: false, isKnown: true, passesAboveM: 100 },
    ]);
    expect(alternatives[0]).toMatchObject({
      ...{ name: "Rectangle", dry: false },
      pipes: { plugged: { dry: true, notKnown: null }, open: { dry: false, notKnown: null } },
    });
    expect(alternatives[0].plugs).toMatchObject([{ name: 'Culvert "Ditch 4"', amount: "1" }]);
    expect(alternatives[0].checks.map(({ id }: { id: string }) => id)).toContain("let-in-by-pipe");
    expect(ways).toMatchObject([{ name: "Out", isKnown: true }]);
  });

  it("give a sized line its Must fix and the plug to get", async () => {
    const culverts = written("culverts.geojson", { at: across(DEEPEST), columns: OPEN });
    const ended = await drystead(["size", ...ON_IT, "--culverts", culverts, ...COLUMNS]);
    expect(ended).toMatchObject({ code: 0 });
    const [rectangle] = JSON.parse(ended.out).alternatives;
    expect(rectangle.checks.map(({ id }: { id: string }) => id)).toContain("culvert");
    expect(rectangle.plugs).toEqual([
      {
        ...{ name: 'Culvert "Ditch 4"', amount: "1" },
        note: expect.stringMatching(/^18 in inside\. An inflatable plug/),
      },
    ]);
    const plain = await drystead(["size", ...ON_IT]);
    expect(JSON.parse(plain.out).alternatives[0].plugs).toEqual([]);
  });

  it("take no figure that is none, and say so", async () => {
    const culverts = written("doubtful.geojson", {
      ...{ at: across(DEEPEST), columns: { ...OPEN, up: -9999, dia: "n/a" } },
    });
    const ended = await drystead(["size", ...ON_IT, "--culverts", culverts, ...COLUMNS]);
    expect(ended.said).toContain("2 figures are no invert or diameter");
    const [{ plugs }] = JSON.parse(ended.out).alternatives;
    expect(plugs[0].note).toContain("Measure its inside first");
  });

  it("are refused where the file, its lines or its columns are not there, or lie elsewhere", async () => {
    const missing = await drystead(["trace", ...ON_IT, "--roads", "none.shp"]);
    expect([missing.code, missing.said]).toEqual([1, expect.stringContaining("file/missing")]);
    const areas = await drystead(["trace", ...ON_IT, "--culverts", PLAN]);
    expect(areas).toMatchObject({ code: 0 });
    expect(areas.said).toMatch(/\d+ outlines? (is|are) left out; lines are taken\./);
    const here = written("culverts.geojson", { at: across(DEEPEST), columns: OPEN });
    const column = [...COLUMNS.with(1, "invert_up")];
    const unknown = await drystead(["size", ...ON_IT, "--culverts", here, ...column]);
    expect(unknown.said).toContain('Expected a column "invert_up" in the file of culverts');
    const far = across(DEEPEST).map(([lon, lat]): Place => [lon + 3, lat]);
    const away = written("away.geojson", { at: far, columns: {} });
    const elsewhere = await drystead(["size", ...ON_IT, "--roads", away]);
    expect([elsewhere.code, elsewhere.said]).toEqual([
      1,
      expect.stringContaining("footprints/elsewhere"),
    ]);
  });

  it.each([
    [["--culverts", "c.shp", "--first-invert-column", "up"], "A column of inverts needs"],
    [["--culverts", "c.shp", "--size-column", "dia"], "--size-column needs --size-unit"],
    [["--culverts", "c.shp", "--size-unit", "cm"], "--size-unit is one of in, ft, mm, m"],
    [["--culverts", "c.shp", "--invert-unit", "cm"], "--invert-unit is one of m, ft, us-ft"],
    [["--size-unit", "in"], "--size-unit is of the file that --culverts names"],
  ])("ask for what is missing: %s", async (words, wanted) => {
    const { code, said } = await drystead(["size", ...ON_IT, ...words]);
    expect([code, said]).toEqual([2, expect.stringContaining(wanted)]);
  });
});
