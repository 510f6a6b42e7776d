import { area } from "@turf/turf";
import type { Feature, LineString, Point, Polygon } from "geojson";
import { describe, expect, it } from "vitest";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import type { Alignment } from "../../shared/plan.ts";
import type { SidewaysCostResponse } from "../../shared/search-types.ts";
import { costUnit, costWords, stationAt } from "../../shared/words/sideways-cost.ts";
import {
  goneRound,
  type RingSettings,
  reachesM,
  ringOptionsOf,
} from "../../src/live/search/ring-settings.ts";
import { differenceShapes } from "../../src/map/found-difference.ts";
import { lineMarks, savingArrows } from "../../src/map/found-shapes.ts";
import { savingRows, shareSaved, sumOf } from "../../src/worksheet/line/saving.ts";
import { lonLats, ring, structure } from "../helpers/grounds.ts";

function square(west: number, east: number): Alignment {
  return ring([
    [west, 0],
    [east, 0],
    [east, 10],
    [west, 10],
  ]);
}

function kindOf({ properties }: Feature): string {
  return properties!.kind as string;
}

describe("the ground between two rings", () => {
  it("is what each has alone, to the square metre", () => {
    const { features } = differenceShapes(square(0, 20), square(15, 45));
    const areas = new Map(features.map((each) => [kindOf(each), area(each as Feature<Polygon>)]));
    expect(areas.get("taken-in")! / 150).toBeCloseTo(1, 1);
    expect(areas.get("left-out")! / 250).toBeCloseTo(1, 1);
  });

  it("is nothing for equal rings and for lines", () => {
    expect(differenceShapes(square(0, 20), square(0, 20)).features).toEqual([]);
    const line = { ...square(0, 20), kind: "line" as const };
    expect(differenceShapes(line, square(15, 45)).features).toEqual([]);
  });
});

describe("marks of a line", () => {
  it("are its free ground and its pinned corners", () => {
    const free = [
      lonLats([
        [0, 0],
        [5, 5],
      ]),
    ];
    const { features } = lineMarks(free, { ...square(0, 20), pinned: [2, 7] });
    expect(features.map(kindOf)).toEqual(["free", "pin"]);
    expect((features[1]!.geometry as Point).coordinates).toEqual(square(0, 20).corners[2]);
  });
});

/** Stations every two metres along a line to the east, the water to the south. */
function costsOf(water: readonly number[], land: readonly number[]): SidewaysCostResponse {
  const places = lonLats(water.map((_, k) => [2 * k + 1, 0] as const));
  return {
    chainageM: Float64Array.from(water, (_, k) => 2 * k + 1),
    lonLat: Float64Array.from(places.flat()),
    toWater: Float64Array.from(water.flatMap(() => [0, -1])),
    waterBagsPerM2: Float64Array.from(water),
    landBagsPerM2: Float64Array.from(land),
    moveM: 1,
  };
}

describe("arrows to where a move saves", () => {
  it("stand at the greatest saving of each stretch and point to its side, the longest where it is most", () => {
    const costs = costsOf([-1, -3, 2, Number.NaN], [5, Number.NaN, -2, 4]);
    const { features } = savingArrows(costs, 4 / 30, "metric");
    const texts = features.filter((each) => kindOf(each) === "saving");
    expect(texts.map(({ properties }) => properties!.text)).toEqual(["−30", "−20"]);
    const shafts = features
      .filter((each) => kindOf(each) === "arrow")
      .map(({ geometry }) => (geometry as LineString).coordinates)
      .filter((path) => path.length === 2);
    const rises = shafts.map(([foot, tip]) => tip![1]! - foot![1]!);
    expect(rises[0]).toBeLessThan(0);
    expect(rises[1]).toBeGreaterThan(0);
    expect(Math.abs(rises[0]!)).toBeGreaterThan(Math.abs(rises[1]!));
  });

  it("are none where nothing is saved", () => {
    expect(savingArrows(costsOf([1, Number.NaN], [0, 2]), 0.1, "us").features).toEqual([]);
  });
});

describe("the cost of a move in words", () => {
  it("counts bags for ten units of line moved by one", () => {
    expect(costUnit("us")).toBe("bags per 10 ft of line moved 1 ft");
    expect(costWords(-2.5, "metric")).toBe("saves 25");
    expect(costWords(10 / (3.048 * 0.3048), "us")).toBe("costs 10");
    expect(costWords(0.01, "metric")).toBe("changes less than a bag");
    expect(costWords(Number.NaN, "us")).toBe("not possible there");
    expect(stationAt(costsOf([1, 2, 3], [1, 2, 3]), 3.4)).toBe(1);
  });
});

describe("a saving", () => {
  const totals = (bags: number, builtLengthM: number, greatestHeightM: number) => ({
    ...{ bags, builtLengthM, greatestHeightM },
    jobPersonHours: bags / 1000,
    lengthOverLimitM: 0,
    ...{ lengthM: builtLengthM, lengthNoDataM: 0 },
  });

  it("is written with its direction, and equal figures as the same", () => {
    const rows = savingRows(totals(12_340, 100, 1), totals(17_210, 90, 1), "metric");
    expect(rows.map(({ name, difference }) => [name, difference])).toEqual([
      ["Bags", "4,870 fewer"],
      ["To build", "10 m longer"],
      ["Person-hours", "4.9 h less"],
      ["Greatest height", "the same"],
    ]);
    expect(shareSaved(totals(75, 1, 1), totals(100, 1, 1))).toBe(0.25);
  });

  it("is never told by totals that are not complete", () => {
    const part = { ...totals(0, 100, 0), lengthNoDataM: 40 };
    const whole = totals(100, 90, 1);
    for (const [found, before] of [
      [part, whole],
      [whole, part],
    ] as const) {
      expect(savingRows(found, before, "us").every(({ difference }) => difference === "")).toBe(
        true,
      );
      expect(shareSaved(found, before)).toBe(0);
    }
  });

  it("adds several lines up, and takes their greatest height", () => {
    const sum = sumOf([totals(1000, 40, 0.6), totals(500, 20, 0.9)]);
    expect(sum).toMatchObject({ bags: 1500, builtLengthM: 60, greatestHeightM: 0.9 });
    expect(savingRows(sum, null, "metric").every(({ difference }) => difference === "")).toBe(true);
  });
});

describe("what the search is asked", () => {
  const house = structure("house", [
    [0, 0],
    [9, 0],
    [9, 9],
  ]);
  const barn = structure("barn", [
    [20, 0],
    [29, 0],
    [29, 9],
  ]);
  const plan = { ...EMPTY_PLAN, structures: [house, barn], alignments: [square(-5, 40)] };
  const settings: RingSettings = {
    leftOut: [],
    reach: 1,
    withinId: null,
    maxCorners: 24,
    keyInM: 1.5,
  };

  it("goes round all buildings but those left out, and round all when all are", () => {
    expect(goneRound(settings, plan)).toEqual(["house", "barn"]);
    expect(goneRound({ ...settings, leftOut: ["barn"] }, plan)).toEqual(["house"]);
    expect(goneRound({ ...settings, leftOut: ["barn", "house"] }, plan)).toEqual(["house", "barn"]);
  });

  it("reaches as far as chosen in round units, or stays inside a ring as long as that is there", () => {
    expect(ringOptionsOf(settings, plan, "metric").window).toEqual({ reachM: 60 });
    expect(reachesM("us").map((m) => Math.round(m / 0.3048))).toEqual([100, 200, 400, 800]);
    const within = { ...settings, reach: null, withinId: "a" };
    expect(ringOptionsOf(within, plan, "us").window).toEqual({
      outline: plan.alignments[0]!.corners,
    });
    const gone = { ...within, withinId: "b" };
    expect(ringOptionsOf(gone, plan, "metric").window).toEqual({ reachM: 60 });
  });
});
