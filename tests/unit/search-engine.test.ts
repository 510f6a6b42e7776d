import { openAsBlob, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { area, booleanPointInPolygon, booleanValid, polygon } from "@turf/turf";
import { beforeAll, describe, expect, it } from "vitest";
import { asFailure } from "../../shared/failure.ts";
import { foundAlternatives } from "../../shared/found-alternative.ts";
import type { Engine } from "../../shared/messages.ts";
import type { Alignment, LonLat, Plan } from "../../shared/plan.ts";
import { readPlanFile } from "../../shared/plan-file.ts";
import type { FindRingRequest, FoundLine } from "../../shared/search-types.ts";
import { howGoodWords } from "../../shared/words/search.ts";
import { makeEngine } from "../../workers/engine.ts";
import { said } from "../helpers/said.ts";

const SAMPLES = fileURLToPath(new URL("../../sample-terrain/", import.meta.url));
const NEAR = { window: { reachM: 60 }, timeCapMs: 60_000 } as const;
const ALL_ROUND = { ...NEAR, together: true } as const;

let plan: Plan;
let engine: Engine;
beforeAll(async () => {
  const read = readPlanFile(readFileSync(`${SAMPLES}demo.geojson`, "utf8"));
  if (!read.ok) throw new Error(said(read.failure).message);
  plan = read.value.plan;
  engine = makeEngine();
  const files = [{ name: "demo.tif", blob: await openAsBlob(`${SAMPLES}demo.tif`) }];
  await engine.openTerrain({ files, verticalUnit: null });
});

function find(ask: Partial<FindRingRequest> = {}) {
  return engine.findRing({ plan, ...ALL_ROUND, ...ask });
}

function lowered(byM: number): Plan {
  return { ...plan, water: { ...plan.water, stageM: plan.water.stageM - byM } };
}

/** Totals by the ordinary sizing of found lines put into a plan. */
async function sizedIn(of: Plan, lines: readonly FoundLine[]) {
  const added = foundAlternatives(of, lines);
  const ids = added.map(({ id }) => id);
  const whole = { ...of, alignments: [...of.alignments, ...added] };
  return (await engine.size({ plan: whole, ids, live: true })).lines;
}

function shape(corners: readonly LonLat[]) {
  return polygon([[...corners, corners[0]!].map(([lon, lat]) => [lon, lat])]);
}

function holdsAll(corners: readonly LonLat[], outline: readonly LonLat[]): boolean {
  return outline.every(([lon, lat]) => booleanPointInPolygon([lon, lat], shape(corners)));
}

describe("the ring found on the demo", () => {
  it("needs 20 to 40 % fewer bags than the drawn one, goes round all buildings and can be built", async () => {
    const { lines, notes } = await find();
    expect(notes).toEqual([]);
    const [line, ...more] = lines;
    expect(more).toEqual([]);
    const { lines: drawn } = await engine.size({ plan, ids: ["a", "b"], live: true });
    const share = 1 - line!.totals.bags / drawn[0]!.totals.bags;
    expect(share).toBeGreaterThan(0.2);
    expect(share).toBeLessThan(0.4);
    expect(line!.totals.bags).toBeLessThan(drawn[1]!.totals.bags);
    expect(line!.totals.lengthOverLimitM).toBe(0);
    expect(line!.kind).toBe("ring");
    expect(line!.corners.length).toBeLessThanOrEqual(24);
    expect(line!.encloses).toEqual(plan.structures.map(({ id }) => id));
    expect(booleanValid(shape(line!.corners))).toBe(true);
    for (const { outline } of plan.structures) {
      expect(holdsAll(line!.corners, outline)).toBe(true);
    }
    expect(Math.abs(area(shape(line!.corners)) / line!.enclosedM2 - 1)).toBeLessThan(0.01);
  });

  it("has the volume that the search said, and its totals are the ordinary sizing's", async () => {
    for (const of of [plan, lowered(0.2), lowered(0.6)]) {
      const { lines } = await find({ plan: of });
      const [sized] = await sizedIn(of, lines);
      expect(sized!.totals.bags).toBe(lines[0]!.totals.bags);
      expect(sized!.totals.volumeM3).toBeCloseTo(lines[0]!.totals.volumeM3, 4);
      expect(Math.abs(lines[0]!.volumeM3 / sized!.totals.volumeM3 - 1)).toBeLessThan(0.005);
    }
  });

  it("is given as a line tied in at both ends where high ground leaves one stretch to build", async () => {
    const low = lowered(0.2);
    const { lines, notes } = await find({ plan: low, keyInM: 2 });
    const line = lines[0]!;
    expect(line.kind).toBe("line");
    expect(notes).toContainEqual({ kind: "part-on-high-ground" });
    const [piece] = line.pieces;
    expect(piece!.tieIns.map(({ keyInM }) => keyInM)).toEqual([2, 2]);
    expect(line.totals.lengthM - line.totals.builtLengthM).toBeGreaterThan(3.9);
    for (const { at, elevationM } of piece!.tieIns) {
      const { groundM } = await engine.probe({ at });
      expect(Math.abs(groundM! - elevationM)).toBeLessThan(0.01);
    }
    const [added] = foundAlternatives(low, lines);
    const traced = await engine.traceWater({
      plan: { ...low, alignments: [added!], chosenId: added!.id },
    });
    expect(traced.alternatives[0]!.dry).toBe(true);
  });

  it("is one ring over several free stretches where high ground leaves several", async () => {
    const { lines } = await find({ plan: lowered(0.4) });
    const line = lines[0]!;
    expect(line.kind).toBe("ring");
    expect(line.pieces.length).toBeGreaterThan(1);
    expect(line.free).toHaveLength(line.pieces.length);
    const built = line.pieces.reduce((sum, { volumeM3 }) => sum + volumeM3, 0);
    expect(Math.abs(built / line.totals.volumeM3 - 1)).toBeLessThan(0.005);
  });

  it("keeps to the corners asked for, to the structures asked for, and off the others", async () => {
    const house = plan.structures[0]!;
    const { lines } = await find({ structureIds: [house.id], maxCorners: 8 });
    const line = lines[0]!;
    expect(line.corners.length).toBeLessThanOrEqual(8);
    expect(line.encloses).toEqual([house.id]);
    expect(holdsAll(line.corners, house.outline)).toBe(true);
    for (const { outline } of plan.structures.slice(1)) {
      expect(outline.some((at) => holdsAll(line.corners, [at]))).toBe(false);
    }
  });

  it("stays inside a drawn window", async () => {
    const corners = plan.structures.flatMap(({ outline }) => outline);
    const [west, east] = [0, 1].map((k) => cornerOf(corners, k === 0 ? Math.min : Math.max));
    const window: LonLat[] = [
      movedBy(west!, -8, -8),
      movedBy([east![0], west![1]], 40, -8),
      movedBy(east!, 8, 8),
      movedBy([west![0], east![1]], -8, 40),
    ];
    const { lines } = await find({ window: { outline: window } });
    expect(holdsAll(window, lines[0]!.corners)).toBe(true);
    for (const { outline } of plan.structures) {
      expect(holdsAll(lines[0]!.corners, outline)).toBe(true);
    }
    const free = await find();
    expect(lines[0]!.totals.bags).toBeGreaterThan(0.99 * free.lines[0]!.totals.bags);
  });

  it("says how good it is, and that bigger cordons never need more", async () => {
    const low = lowered(0.2);
    const asked = { plan: low, judge: "estimate", reachesM: [60, 240] } as const;
    const { lines, cordons } = await find(asked);
    expect(lines[0]!.howGood).toMatchObject({ kind: "estimate" });
    expect(lines[0]!.howGood!.gapShare).toBeGreaterThanOrEqual(0);
    expect(howGoodWords(lines[0]!.howGood!)).toContain("Estimate");
    expect(cordons.map(({ reachM }) => reachM)).toEqual([60, 240]);
    const [near, far] = cordons.map(({ line }) => line!);
    expect(far!.totals.bags).toBeLessThan(near!.totals.bags);
    expect(far!.enclosedM2).toBeGreaterThan(near!.enclosedM2);
  });

  it("does not enclose a marked river", async () => {
    const low = lowered(0.4);
    const [river] = [[-93.9752, 42.9904]] as const;
    const sources = [{ id: "s", name: "River", at: river! }];
    const { lines } = await find({ plan: { ...low, sources }, window: { reachM: 240 } });
    const path = lines[0]!.corners;
    expect(holdsAll(path, [river!])).toBe(false);
  });
});

describe("several structures", () => {
  it("get one ring each where that needs fewer bags, each under its own name", async () => {
    const house = plan.structures[0]!;
    const [lon, lat] = house.outline[0]!;
    const away = house.outline.map(([x, y]): LonLat => [x - lon + lon, y - lat + lat + 0.0022]);
    const far = { ...house, id: "far", name: "Shed on the terrace", outline: away };
    const two = { ...plan, structures: [house, far] };
    const { lines, notes } = await engine.findRing({ plan: two, ...NEAR });
    expect(lines.map(({ encloses }) => encloses).sort()).toEqual([["far"], [house.id]]);
    expect(notes).toContainEqual({ kind: "separate-rings", count: 2 });
    const names = foundAlternatives(two, lines).map(({ name }) => name);
    expect(new Set(names)).toEqual(
      new Set(["Found ring, House", "Found ring, Shed on the terrace"]),
    );
  });
});

describe("what cannot be found", () => {
  it.each([
    ["without a structure", { structures: [] }, {}, "site/no-structure"],
    ["in a window too small", {}, { window: { reachM: 3 } }, "site/"],
    [
      "in a window that misses the structure",
      {},
      {
        window: {
          outline: [
            [-93.97, 42.99],
            [-93.969, 42.99],
            [-93.969, 42.991],
          ],
        },
      },
      "site/window-misses-structure",
    ],
  ] as const)("is refused %s", async (_, change, ask, code) => {
    const request = { plan: { ...plan, ...change }, ...ALL_ROUND, ...ask };
    const thrown = await engine.findRing(request as FindRingRequest).catch(asFailure);
    expect(thrown).toMatchObject({ code: expect.stringMatching(new RegExp(`^${code}`)) });
  });

  it("ends at once when it is cancelled, with progress until then", async () => {
    const abort = new AbortController();
    const shares: number[] = [];
    const search = engine.findRing(
      { plan, ...NEAR, judge: "estimate" },
      {
        signal: abort.signal,
        onProgress: (share) => {
          shares.push(share);
          if (shares.length === 3) abort.abort();
        },
      },
    );
    await expect(search).rejects.toMatchObject({ code: "cancelled" });
    expect(shares).toHaveLength(3);
    expect(shares.every((share) => share >= 0 && share <= 1)).toBe(true);
  });
});

describe("a drawn line improved", () => {
  it("needs fewer bags, and the same again finds nothing worth moving", async () => {
    const { before, after, corners } = await engine.improveLine({ plan, id: "a" });
    expect(after.bags).toBeLessThan(0.85 * before.bags);
    const better = withCornersOf(plan, "a", corners);
    const again = await engine.improveLine({ plan: better, id: "a" });
    expect(again.before.bags).toBe(after.bags);
    expect(again.after.bags).toBeLessThanOrEqual(after.bags);
    expect(again.after.bags).toBeGreaterThan(0.98 * after.bags);
  });

  it("keeps pinned corners where they are, and legs between two of them", async () => {
    const pinned = { ...plan.alignments[0]!, pinned: [0, 1, 4] };
    const of = { ...plan, alignments: [pinned] };
    const {
      corners,
      pinned: kept,
      after,
      before,
    } = await engine.improveLine({ plan: of, id: "a" });
    expect(kept.map((k) => corners[k])).toEqual([0, 1, 4].map((k) => pinned.corners[k]));
    expect(kept[1]).toBe(kept[0]! + 1);
    expect(after.bags).toBeLessThan(before.bags);
  });

  it("is refused for a line that is not there", async () => {
    await expect(engine.improveLine({ plan, id: "z" })).rejects.toMatchObject({
      code: "plan/no-such-line",
    });
  });
});

describe("what moving a line sideways costs", () => {
  it("is what moving a whole leg costs when both are sized, to first order", async () => {
    const corners = plan.alignments[0]!.corners;
    const costs = await engine.sidewaysCost({ plan, id: "a" });
    const { lines } = await engine.size({ plan, ids: ["a"], live: true });
    const ends = [...lines[0]!.cornersM, lines[0]!.totals.lengthM];
    for (const leg of [0, 5, 6]) {
      const on = [...costs.chainageM.keys()].filter(
        (k) => costs.chainageM[k]! > ends[leg]! && costs.chainageM[k]! < ends[leg + 1]!,
      );
      const spacingM = (ends[leg + 1]! - ends[leg]!) / on.length;
      const said = on.reduce((sum, k) => sum + costs.waterBagsPerM2[k]! * spacingM, 0);
      const k = on[0]!;
      const [east, north] = [costs.toWater[2 * k]!, costs.toWater[2 * k + 1]!];
      const here = [corners[leg]!, corners[(leg + 1) % corners.length]!];
      const there = here.map((at) => movedBy(at, east, north));
      const both = [lineOf("here", here), lineOf("there", there)];
      const sizes = await engine.size({
        plan: { ...plan, alignments: both, chosenId: null },
        live: true,
      });
      const [before, after] = sizes.lines.map(({ totals }) => totals.volumeM3);
      const expected = (after! - before!) / plan.section.bag.placedVolumeM3;
      expect(Math.abs(expected)).toBeGreaterThan(40);
      expect(Math.abs(said / expected - 1)).toBeLessThan(0.03);
    }
  });
});

/** South-west or north-east corner of the box round some places. */
function cornerOf(places: readonly LonLat[], pick: (...values: number[]) => number): LonLat {
  return [pick(...places.map(([lon]) => lon)), pick(...places.map(([, lat]) => lat))];
}

/** A place moved by metres, on a sphere of the Earth's size. */
function movedBy([lon, lat]: LonLat, eastM: number, northM: number): LonLat {
  return [lon + eastM / (111_320 * Math.cos((lat * Math.PI) / 180)), lat + northM / 111_100];
}

function lineOf(id: string, corners: readonly LonLat[]): Alignment {
  return { ...{ id, name: id, kind: "line", corners, reachBreaksM: [] } };
}

function withCornersOf(of: Plan, id: string, corners: readonly LonLat[]): Plan {
  const alignments = of.alignments.map((each) => (each.id === id ? { ...each, corners } : each));
  return { ...of, alignments };
}
