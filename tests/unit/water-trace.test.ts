import { describe, expect, it } from "vitest";
import { allChecks } from "../../shared/all-checks.ts";
import { mustFixCount } from "../../shared/completeness.ts";
import type { Plan } from "../../shared/plan.ts";
import {
  BEHIND_LINE,
  DRY,
  HOLE_REACHED,
  LOW,
  type TracedAlternative,
  WATER,
  type WaterTrace,
  type WetMask,
} from "../../shared/water-types.ts";
import { structureWords } from "../../shared/words/structure.ts";
import { makeEngine } from "../../workers/engine.ts";
import type { CellWindow } from "../../workers/raster/window.ts";
import { traceWater } from "../../workers/water/trace-water.ts";
import { messageOf } from "../helpers/check-text.ts";
import {
  type Corner,
  flat,
  openLine,
  PLANE,
  planWith,
  ring,
  size,
  structure,
} from "../helpers/grounds.ts";
import { byFormula, type Heights, terrainOf } from "../helpers/water-grids.ts";

/** Corners given east and south, as the grids run. */
const south = (corners: readonly Corner[]) => corners.map(([x, y]): Corner => [x, -y]);

const box = (left: number, top: number, right: number, bottom: number): Corner[] =>
  south([
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ]);

const at = (xM: number, southM: number) => PLANE.toLonLat(xM, -southM);

const trace = (heights: Heights, plan: Plan, cellM = 1): Promise<WaterTrace> =>
  traceWater(terrainOf(heights, cellM), { plan });

const idsOf = ({ checks }: { readonly checks: readonly { readonly id: string }[] }) =>
  checks.map(({ id }) => id);

/** The codes that a picture of the water has within a box, given as its corners. */
function codesIn({ columns, rows, codes, corners }: WetMask, within: readonly Corner[]) {
  const [[left, top], [right], , [, bottom]] = corners.map((each) => PLANE.toPlane(each)) as [
    ...[[number, number], [number, number], [number, number], [number, number]],
  ];
  const [xs, ys] = [within.map(([x]) => x), within.map(([, y]) => y)];
  const found = new Set<number>();
  for (const [i, code] of codes.entries()) {
    const x = left + (((i % columns) + 0.5) * (right - left)) / columns;
    const y = top + ((Math.floor(i / columns) + 0.5) * (bottom - top)) / rows;
    const isIn = x > Math.min(...xs) && x < Math.max(...xs);
    if (isIn && y > Math.min(...ys) && y < Math.max(...ys)) found.add(code);
  }
  return found;
}

/** Rises 1 in 100 to the east; at 101 m water stands on the western hundred columns. */
const slope = byFormula(160, 80, (x) => 100 + 0.01 * x);
const HOUSE = structure("House", box(60.2, 36.2, 69.8, 43.8));
const slopePlan = planWith(101, { structures: [HOUSE] });

describe("a house on a slope without a levee", () => {
  it("is wet from its lowest ground on, as deep as the water stands there", async () => {
    const { water, structures } = await trace(slope, slopePlan);
    expect(water).toMatchObject({ elevationM: 101, from: "edges", cells: 100 * 80, lowCells: 0 });
    expect(water.areaM2).toBeCloseTo(8000, 3);
    const depths = Array.from({ length: 100 }, (_, x) => 1 - 0.01 * x);
    expect(water.volumeM3).toBeCloseTo(80 * depths.reduce((sum, depth) => sum + depth), 1);
    const [house] = structures;
    expect(house).toMatchObject({ name: "House", wet: true, throughHole: null });
    expect(house!.sillM).toBeCloseTo(100.6, 4);
    expect(house!.marginM).toBeCloseTo(-0.4, 4);
    expect(house!.depthM).toBeCloseTo(0.4, 4);
    expect(house!.sillAt![0]).toBeCloseTo(at(60, 40)[0], 5);
  });

  it("is dry below its sill, with the margin told", async () => {
    const sillM = (await trace(slope, slopePlan)).structures[0]!.sillM!;
    const trail = await trace(slope, planWith(sillM, { structures: [HOUSE] }));
    expect(trail.structures[0]).toMatchObject({ wet: false, depthM: null });
    expect(trail.structures[0]!.marginM).toBe(0);
    expect(idsOf(trail)).toContain("not-reached");
    const above = await trace(slope, planWith(sillM + 1e-6, { structures: [HOUSE] }));
    expect(above.structures[0]!.wet).toBe(true);
  });

  it("counts the water over its floor, and below it as less than nothing", async () => {
    const floor = (floorM: number) =>
      trace(slope, planWith(101, { structures: [{ ...HOUSE, floorM }] }));
    expect((await floor(100.75)).structures[0]!.overFloorM).toBeCloseTo(0.25, 6);
    expect((await floor(101.5)).structures[0]!.overFloorM).toBeCloseTo(-0.5, 6);
  });
});

describe("a line open to the high ground", () => {
  const lineTo = (eastM: number) =>
    openLine(
      south([
        [eastM, 25],
        [50, 25],
        [50, 55],
        [eastM, 55],
      ]),
    );
  const traced = async (eastM: number): Promise<TracedAlternative> =>
    (await trace(slope, { ...slopePlan, alignments: [lineTo(eastM)] })).alternatives[0]!;

  it("fails when its ends stand on ground below the water: the way leads round an end", async () => {
    const line = await traced(90);
    expect(line.dry).toBe(false);
    expect(line.structures[0]).toMatchObject({ wet: true });
    expect(line.structures[0]!.sillM).toBeCloseTo(100.91, 4);
    const wayIn = line.wayIn!;
    expect(wayIn.groundM).toBeCloseTo(100.91, 4);
    expect(wayIn.end).not.toBeNull();
    const endM = wayIn.end === "start" ? 0 : 40 + 30 + 40;
    expect(wayIn.chainageM).toBeCloseTo(endM, 3);
    expect(wayIn.fromLineM).toBeCloseTo(1, 3);
    const [last] = wayIn.path.slice(-1).map((place) => PLANE.toPlane(place));
    expect(last![0]).toBeGreaterThan(59);
    expect(last![0]).toBeLessThan(71);
    const stop = line.checks.find(({ id }) => id === "water-gets-in")!;
    expect(stop).toMatchObject({ severity: "stop", fromM: wayIn.chainageM, at: wayIn.at });
    expect(messageOf(stop)).toMatch(
      /comes in around the end at .*over ground at .*331\.07 ft.*"House"/,
    );
    expect(idsOf(line)).not.toContain("overtops");
  });

  it("says that water comes round the end, though the sill lies beside the last of the levee", async () => {
    const ridged = byFormula(160, 80, (x, y) => {
      if (Math.round(x) !== 88 || y < 25 || y > 55) return 100 + 0.01 * x;
      return y < 28 ? 100.95 : 102;
    });
    const plan = { ...slopePlan, alignments: [lineTo(90)] };
    const wayIn = (await trace(ridged, plan)).alternatives[0]!.wayIn!;
    const [east] = PLANE.toPlane(wayIn.at);
    expect(90 - east).toBeGreaterThan(1.5);
    expect(90 - east).toBeLessThan(3);
    expect(wayIn).toMatchObject({ end: "start", chainageM: 0 });
    expect(wayIn.groundM).toBeCloseTo(100.95, 4);
  });

  it("holds to the ground past its ends when they reach into the freeboard only", async () => {
    const line = await traced(120);
    expect(line).toMatchObject({ dry: true, wayIn: null });
    expect(line.firstOver).toMatchObject({ over: "ground", stageM: null });
    expect(line.firstOver!.elevationM).toBeCloseTo(101.21, 4);
    expect(line.firstOver!.riseM).toBeCloseTo(0.21, 4);
    expect(line.firstOver!.end).not.toBeNull();
    const holds = line.checks.find(({ id }) => id === "overtops")!;
    expect(holds.severity).toBe("caution");
    expect(messageOf(holds)).toMatch(/around the end/);
  });

  it("holds to its crest when its ends reach it, worst where the ground is lowest", async () => {
    const line = await traced(140);
    expect(line).toMatchObject({ dry: true, wayIn: null });
    expect(line.firstOver).toMatchObject({ over: "crest", end: null });
    expect(line.firstOver!.riseM).toBeCloseTo(0.3048, 9);
    expect(line.firstOver!.elevationM).toBeCloseTo(101.3048, 9);
    expect(line.firstOver!.groundM).toBeCloseTo(100.5, 4);
    expect(line.firstOver!.chainageM).toBeGreaterThan(90 - 0.01);
    expect(line.firstOver!.chainageM).toBeLessThan(120 + 0.01);
    expect(line.checks.find(({ id }) => id === "overtops")!.severity).toBe("note");
    const inside = 49 * 29;
    const depths = Array.from({ length: 49 }, (_, k) => 0.49 - 0.01 * k);
    expect(line.notReachedCells).toBe(inside);
    expect(line.notReachedAreaM2).toBeCloseTo(inside, 2);
    expect(line.notReachedVolumeM3).toBeCloseTo(29 * depths.reduce((sum, d) => sum + d), 1);
    const fails = line.checks.find(({ id }) => id === "if-it-fails")!;
    expect(messageOf(fails)).toMatch(/1\.3 ft.*"House"/);
  });

  it("is not worst where it stands with protected ground on both sides", async () => {
    const pitted = byFormula(160, 80, (x, y) =>
      Math.abs(x - 61) < 3 && Math.abs(y - 36) < 6 ? 99 : 100 + 0.01 * x,
    );
    const inside: Corner[] = [
      [61, 40],
      [61, 25],
      [140, 25],
      [50, 25],
      [50, 55],
      [140, 55],
    ];
    const plan = { ...slopePlan, alignments: [openLine(south(inside))] };
    const [line] = (await trace(pitted, plan)).alternatives;
    expect(line).toMatchObject({ dry: true });
    expect(line!.firstOver).toMatchObject({ over: "crest" });
    expect(line!.firstOver!.groundM).toBeCloseTo(100.5, 4);
  });

  it("is overtopped at its crest first, then where it stands on higher ground, lowest ground first", async () => {
    const { overtopping } = await traced(140);
    const crest = overtopping.filter(({ over }) => over === "crest");
    const ground = overtopping.filter(({ over }) => over === "ground");
    expect(overtopping).toEqual([...crest, ...ground]);
    expect(crest.every(({ riseM }) => riseM === crest[0]!.riseM)).toBe(true);
    const heights = crest.map(({ groundM }) => groundM!);
    expect(heights).toEqual([...heights].sort((a, b) => a - b));
    const rises = ground.map(({ riseM }) => riseM);
    expect(rises.length).toBeGreaterThan(0);
    expect(rises).toEqual([...rises].sort((a, b) => a - b));
  });

  it("says where the way passes it when it changes nothing", async () => {
    const plain = byFormula(160, 80, (x, y) =>
      x > 58 && x < 72 && y > 34 && y < 46 ? 100.9 : 100,
    );
    const plan = { ...slopePlan, alignments: [lineTo(90)] };
    const [line] = (await trace(plain, plan)).alternatives;
    expect(line).toMatchObject({ dry: false });
    expect(line!.wayIn!.groundM).toBe(100);
    const [east, north] = PLANE.toPlane(line!.wayIn!.at);
    expect(east).toBeGreaterThan(88);
    expect(north).toBeLessThan(-24);
    expect(north).toBeGreaterThan(-56);
  });
});

describe("a ring", () => {
  const about = ring(box(50, 25, 80, 55));
  const ringPlan: Plan = { ...slopePlan, alignments: [about], chosenId: "a" };

  it("keeps what it encloses dry up to its crest", async () => {
    const { alternatives, mask } = await trace(slope, ringPlan);
    const [line] = alternatives;
    expect(line).toMatchObject({ dry: true, leftWet: [] });
    expect(line!.firstOver!.elevationM).toBeCloseTo(101.3048, 9);
    const counted = [DRY, LOW, WATER, BEHIND_LINE].map(
      (code) => mask.codes.filter((each) => each === code).length,
    );
    expect(counted).toEqual([60 * 80, 0, 100 * 80 - 29 * 29, 29 * 29]);
    expect(mask).toMatchObject({ columns: 160, rows: 80 });
    const [west, north] = PLANE.toPlane(mask.corners[0]);
    const [east, lower] = PLANE.toPlane(mask.corners[2]);
    for (const [found, expected] of [
      [west, -0.5],
      [north, 0.5],
      [east, 159.5],
      [lower, -79.5],
    ] as const) {
      expect(found).toBeCloseTo(expected, 3);
    }
  });

  it("says of what it leaves outside that it is wet, and how deep", async () => {
    const shed = structure("Shed", box(20.2, 60.2, 25.8, 64.8));
    const plan = { ...ringPlan, structures: [HOUSE, shed] };
    const [line] = (await trace(slope, plan)).alternatives;
    expect(line).toMatchObject({ dry: true, leftWet: ["Shed"] });
    const check = line!.checks.find(({ id }) => id === "building-wet")!;
    expect(messageOf(check)).toMatch(/"Shed".*2\.6 ft/);
  });

  it("is not dry when the structure is not in it", async () => {
    const beside = ring(box(10, 10, 40, 30));
    const [line] = (await trace(slope, { ...slopePlan, alignments: [beside] })).alternatives;
    expect(line!.dry).toBe(false);
    expect(idsOf(line!)).toContain("water-gets-in");
  });

  it("is judged by the ground inside it when no structure is drawn", async () => {
    const [line] = (await trace(slope, { ...ringPlan, structures: [] })).alternatives;
    expect(line).toMatchObject({ dry: true });
    expect(line!.structures).toHaveLength(1);
    expect(line!.firstOver!.over).toBe("crest");
    expect(line!.notReachedCells).toBe(29 * 29);
  });

  it("says of no level that it holds to where the water is a mistake, far below all ground", async () => {
    const low = { ...ringPlan, water: { ...ringPlan.water, elevationM: 30 } };
    const [line] = (await trace(slope, low)).alternatives;
    expect(line).toMatchObject({ dry: null, notKnown: { because: "no-water" } });
    expect(line).toMatchObject({ firstOver: null, overtopping: [] });
    expect(line!.checks.map(({ id }) => id)).not.toContain("overtops");
  });

  it("is told by the stage when the water is given by one", async () => {
    const stage = { by: "stage" as const, stageM: 4, gaugeZeroM: 97 };
    const plan = { ...ringPlan, water: { ...ringPlan.water, ...stage } };
    const [line] = (await trace(slope, plan)).alternatives;
    expect(line!.firstOver!.stageM).toBeCloseTo(4.3048, 9);
    expect(messageOf(line!.checks.find(({ id }) => id === "overtops"))).toMatch(/stage 14\.1 ft/);
  });
});

describe("a falling water surface", () => {
  const level = byFormula(200, 60, () => 100);
  const falling = (fallPerM: number, changes: Partial<Plan> = {}): Plan => ({
    ...planWith(101, { structures: [structure("House", box(40.2, 26.2, 49.8, 33.8))] }),
    water: { ...planWith(101).water, fallPerM },
    gauge: { name: "Gauge", at: at(0, 30) },
    flow: { from: at(0, 30), to: at(150, 30) },
    ...changes,
  });

  it("wets level ground as far as it stands above it", async () => {
    const { water, structures } = await trace(level, falling(0.0101));
    expect(water.cells).toBe(100 * 60);
    expect(structures[0]!.depthM).toBeCloseTo(1 - 40 * 0.0101, 4);
    expect(structures[0]!.sillM).toBeCloseTo(100, 4);
  });

  it("is followed by the crest, and by the level at which the river comes over it", async () => {
    const plan = falling(0.005, { alignments: [ring(box(30, 15, 60, 45))] });
    const [line] = (await trace(level, plan)).alternatives;
    expect(line).toMatchObject({ dry: true });
    const [eastM] = PLANE.toPlane(line!.firstOver!.at);
    expect(line!.firstOver!.riseM).toBeCloseTo(0.3048, 9);
    expect(line!.firstOver!.elevationM).toBeCloseTo(101.3048 - 0.005 * eastM, 4);
  });

  it("stands level where the ground falls with it: the answer is that of level water on level ground", async () => {
    const tilted = byFormula(200, 60, (x, y) => 100 - 0.004 * x + (y % 7 === 3 ? 0.5 : 0));
    const flat = byFormula(200, 60, (_, y) => 100 + (y % 7 === 3 ? 0.5 : 0));
    const one = await trace(tilted, {
      ...falling(0.004),
      water: { ...falling(0.004).water, elevationM: 100.3 },
    });
    const other = await trace(flat, {
      ...falling(0),
      water: { ...falling(0).water, elevationM: 100.3 },
    });
    expect(one.water.cells).toBe(other.water.cells);
    expect(one.water.volumeM3).toBeCloseTo(other.water.volumeM3, 0);
  });
});

describe("ground that is not known", () => {
  const hut = structure("Hut", box(29.2, 29.2, 31.8, 31.8));
  /** A bank round the hut with a stretch of it, 28 to 32 south on the west side, given by `gap`. */
  const banked = (gap: number) =>
    byFormula(60, 60, (x, y) => {
      const side = Math.max(Math.abs(x - 30), Math.abs(y - 30));
      if (side !== 10) return 100;
      return x === 20 && y >= 28 && y <= 32 ? gap : 102;
    });

  it("lets water in: whether it is dry is not known, and the hole is named", async () => {
    const plan = planWith(101, {
      structures: [hut],
      alignments: [
        openLine(
          south([
            [5, 5],
            [9, 5],
          ]),
        ),
      ],
    });
    const { structures, alternatives, water } = await trace(banked(Number.NaN), plan);
    expect(structures[0]).toMatchObject({ wet: true });
    expect(structures[0]!.throughHole).toMatchObject({ alone: true });
    const [east, north] = PLANE.toPlane(structures[0]!.throughHole!.at);
    expect(Math.round(east)).toBe(20);
    expect(Math.abs(north + 30)).toBeLessThan(2.5);
    expect(water.holeCells).toBe(5);
    expect(water.cells).toBe(60 * 60 - 80);
    const [line] = alternatives;
    const { at } = structures[0]!.throughHole!;
    expect(line).toMatchObject({ dry: null, notKnown: { because: "hole-in-the-way", at } });
    expect(line!.wayIn).toBeNull();
    const stop = line!.checks.find(({ id }) => id === "enters-through-hole")!;
    expect(stop).toMatchObject({ severity: "stop", at: structures[0]!.throughHole!.at });
    expect(idsOf(line!)).not.toContain("water-gets-in");
  });

  it("is no matter where the bank is low anyway, or where water cannot get at it", async () => {
    const plan = planWith(101, { structures: [hut] });
    const open = await trace(banked(100), plan);
    expect(open.structures[0]).toMatchObject({ wet: true, throughHole: null });
    const inner = banked(102);
    inner.heightM[30 * 60 + 25] = Number.NaN;
    const kept = await trace(inner, plan);
    expect(kept.structures[0]).toMatchObject({ wet: false, throughHole: null });
    expect(kept.mask.codes).not.toContain(HOLE_REACHED);
  });

  it("under a building is the building: its sill is that of the ground about it", async () => {
    const heights = banked(101.4);
    for (let y = 29; y <= 32; y++) heights.heightM.fill(Number.NaN, y * 60 + 29, y * 60 + 33);
    const { structures } = await trace(heights, planWith(101, { structures: [hut] }));
    expect(structures[0]).toMatchObject({ wet: false, throughHole: null });
    expect(structures[0]!.sillM).toBeCloseTo(101.4, 4);
  });

  it("is no matter on the way to a building without data where there is a way round it", async () => {
    const heights = banked(100);
    for (let y = 29; y <= 32; y++) heights.heightM.fill(Number.NaN, y * 60 + 29, y * 60 + 33);
    for (let y = 15; y <= 45; y++) heights.heightM.fill(Number.NaN, y * 60 + 10, y * 60 + 12);
    const { structures } = await trace(heights, planWith(101, { structures: [hut] }));
    expect(structures[0]).toMatchObject({ wet: true, throughHole: null });
  });

  it("is filled to the crest where a line crosses it, which is then not known to be dry", async () => {
    const heights = banked(Number.NaN);
    const alignments = [ring(box(20, 20, 40, 40))];
    const [line] = (await trace(heights, planWith(101, { structures: [hut], alignments })))
      .alternatives;
    expect(line).toMatchObject({ dry: null, notKnown: { because: "hole-under-line" } });
    const [east, north] = PLANE.toPlane(line!.notKnown!.at!);
    expect(Math.round(east)).toBe(20);
    expect(Math.abs(north + 30)).toBeLessThan(2.5);
    expect(line!.structures[0]).toMatchObject({ wet: false, throughHole: null });
  });

  it("leaves a structure that lies off it without an answer", async () => {
    const away = structure("Away", box(200, 200, 210, 210));
    const trail = await trace(slope, planWith(101, { structures: [away] }));
    expect(trail.structures[0]).toMatchObject({ wet: null, sillM: null });
    expect(idsOf(trail)).toContain("building-off-data");
  });
});

describe("marked sources", () => {
  /** A river along the west, a ridge, and a low field beyond it that opens to the east edge. */
  const valley = byFormula(100, 60, (x) => (x < 10 ? 99 : x > 30 && x < 40 ? 102 : 100));
  const house = structure("House", box(60.2, 26.2, 65.8, 31.8));
  const river = { id: "r", name: "River", at: at(4, 30) };

  it("tell connected water from ground that is merely low", async () => {
    const plan = planWith(101, { structures: [house], sources: [river] });
    const { water, structures, mask, sources } = await trace(valley, plan);
    expect(sources).toMatchObject([{ state: "wet", groundM: 99 }]);
    expect(water).toMatchObject({ from: "sources", cells: 31 * 60, lowCells: 60 * 60 });
    expect(structures[0]).toMatchObject({ wet: false });
    expect(structures[0]!.sillM).toBeCloseTo(102, 4);
    expect(mask.codes[30 * 100 + 60]).toBe(LOW);
    const edges = await trace(valley, planWith(101, { structures: [house] }));
    expect(edges.structures[0]).toMatchObject({ wet: true });
  });

  it("give no water when they stand too high, which is said", async () => {
    const dry = { id: "s", name: "Hill", at: at(35, 30) };
    const trail = await trace(valley, planWith(101, { structures: [house], sources: [dry] }));
    expect(trail.water.cells).toBe(0);
    expect(trail.sources[0]).toMatchObject({ state: "dry" });
    expect(idsOf(trail)).toEqual(expect.arrayContaining(["idle-source", "no-water"]));
  });

  it("that cover no ground at all leave every answer open, as a wrong unit or datum does", async () => {
    const ringed = {
      ...planWith(50, { structures: [house] }),
      alignments: [ring(box(50, 20, 75, 40))],
    };
    const trail = await trace(valley, ringed);
    expect(trail.water.cells).toBe(0);
    expect(trail.structures).toMatchObject([{ wet: null, sillM: null }]);
    expect(trail.alternatives).toMatchObject([{ dry: null, notKnown: { because: "no-water" } }]);
    expect(trail.checks.map(({ id, severity }) => [id, severity])).toEqual([["no-water", "stop"]]);
    const wet = await trace(valley, { ...ringed, water: { ...ringed.water, elevationM: 101 } });
    expect(wet.alternatives[0]!.dry).toBe(true);
    expect(wet.structures[0]!.wet).not.toBeNull();
    expect(structureWords(house, trail.structures[0]!, "us")).toBe(
      "Floor not known. Whether water reaches it is not known.",
    );
  });

  it("that cover no ground are one Must fix, where the line says too that water and ground do not fit", async () => {
    const sizedAt = async (levelM: number) => {
      const alignment = ring(box(50, 20, 75, 40));
      const plan = { ...planWith(levelM, { structures: [house] }), alignments: [alignment] };
      return { line: size(plan, alignment, flat(102)), trail: await trace(valley, plan) };
    };
    const { line, trail } = await sizedAt(50);
    expect([mustFixCount(line.checks), mustFixCount(trail.checks)]).toEqual([1, 1]);
    const kinds = allChecks(line, trail).map(({ finding }) => finding.kind);
    expect(kinds).toContain("water-level");
    expect(kinds).not.toContain("no-water");
    expect(mustFixCount(allChecks(line, trail))).toBe(1);
    expect(allChecks({ ...line, checks: [] }, trail)).toEqual(trail.checks);
    expect(allChecks(line, null)).toEqual(line.checks);
    const fits = await sizedAt(101);
    expect(allChecks(fits.line, fits.trail)).toHaveLength(
      fits.line.checks.length +
        fits.trail.alternatives[0]!.checks.length +
        fits.trail.checks.length,
    );
  });

  it("off the ground make every low edge a source, so that nothing is called dry that is not", async () => {
    const far = { id: "f", name: "Far", at: at(-500, 30) };
    const plan = planWith(101, { structures: [house], sources: [river, far] });
    const trail = await trace(valley, plan);
    expect(trail.water.from).toBe("both");
    expect(trail.structures[0]).toMatchObject({ wet: true });
    expect(idsOf(trail)).toContain("idle-source");
  });

  it("show where a line crosses water that is there already, and a ring round the river", async () => {
    const across = ring(box(5, 15, 80, 45));
    const plan = planWith(101, { structures: [house], sources: [river], alignments: [across] });
    const [line] = (await trace(valley, plan)).alternatives;
    expect(line!.inWaterM.length).toBeGreaterThan(0);
    expect(idsOf(line!)).toContain("crosses-water");
    expect(idsOf(line!)).not.toContain("source-inside");
    const round = ring(box(2, 15, 80, 45));
    const [ringed] = (await trace(valley, { ...plan, alignments: [round] })).alternatives;
    expect(ringed!.sourcesInside).toEqual(["r"]);
    expect(idsOf(ringed!)).toContain("source-inside");
    const dryLine = ring(box(45, 15, 80, 45));
    const [clear] = (await trace(valley, { ...plan, alignments: [dryLine] })).alternatives;
    expect(clear!.inWaterM).toEqual([]);
  });
});

describe("ground too large to be traced cell by cell", () => {
  const side = 420;
  const bank = byFormula(side, side, (x, y) =>
    x > 200 && x < 203 && y !== 210 ? 103 : 100 + x / 200,
  );
  const house = structure("House", box(219.2, 206.2, 228.8, 213.8));
  const plan = planWith(101.2, {
    structures: [house],
    alignments: [ring(box(205, 195, 240, 225))],
  });
  const limits = { cells: 150 * 150, coarseCells: 20_000, margin: 30 };

  it("is traced on its own cells about the plan, and in coarser cells as a whole", async () => {
    const whole = await trace(bank, plan);
    const parts = await traceWater(terrainOf(bank), { plan }, {}, limits);
    expect(whole.water).toMatchObject({ everyCell: true });
    expect(idsOf(whole)).not.toContain("coarse-trace");
    expect(parts.water).toMatchObject({ everyCell: false });
    expect(parts.water.cellM).toBeCloseTo(3, 2);
    expect(parts.water.areaM2 / whole.water.areaM2).toBeCloseTo(1, 1);
    expect(idsOf(parts)).toContain("coarse-trace");
    expect(parts.mask).toMatchObject({ columns: 140, rows: 140 });
    expect(whole.nearMask).toBeNull();
    expect(parts.structures[0]!.sillM).toBeCloseTo(101.095, 4);
    expect(parts.structures).toEqual(whole.structures);
    const figures = ({ alternatives: [line] }: WaterTrace) => ({
      ...line,
      notReachedAreaM2: Math.round(line!.notReachedAreaM2),
      notReachedVolumeM3: Math.round(100 * line!.notReachedVolumeM3),
    });
    expect(figures(parts)).toEqual(figures(whole));
  });

  it("shows the chosen ring's inside as kept dry, in the cells it is traced on, and no coarse water over it", async () => {
    const chosen = { ...plan, chosenId: plan.alignments[0]!.id };
    const { mask, nearMask, water, alternatives } = await traceWater(
      terrainOf(bank),
      { plan: chosen },
      {},
      limits,
    );
    expect(water.resolvesLines).toBe(true);
    expect(alternatives[0]!.dry).toBe(true);
    const inYard = codesIn(nearMask!, box(210, 200, 235, 220));
    expect(inYard.size).toBeGreaterThan(0);
    expect(inYard).toContain(BEHIND_LINE);
    expect(inYard).not.toContain(WATER);
    expect([...codesIn(mask, box(210, 200, 235, 220))]).toEqual([DRY]);
    expect(codesIn(mask, box(5, 5, 60, 60))).toContain(WATER);
  });

  it("says nothing of what a line keeps out where all of it is traced in cells larger than a levee", async () => {
    const wide = { ...plan, alignments: [ring(box(20, 20, 400, 400))] };
    const found = await traceWater(terrainOf(bank), { plan: wide }, {}, limits);
    expect(found.water.resolvesLines).toBe(false);
    const [line] = found.alternatives;
    expect(line).toMatchObject({ dry: null, wayIn: null, firstOver: null, overtopping: [] });
    expect(line!.notKnown!.because).toBe("coarse-cells");
    expect(line!.checks.map(({ id }) => id)).not.toContain("water-gets-in");
    const [check] = found.checks.filter(({ id }) => id === "coarse-trace");
    expect(check!.severity).toBe("caution");
  });

  it("is traced in coarser cells altogether when the plan itself is too wide", async () => {
    const wide = { ...plan, alignments: [ring(box(20, 20, 400, 400))] };
    const { water, structures } = await traceWater(terrainOf(bank), { plan: wide }, {}, limits);
    expect(water.everyCell).toBe(false);
    expect(structures[0]!.wet).not.toBeNull();
  });

  it("is read again only when the plan leaves what was read", async () => {
    const terrain = terrainOf(bank);
    let bands = 0;
    const counted = {
      ...terrain,
      cells: {
        ...terrain.cells,
        read: (window: CellWindow) => {
          bands++;
          return terrain.cells.read(window);
        },
      },
    };
    const read = async (eastM: number) => {
      const moved = {
        ...plan,
        structures: [],
        alignments: [ring(box(eastM, 195, eastM + 35, 225))],
      };
      await traceWater(counted, { plan: moved }, {}, limits);
      return bands;
    };
    const first = await read(205);
    expect(first).toBeGreaterThan(0);
    expect(await read(215)).toBe(first);
    expect(await read(330)).toBeGreaterThan(first);
  });
});

describe("the engine", () => {
  it("asks for ground first", async () => {
    await expect(makeEngine().traceWater({ plan: slopePlan })).rejects.toMatchObject({
      code: "ground/none",
    });
  });

  it("traces a plan that holds nothing yet, and only the lines asked for", async () => {
    const { water, alternatives } = await trace(slope, planWith(101));
    expect(water.cells).toBe(8000);
    expect(alternatives).toEqual([]);
    const two = [ring(box(50, 25, 80, 55)), { ...ring(box(45, 20, 85, 60)), id: "b" }];
    const some = await traceWater(terrainOf(slope), {
      plan: { ...slopePlan, alignments: two },
      ids: ["b"],
    });
    expect(some.alternatives.map(({ id }) => id)).toEqual(["b"]);
  });

  it("stops when it is cancelled", async () => {
    const abort = new AbortController();
    abort.abort();
    const work = traceWater(terrainOf(slope), { plan: slopePlan }, { signal: abort.signal });
    await expect(work).rejects.toMatchObject({ code: "cancelled" });
  });

  it("gives the same answer to two calls at once, with and without marked sources", async () => {
    const terrain = terrainOf(slope);
    const about = [ring(box(50, 25, 80, 55))];
    const plain = { ...slopePlan, alignments: about };
    const marked = { ...plain, sources: [{ id: "s", name: "S", at: at(3, 3) }] };
    const alone = await Promise.all(
      [plain, marked].map((plan) => traceWater(terrainOf(slope), { plan })),
    );
    const together = await Promise.all(
      [plain, marked, plain].map((plan) => traceWater(terrain, { plan })),
    );
    expect(together).toEqual([alone[0], alone[1], alone[0]]);
  });
});
