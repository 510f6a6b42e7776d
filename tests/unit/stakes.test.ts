import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { namedCorners } from "../../shared/stakes/corner-names.ts";
import { stakesOf } from "../../shared/stakes/stakes.ts";
import { LONGEST_TIE_M, tieFinder } from "../../shared/stakes/ties.ts";
import { foundLines } from "../../shared/words/stake-place.ts";
import {
  flat,
  groundOf,
  openLine,
  PLANE,
  planWith,
  rectangle,
  ring,
  size,
  structure,
} from "../helpers/grounds.ts";

/** Walls 20 m by 10 m: corners H1 (-10, -5), H2 (10, -5), H3 (10, 5), H4 (-10, 5). */
const HOUSE = structure("House", rectangle(10, 5));

describe("ties", () => {
  const ties = tieFinder([HOUSE], PLANE);
  const words = (x: number, y: number) =>
    ties(x, y)?.map(({ corner, distanceM }) => `${corner} ${distanceM.toFixed(2)}`);

  it("are the two corners in sight whose tapes fix the stake best, the shorter first", () => {
    expect(words(-4, -13)).toEqual(["H1 10.00", "H2 16.12"]);
  });

  it("never go through the building", () => {
    for (const [x, y] of [
      [0, -12],
      [3, -30],
      [-8, -9],
    ] as const) {
      expect(
        ties(x, y)!
          .map(({ corner }) => corner)
          .sort(),
      ).toEqual(["H1", "H2"]);
    }
  });

  it("never go through another building", () => {
    const shed = structure("Shed", [
      [-9, -9],
      [-5, -9],
      [-5, -7],
      [-9, -7],
    ]);
    const both = tieFinder([HOUSE, shed], PLANE);
    expect(both(-7, -13)!.map(({ corner }) => corner[0])).toEqual(["S", "S"]);
  });

  it("cross at 30 to 150 degrees, within 125 ft; else there are none", () => {
    expect(ties(0, -5.5)).toBeNull();
    expect(words(0, -LONGEST_TIE_M - 6)).toBeUndefined();
    expect(words(0, -5 - 10 / Math.tan((16 * Math.PI) / 180))).toBeDefined();
    expect(words(0, -5 - 10 / Math.tan((14 * Math.PI) / 180))).toBeUndefined();
    expect(ties(0, 0)).toBeNull();
  });

  it("name corners by the initial of the building's last word; no two buildings have one letter", () => {
    const names = ["House", "Machine shed", "Hay shed", "7"].map((name) =>
      structure(name, rectangle(1, 1)),
    );
    const letters = namedCorners(names).map(({ name }) => name);
    expect(letters.slice(0, 4)).toEqual(["H1", "H2", "H3", "H4"]);
    expect([letters[4], letters[8], letters[12]]).toEqual(["S1", "A1", "B1"]);
  });
});

describe("stakes", () => {
  const plan = { ...planWith(100.5), structures: [HOUSE] };

  it("of a ring: the end is the start, each has its tape and bearing from the one before", () => {
    const line = size(plan, ring(rectangle(20, 15)), flat(100));
    const stakes = stakesOf(plan, line, PLANE);
    expect(stakes[0]!.fromBefore).toBeNull();
    expect(stakes.at(-1)!.found).toEqual({ by: "start" });
    expect(stakes[1]!.fromBefore!.distanceM).toBeCloseTo(25 * FOOT_M, 6);
    expect(stakes[1]!.fromBefore!.bearingDeg).toBeCloseTo(90, 6);
    const around = stakes.reduce((sum, { fromBefore }) => sum + (fromBefore?.distanceM ?? 0), 0);
    expect(around).toBeCloseTo(line.totals.lengthM, 6);
  });

  it("without a building near: on line between two corners, the corners by coordinates", () => {
    const far = openLine([
      [500, 500],
      [540, 500],
    ]);
    const line = size(plan, far, flat(100));
    const [start, next] = stakesOf(plan, line, PLANE);
    expect(start!.found).toEqual({ by: "coordinates" });
    expect(next!.found).toMatchObject({ by: "line", fromM: 0 });
    expect((next!.found as { toM: number }).toM).toBeCloseTo(40, 6);
    expect(foundLines(next!, "us")).toEqual(["on line 0+00 to 1+31"]);
  });

  it("by coordinates: degrees, then tape and bearing from the stake before", () => {
    const found = { by: "coordinates" } as const;
    const station = { lat: 42.9911693861, lon: -93.9745835624 };
    const degrees = ["lat 42.991169", "lon −93.974584"];
    expect(foundLines({ found, station, fromBefore: null }, "us")).toEqual(degrees);
    const fromBefore = { distanceM: 25 * FOOT_M, bearingDeg: 84.26 };
    expect(foundLines({ found, station, fromBefore }, "us")).toEqual([
      ...degrees,
      "tape 25.0 at 84.3°",
    ]);
    expect(foundLines({ found, station, fromBefore }, "metric").at(-1)).toBe("tape 7.62 at 84.3°");
  });

  it("are at the highest place, and at both ends of every stretch over the limit, marked as over", () => {
    const ditch = (x: number) => (x > 21.3 && x < 25.8 ? 98.9 : 100);
    const line = size(
      plan,
      openLine([
        [0, 0],
        [60, 0],
      ]),
      groundOf(ditch),
    );
    const over = line.checks.find(({ id }) => id === "over-limit")!;
    const at = (m: number) => line.stations.find(({ chainageM }) => Math.abs(chainageM - m) < 0.3);
    expect(at(over.fromM)).toMatchObject({ isOverLimit: true });
    expect(at(over.toM)).toMatchObject({ isOverLimit: true });
    const marked = line.stations.filter(({ isOverLimit }) => isOverLimit);
    expect(marked[0]!.chainageM).toBeCloseTo(over.fromM, 0);
    expect(marked.at(-1)!.chainageM).toBeCloseTo(over.toM, 0);
    expect(at(line.totals.greatestHeightAtM)).toMatchObject({ isOverLimit: true });
    expect(line.stations[0]).toMatchObject({ isOverLimit: false });
  });
});
