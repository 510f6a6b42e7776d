import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { DEFAULT_SECTION } from "../../shared/defaults.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { messageOf } from "../helpers/check-text.ts";
import {
  type Corner,
  flat,
  gridGround,
  groundOf,
  openLine,
  planWith,
  rectangle,
  ring,
  size,
} from "../helpers/grounds.ts";

const bumpy = (x: number, y: number) =>
  100 + 0.5 * Math.sin(x / 9) + 0.4 * Math.cos(y / 7) + 0.1 * Math.sin(x + 2 * y);
const FIELD: Corner[] = [
  [-40, -25],
  [35, -30],
  [48, 20],
  [-10, 42],
];
const reasons = (line: SizedLine, reason: string) =>
  line.stations.filter((station) => station.reason === reason);

describe("stations", () => {
  const plan = planWith(100.5);
  const line = size(plan, ring(FIELD, [50]), groundOf(bumpy));

  it("stand at the interval, at corners, at reach breaks, where the ground turns, and at the closing point", () => {
    expect(line.stations[0]).toMatchObject({ chainageM: 0, reason: "start" });
    expect(line.stations.at(-1)).toMatchObject({ chainageM: line.totals.lengthM, reason: "end" });
    expect(reasons(line, "corner").map((each) => each.chainageM)).toEqual(line.cornersM.slice(1));
    expect(reasons(line, "reach").map((each) => each.chainageM)).toEqual([50]);
    const apartM = (m: number) =>
      Math.min(...line.stations.map(({ chainageM }) => Math.abs(chainageM - m)));
    const steps = Math.floor(line.totals.lengthM / (25 * FOOT_M));
    for (let i = 1; i <= steps; i++) expect(apartM(i * 25 * FOOT_M)).toBeLessThan(0.3);
    const interval = reasons(line, "interval").map((each) => each.chainageM / (25 * FOOT_M));
    expect(interval.length).toBeGreaterThan(steps - 3);
    for (const k of interval) expect(k).toBeCloseTo(Math.round(k), 9);
    expect(reasons(line, "turn").length).toBeGreaterThan(4);
  });

  it("stand at both edges of a gap in the ground, of one cell and of many, also under the base only", () => {
    const holes = (x: number, y: number) => {
      const oneCell = Math.abs(x - 11) < 0.7 && Math.abs(y) < 5;
      const many = x > 30 && x < 46.7;
      const atToe = Math.abs(x - 20) < 0.7 && y > 0.3 && y < 5;
      return oneCell || many || atToe ? Number.NaN : 100;
    };
    const straight = openLine([
      [0, 0],
      [60, 0],
    ]);
    const gaps = reasons(size(plan, straight, groundOf(holes)), "gap");
    expect(gaps.map((each) => Number(each.chainageM.toFixed(6)))).toEqual([
      ...[10.5, 11.5, 19.5, 20.5, 30.5, 46.5],
    ]);
    const isKnown = (each: { groundM: number | null }) => each.groundM !== null;
    expect(gaps.map(isKnown)).toEqual([false, false, true, true, false, false]);
    expect(gaps.map((each) => each.lowestGroundM)).toEqual(gaps.map(() => null));
  });

  it("are in order and never double", () => {
    const chainages = line.stations.map((station) => station.chainageM);
    for (const [i, m] of chainages.slice(1).entries()) {
      expect(m - chainages[i]!).toBeGreaterThan(0.009);
    }
  });

  it("give the corner the name when an interval falls on it", () => {
    const exact = size(
      planWith(100.5),
      openLine([
        [0, 0],
        [25 * FOOT_M, 0],
        [60, 0],
      ]),
      flat(100),
    );
    const at = exact.stations.filter((each) => Math.abs(each.chainageM - 25 * FOOT_M) < 0.02);
    expect(at.map((each) => each.reason)).toEqual(["corner"]);
  });

  it("hold heights that follow from ground and crest", () => {
    for (const station of line.stations) {
      const heightM = Math.max(0, station.crestM - station.groundM!);
      expect(station.heightM).toBeCloseTo(heightM, 12);
      expect(station.crestM - station.waterM).toBeCloseTo(FOOT_M, 12);
      if (heightM === 0) continue;
      expect(station.greatestHeightM).toBeCloseTo(station.crestM - station.lowestGroundM!, 12);
      expect(station.greatestHeightM!).toBeGreaterThanOrEqual(heightM);
      expect(station.bagsPerM).toBeCloseTo(
        station.sectionAreaM2! / DEFAULT_SECTION.bag.placedVolumeM3,
        9,
      );
      const coursesIn = (m: number) => Math.ceil(m / DEFAULT_SECTION.bag.courseM - 1e-9);
      expect(station.courses).toBe(coursesIn(heightM));
      expect(station.coursesAtLowToe).toBe(coursesIn(station.greatestHeightM!));
      expect(station.raiseToM!).toBeLessThanOrEqual(plan.practice.limitM + 1e-12);
    }
  });

  it("lie where the ground turns: on a ramp with one ridge, on the ridge", () => {
    const ridge = size(
      planWith(101),
      openLine([
        [0, 0],
        [60, 0],
      ]),
      groundOf((x) => 100 - Math.abs(x - 33) / 50),
    );
    expect(reasons(ridge, "turn").map((each) => Math.round(each.chainageM))).toEqual([33]);
  });
});

describe("the walk", () => {
  it("agrees with the stations where both stand at one place", () => {
    const line = size(planWith(100.5), ring(FIELD), groundOf(bumpy));
    for (const station of line.stations.filter((each) => each.reason === "turn")) {
      const i = line.walk.chainageM.indexOf(station.chainageM);
      expect(line.walk.groundM[i]).toBeCloseTo(station.groundM!, 9);
      expect(line.walk.areaM2[i]).toBeCloseTo(station.sectionAreaM2!, 9);
      expect(line.walk.lonLat[2 * i]).toBeCloseTo(station.lon, 8);
      expect(line.walk.lonLat[2 * i + 1]).toBeCloseTo(station.lat, 8);
    }
  });

  it("is no coarser than half a cell, nor than half a metre", () => {
    for (const [cellM, stepM] of [
      [1, 0.5],
      [0.3, 0.15],
      [10, 0.5],
    ] as const) {
      const line = size(planWith(100.5), ring(rectangle(10, 10)), groundOf(bumpy, cellM));
      expect(line.stepM).toBeLessThanOrEqual(stepM + 1e-9);
      const gaps = line.walk.chainageM.slice(1).map((m, i) => m - line.walk.chainageM[i]!);
      expect(Math.max(...gaps)).toBeLessThanOrEqual(stepM + 1e-9);
    }
  });
});

describe("quantities and the station interval", () => {
  it("do not depend on it: halving it changes no bag", () => {
    const at = (stationIntervalM: number) =>
      size(planWith(100.5, { practice: { stationIntervalM } }), ring(FIELD), groundOf(bumpy))
        .totals;
    expect(at((25 * FOOT_M) / 2)).toEqual(at(25 * FOOT_M));
    expect(at(60)).toEqual(at(25 * FOOT_M));
  });

  it("hardly depend on the walk's own step: a four times finer one changes bags by less than 0.1 %", () => {
    const cells = gridGround(120, 1, bumpy);
    const coarse = size(planWith(100.5), ring(FIELD), cells).totals;
    const fine = size(planWith(100.5), ring(FIELD), { ...cells, cellM: 0.25 }).totals;
    expect(Math.abs(coarse.bags / fine.bags - 1)).toBeLessThan(0.001);
  });
});

describe("ring and line", () => {
  it("a ring has an area, a line has none; both know their corners", () => {
    expect(size(planWith(101), ring(rectangle(20, 10)), flat(100)).enclosedM2).toBeCloseTo(800, 3);
    const line = size(planWith(101), openLine(FIELD), flat(100));
    expect(line.enclosedM2).toBeNull();
    expect(line.cornersM).toHaveLength(4);
    expect(line.cornersM.at(-1)).toBeCloseTo(line.totals.lengthM, 9);
  });
});

describe("the ground's accuracy", () => {
  const plan = planWith(100.5, { ground: { rmseM: 0.15 } });
  const line = size(plan, ring(FIELD), groundOf(bumpy));

  it("low ground needs what a crest as much higher needs, and the other way round", () => {
    const higher = size(planWith(100.65), ring(FIELD), groundOf(bumpy)).totals;
    const lower = size(planWith(100.35), ring(FIELD), groundOf(bumpy)).totals;
    expect(Math.abs(line.totalsGroundLow!.bags - higher.bags)).toBeLessThanOrEqual(1);
    expect(Math.abs(line.totalsGroundHigh!.bags - lower.bags)).toBeLessThanOrEqual(1);
    expect(line.totalsGroundLow!.bags).toBeGreaterThan(line.totals.bags);
    expect(line.totalsGroundHigh!.bags).toBeLessThan(line.totals.bags);
  });

  it("is left out while live, and nothing else changes", () => {
    const live = size(plan, ring(FIELD), groundOf(bumpy), true);
    expect([live.totalsGroundLow, live.totalsGroundHigh]).toEqual([null, null]);
    expect(live.totals).toEqual(line.totals);
    expect(live.stations).toEqual(line.stations);
  });
});

describe("a hole in the data", () => {
  const hole = groundOf((x, y) => (y < 0 && Math.abs(x) < 5 ? Number.NaN : 100));
  const line = size(planWith(100.5), ring(rectangle(30, 20)), hole);
  const whole = size(planWith(100.5), ring(rectangle(30, 20)), flat(100));

  it("is null at its stations and NaN in the walk, never ground", () => {
    const inside = line.stations.filter((each) => Math.abs(each.chainageM - 30) < 4.9);
    expect(inside.length).toBeGreaterThan(0);
    for (const station of inside) {
      expect(station).toMatchObject({
        groundM: null,
        heightM: null,
        greatestHeightM: null,
        lowestGroundM: null,
        sectionAreaM2: null,
        bagsPerM: null,
        raiseToM: null,
      });
    }
    expect(line.walk.groundM.filter(Number.isNaN).length).toBeGreaterThan(15);
  });

  it("leaves its quantities out and says how long it is", () => {
    expect(line.totals.lengthNoDataM).toBeGreaterThan(10);
    expect(line.totals.lengthNoDataM).toBeLessThan(11.1);
    const left = whole.totals.volumeM3 * (1 - line.totals.lengthNoDataM / whole.totals.lengthM);
    expect(line.totals.volumeM3).toBeCloseTo(left, 4);
    expect(line.totals.prismoidalVolumeM3).toBeCloseTo(left, 4);
    expect(Number.isFinite(line.totals.sheetM2)).toBe(true);
    expect(line.checks.find((check) => check.id === "no-ground")?.severity).toBe("stop");
  });

  it("without any ground everything is unknown and nothing breaks", () => {
    const none = size(planWith(100.5), ring(rectangle(30, 20)), flat(Number.NaN));
    expect(none.totals).toMatchObject({
      bags: 0,
      volumeM3: 0,
      builtLengthM: 0,
      greatestHeightM: 0,
    });
    expect(none.totals.lengthNoDataM).toBeCloseTo(none.totals.lengthM, 9);
    const check = none.checks.find((each) => each.id === "no-ground");
    expect(messageOf(check)).toContain("The whole line");
    expect([check?.fromM, check?.toM]).toEqual([0, none.totals.lengthM]);
  });

  it("a hole under one toe alone makes the cut unknown though the centre line is known", () => {
    const beside = groundOf((x, y) => (x > 0 && x < 4 && y < -20.5 ? Number.NaN : 100));
    const sized = size(planWith(100.8), ring(rectangle(30, 20)), beside);
    const station = sized.stations.find(
      (each) => Math.abs(each.chainageM - 4 * 25 * FOOT_M) < 0.01,
    )!;
    expect(station.groundM).toBe(100);
    expect(station.heightM).toBeCloseTo(0.8 + FOOT_M, 9);
    expect([station.lowestGroundM, station.greatestHeightM, station.sectionAreaM2]).toEqual([
      null,
      null,
      null,
    ]);
  });
});

describe("a falling water surface", () => {
  it("lowers the crest downstream", () => {
    const base = planWith(100.5, { water: { fallPerM: 0.01 } });
    const origin = ring(rectangle(1, 1)).corners[0]!;
    const plan = { ...base, flow: { from: origin, to: [origin[0] + 0.001, origin[1]] as const } };
    const line = size(
      plan,
      openLine([
        [0, 0],
        [100, 0],
      ]),
      flat(100),
    );
    const [first, last] = [line.stations[0]!, line.stations.at(-1)!];
    expect(first.waterM - last.waterM).toBeCloseTo(1, 3);
    expect(last.heightM!).toBeLessThan(first.heightM!);
  });
});
