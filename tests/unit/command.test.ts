import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import { describe, expect, it } from "vitest";
import { runProgram } from "../../workers/command/program.ts";
import { ownFolder } from "../helpers/own-folder.ts";
import { type Ended, ROOT, shell, startDrystead } from "../helpers/terminal.ts";

const PLAN = join(ROOT, "sample-terrain/tilted.geojson");
const RASTER = join(ROOT, "sample-terrain/tilted.tif");

const { folder, drystead, written } = ownFolder();

describe("size", () => {
  it("has kinds and figures beside its words, the same in either unit system", async () => {
    const demo = join(ROOT, "sample-terrain/demo.geojson");
    const raster = join(ROOT, "sample-terrain/demo.tif");
    const of = async (system: string) => {
      const { out } = await drystead(["size", demo, "--terrain", raster, "--units", system]);
      const { leave, leaveLevel, alternatives } = JSON.parse(out);
      const [{ verdict, time }] = alternatives;
      const { first } = verdict;
      const words = [leave, verdict.words, first.headline, time.verdict];
      const data = [leaveLevel, verdict.finding, first.id, first.finding, time.finding];
      return { words, data };
    };
    const [us, metric] = [await of("us"), await of("metric")];
    expect(us.data).toEqual(metric.data);
    expect(us.data[1]).toMatchObject({ mustFix: 1, overLimitM: expect.any(Number) });
    expect(us.data[4]).toMatchObject({ kind: "late-slow", behind: { pace: "slow" } });
    expect(us.words.join()).toContain(" ft");
    expect(metric.words.join()).not.toMatch(/\d ft\b/);
  });

  it("prints the lines of a plan as JSON and nothing else on standard output", () => {
    const { code, out, said } = startDrystead(["size", PLAN, "--terrain", RASTER]);
    expect(said).toBe("");
    expect(code).toBe(0);
    const { alternatives } = JSON.parse(out);
    expect(alternatives.map((each: { name: string }) => each.name)).toEqual([
      "Rectangle",
      "Tied to the slope",
    ]);
    expect(alternatives.map((each: { kind: string }) => each.kind)).toEqual(["ring", "line"]);
  });

  it("gives every alternative the keys that others may rely on", async () => {
    const { out } = await drystead(["size", PLAN, "--terrain", RASTER]);
    const [ring] = JSON.parse(out).alternatives;
    for (const key of ["name", "kind", "lengthM", "stations", "totals", "checks"]) {
      expect(ring).toHaveProperty(key);
    }
    for (const key of [
      ...["chainageM", "lon", "lat", "groundM", "crestM"],
      ...["heightM", "greatestHeightM", "sectionAreaM2"],
    ]) {
      expect(ring.stations[0][key]).toEqual(expect.any(Number));
    }
    for (const key of [
      ...["volumeM3", "bags", "bagsPlaced", "sandM3", "sheetM2"],
      ...["greatestHeightM", "lengthOverLimitM"],
    ]) {
      expect(ring.totals[key]).toEqual(expect.any(Number));
    }
    for (const check of ring.checks) {
      expect(check).toMatchObject({
        id: expect.any(String),
        severity: expect.stringMatching(/^(stop|caution|note)$/),
        fromM: expect.any(Number),
        toM: expect.any(Number),
        message: expect.any(String),
        remedy: expect.any(String),
        source: expect.any(String),
      });
    }
  });

  it("needs of a plan no more than features and water, and writes null where there is no ground", async () => {
    const plan = JSON.parse(readFileSync(PLAN, "utf8"));
    const line = plan.features.find(
      (feature: { geometry: { type: string } }) => feature.geometry.type === "LineString",
    );
    const [[lon, lat]] = line.geometry.coordinates;
    const beyond = [
      [lon, lat],
      [lon + 0.002, lat],
    ];
    const bare = written(
      "bare.geojson",
      JSON.stringify({
        type: "FeatureCollection",
        drystead: { version: 1, water: { elevationM: 102.3, freeboardM: 0.3048 } },
        features: [
          {
            type: "Feature",
            properties: { role: "alignment" },
            geometry: { type: "LineString", coordinates: beyond },
          },
        ],
      }),
    );
    const { code, out } = await drystead(["size", bare, "--terrain", RASTER]);
    expect(code).toBe(0);
    const [found] = JSON.parse(out).alternatives;
    expect(found.kind).toBe("line");
    expect(found.stations[0].groundM).toBeCloseTo(102.04, 2);
    expect(found.stations[0].crestM).toBeCloseTo(102.6048, 4);
    expect(found.stations.at(-1)).toMatchObject({ groundM: null, heightM: null });
    expect(found.totals.lengthNoDataM).toBeGreaterThan(50);
    expect(found.checks.map((check: { id: string }) => check.id)).toContain("no-ground");
  });

  it("takes the raster by a name relative to the folder the person stands in", () => {
    const { code } = startDrystead(
      ["size", "tilted.geojson", "--terrain", "tilted.tif"],
      join(ROOT, "sample-terrain"),
    );
    expect(code).toBe(0);
  });

  it("works through npm from any folder", () => {
    mkdirSync(join(folder, "elsewhere"), { recursive: true });
    writeFileSync(join(folder, "elsewhere/plan.geojson"), readFileSync(PLAN));
    writeFileSync(join(folder, "elsewhere", basename(RASTER)), readFileSync(RASTER));
    const words = ["size", "plan.geojson", "--terrain", basename(RASTER)];
    const { INIT_CWD: _, ...environment } = process.env;
    const done = spawnSync("npm", ["run", "--prefix", ROOT, "-s", "drystead", "--", ...words], {
      cwd: join(folder, "elsewhere"),
      encoding: "utf8",
      env: environment,
    });
    expect(done.stderr).toBe("");
    expect(JSON.parse(done.stdout).alternatives).toHaveLength(2);
    expect(done.status).toBe(0);
  });

  it("uses the vertical unit given for a file that states none, and asks for it otherwise", async () => {
    const grid = written("grid.asc", asciiGrid(100));
    written("grid.prj", utm15());
    const asked = await drystead(["size", PLAN, "--terrain", grid]);
    expect(asked.code).toBe(1);
    expect(asked.out).toBe("");
    expect(asked.said).toMatch(/unit/i);
    expect(asked.said).toContain("--vertical-unit m, ft or us-ft");
    const metres = await drystead(["size", PLAN, "--terrain", grid, "--vertical-unit", "m"]);
    const feet = await drystead(["size", PLAN, "--terrain", grid, "--vertical-unit=ft"]);
    const ground = (run: { out: string }) =>
      JSON.parse(run.out).alternatives[0].stations[0].groundM;
    expect(ground(metres)).toBeCloseTo(100, 4);
    expect(ground(feet)).toBeCloseTo(30.48, 4);
  });

  it.each([
    ["no water at all", { version: 1 }, /expected the water's level/],
    [
      "a mistyped key",
      { version: 1, water: { elevation: 262.5 } },
      /water\.elevation is not known/,
    ],
    ["a stage that is only promised", { version: 1, water: { by: "stage" } }, /plan\/no-water/],
  ])("refuses a plan with %s instead of counting no bags", async (_, settings, reason) => {
    const plan = JSON.parse(readFileSync(PLAN, "utf8"));
    const path = written("dry.geojson", JSON.stringify({ ...plan, drystead: settings }));
    const { code, out, said } = await drystead(["size", path, "--terrain", RASTER]);
    expect(code).toBe(1);
    expect(out).toBe("");
    expect(said).toMatch(reason);
    expect(said).toContain("plan/no-water");
  });

  it("says for how much of a line the totals are, ends with 0, and puts it on top of the checks", async () => {
    const plan = JSON.parse(readFileSync(PLAN, "utf8"));
    const alignments = plan.features.filter(
      (each: { properties: { role: string } }) => each.properties.role === "alignment",
    );
    const [lon, lat] = alignments[0].geometry.coordinates[0][0];
    const [aLon, aLat] = alignments[0].geometry.coordinates[0][2];
    const lineTo = (name: string, coordinates: number[][]) => ({
      type: "Feature",
      properties: { role: "alignment", name },
      geometry: { type: "LineString", coordinates },
    });
    const out = [
      lineTo("Partly", [
        [lon, lat],
        [lon + 20 * (lon - aLon), lat + 20 * (lat - aLat)],
      ]),
      lineTo("Nowhere", [
        [lon + 20 * (lon - aLon), lat],
        [lon + 21 * (lon - aLon), lat],
      ]),
    ];
    const path = written("beyond.geojson", JSON.stringify({ ...plan, features: out }));
    const { code, out: json, said } = await drystead(["size", path, "--terrain", RASTER]);
    expect(code).toBe(0);
    const [partly, nowhere] = JSON.parse(json).alternatives;
    const { lengthM, lengthNoDataM } = partly.totals;
    const [all, gap] = [lengthM, lengthNoDataM].map((m: number) => Math.round(m / 0.3048));
    expect(said.replaceAll(",", "")).toContain(
      `"Partly": the totals are not complete: ${partly.totals.bags} bags for ${all! - gap!} of ${all} ft; ${gap} ft have no elevation data.`,
    );
    expect(said).toMatch(/"Nowhere": its bags are not known: no elevation data under any of its/);
    expect([partly.complete, nowhere.complete]).toEqual([false, false]);
    for (const { checks, mustFix } of [partly, nowhere]) {
      expect(checks[0]).toMatchObject({ id: "incomplete-totals", severity: "stop" });
      expect(mustFix).toBeGreaterThan(0);
    }
    expect(nowhere.totals.lengthNoDataM).toBe(nowhere.totals.lengthM);
    expect(nowhere.checks.map((check: { id: string }) => check.id)).toContain("no-ground");
  });

  it("hands a long result whole to a slow reader", () => {
    const { out } = piped("(sleep 2; cat)");
    expect(out.length).toBeGreaterThan(65_536);
    expect(JSON.parse(out).alternatives).toHaveLength(3);
  });

  it("ends quietly when its reader goes away", () => {
    const { out, said } = piped("head -c 10");
    expect(said).toBe("");
    expect(out).toHaveLength(10);
  });
});

/** What is left of the demo's result behind a pipe into another program. */
function piped(reader: string) {
  return shell(
    `drystead size demo.geojson --terrain demo.tif | ${reader}`,
    join(ROOT, "sample-terrain"),
  );
}

type Start = (words: readonly string[]) => Ended | Promise<Ended>;

describe("input that is refused ends with 1, a reason and nothing on standard output", () => {
  const refused = async (words: readonly string[], reason: RegExp, start: Start = drystead) => {
    const { code, out, said } = await start(words);
    expect(out).toBe("");
    expect(said).toMatch(reason);
    expect(said).not.toMatch(/\n\s+at /);
    expect(code).toBe(1);
  };

  it("a plan that is not there", async () => {
    await refused(
      ["size", "none.geojson", "--terrain", RASTER],
      /no file .*none\.geojson/,
      startDrystead,
    );
  });
  it("a raster that is not there", async () => {
    await refused(["size", PLAN, "--terrain", RASTER, "none.tif"], /no file .*none\.tif/);
  });
  it("a folder as a plan, and one without a raster", async () => {
    await refused(["size", ".", "--terrain", RASTER], /folder/);
    mkdirSync(join(folder, "without-rasters"));
    await refused(["size", PLAN, "--terrain", "without-rasters"], /folder.*none in it/s);
  });
  it("a raster as a plan, and a plan as a raster", async () => {
    await refused(["size", RASTER, "--terrain", RASTER], /plan/i);
    await refused(["size", PLAN, "--terrain", PLAN], /raster|GeoTIFF/i);
  });
  it("a plan without a line", async () => {
    const settings = { version: 1, water: { elevationM: 262.5 } };
    const empty = { type: "FeatureCollection", features: [], drystead: settings };
    const path = written("empty.geojson", JSON.stringify(empty));
    await refused(["size", path, "--terrain", RASTER], /at least one ring or line/);
  });
  it("a newer plan", async () => {
    const newer = { type: "FeatureCollection", features: [], drystead: { version: 99 } };
    const path = written("newer.geojson", JSON.stringify(newer));
    await refused(["size", path, "--terrain", RASTER], /newer/);
  });
  it("a raster cut off in the middle", async () => {
    const whole = readFileSync(RASTER);
    const path = join(folder, "cut.tif");
    writeFileSync(path, whole.subarray(0, whole.length / 2));
    await refused(["size", PLAN, "--terrain", path], /\S/);
  });
  it("a file name that the system cannot take, and something that is no file", async () => {
    await refused(["size", `${"x".repeat(300)}.geojson`, "--terrain", RASTER], /cannot be read/);
    await refused(["size", "/dev/null", "--terrain", RASTER], /not a file/);
  });
});

describe("an error in the program itself", () => {
  const end = async (debug: boolean) => {
    let said = "";
    const host = {
      folder,
      say: (text: string) => {
        said += text;
      },
      write: () => Promise.reject(new TypeError("no ink")),
      debug,
    };
    return { code: await runProgram(["size", PLAN, "--terrain", RASTER], host), said };
  };

  it("ends with 1 and says how to see where it happened", async () => {
    const { code, said } = await end(false);
    expect(code).toBe(1);
    expect(said).toContain("no ink");
    expect(said).toContain("DRYSTEAD_DEBUG=1");
    expect(said).not.toContain("command.test.ts");
  });

  it("says where it happened when asked to", async () => {
    const { code, said } = await end(true);
    expect(code).toBe(1);
    expect(said).toMatch(/TypeError: no ink\n {4}at .*command\.test\.ts/);
  });
});

describe("a command line that cannot be followed ends with 2 and the usage", () => {
  it.each([
    [[], /drystead VERB/],
    [["paint"], /no verb paint/],
    [["size"], /needs a plan file/],
    [["size", "plan.geojson"], /needs --terrain/],
    [["size", "plan.geojson", "--terrain"], /--terrain needs a value/],
    [["size", "--terrain", "a.tif", "plan.geojson"], /before --terrain/],
    [["size", "a.geojson", "b.geojson", "--terrain", "a.tif"], /one too many/],
    [["size", "a.geojson", "--terrain", "a.tif", "--depth", "3"], /Unknown option --depth/],
    [["size", "a.geojson", "--terrain", "a.tif", "-v"], /Unknown option -v/],
    [["size", "a.geojson", "--terrain", "a.tif", "--constructor", "3"], /Unknown option/],
    [["size", "a.geojson", "--terrain", "a.tif", "--vertical-unit", "yd"], /m, ft, us-ft/],
    [["size", "a.geojson", "--terrain", "a.tif", "--vertical-unit"], /needs a value/],
  ])("%j", async (words, reason) => {
    const { code, out, said } = await drystead(words);
    expect(out).toBe("");
    expect(said).toMatch(reason);
    expect(said).toMatch(/drystead (VERB|size)/);
    expect(code).toBe(2);
  });

  it.each([[["--help"]], [["-h"]], [["size", "--help"]], [["size", "a", "-h"]]])(
    "but help is given for %j",
    async (words) => {
      const { code, out, said } = await drystead(words);
      expect(said).toBe("");
      expect(out).toMatch(/^drystead (VERB|size)/);
      expect(code).toBe(0);
    },
  );
});

/** A flat Esri grid over the west of the teaching grids. */
function asciiGrid(height: number): string {
  const row = `${Array(220).fill(height).join(" ")}\n`;
  const head = "ncols 220\nnrows 220\nxllcorner 319872\nyllcorner 4760000\ncellsize 1\n";
  return `${head}NODATA_value -9999\n${row.repeat(220)}`;
}

function utm15(): string {
  return 'PROJCS["NAD83 / UTM zone 15N",GEOGCS["NAD83",DATUM["North_American_Datum_1983",SPHEROID["GRS 1980",6378137,298.257222101]],PRIMEM["Greenwich",0],UNIT["degree",0.0174532925199433]],PROJECTION["Transverse_Mercator"],PARAMETER["latitude_of_origin",0],PARAMETER["central_meridian",-93],PARAMETER["scale_factor",0.9996],PARAMETER["false_easting",500000],PARAMETER["false_northing",0],UNIT["metre",1]]';
}
