import geodesic from "geographiclib-geodesic";
import type { Feature, LineString, MultiPolygon, Point, Position } from "geojson";
import { describe, expect, it } from "vitest";
import type { RuleId } from "../../shared/checks/findings.ts";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import { leveeCores, leveeShapes } from "../../shared/line-shapes/levee-shapes.ts";
import type { Plan } from "../../shared/plan.ts";
import { sizeLine } from "../../shared/size-line.ts";
import type { Check, SizedLine } from "../../shared/sizing-types.ts";
import { nearestChainage, spotAt, stretch } from "../../src/drawing/line/along.ts";
import { stationMarks, stationStepM } from "../../src/drawing/line/station-marks.ts";
import { waterSideIn } from "../../src/drawing/line/water-side.ts";
import { groupChecks } from "../../src/map/check-groups.ts";
import { markedShapes, pointedShape } from "../../src/map/marked-shapes.ts";
import { planShapes } from "../../src/map/plan-shapes.ts";
import { groundOf, openLine, PLANE, rectangle, ring } from "../helpers/grounds.ts";

const LIMIT_M = 1.2192;
const PLAN: Plan = {
  ...EMPTY_PLAN,
  water: { ...EMPTY_PLAN.water, by: "elevation", elevationM: 101, freeboardM: 0 },
};

function sizedOn(
  heightAt: (xM: number, yM: number) => number,
  alignment = ring(rectangle(60, 40)),
): SizedLine {
  return sizeLine({ plan: PLAN, alignment, plane: PLANE, ground: groundOf(heightAt), live: true });
}

function geodesicArea(outline: readonly Position[]): number {
  const polygon = geodesic.Geodesic.WGS84.Polygon(false);
  for (const [lon, lat] of outline.slice(0, -1)) polygon.AddPoint(lat!, lon!);
  return Math.abs(polygon.Compute(false, true).area!);
}

const strips = (line: SizedLine) =>
  leveeShapes(line, LIMIT_M).features.filter((each) => each.properties!.kind === "strip");

describe("the levee on the map", () => {
  it("covers base times length plus the round corners, by GeographicLib areas", () => {
    const [strip, ...others] = strips(sizedOn(() => 100));
    expect(others).toEqual([]);
    expect(strip!.properties!.heightClass).toBe(3);
    const polygons = (strip!.geometry as MultiPolygon).coordinates;
    const drawn = polygons.reduce((sum, [outline]) => sum + geodesicArea(outline!), 0);
    const halfBaseM = 1.5;
    const facet = Math.PI / 12;
    const corners = 4 * 6 * (halfBaseM ** 2 / 2) * Math.sin(facet);
    expect(drawn / (400 * 2 * halfBaseM + corners)).toBeCloseTo(1, 4);
  });

  it("keeps its center line by class, for where the strip is too narrow to be seen", () => {
    const { features: cores } = leveeCores(
      sizedOn(() => 100),
      LIMIT_M,
    );
    expect(cores.map((each) => each.properties!.heightClass)).toEqual([3]);
    const [leg] = (cores[0]!.geometry as unknown as { coordinates: Position[][] }).coordinates;
    for (const [lon, lat] of leg!) {
      const [x, y] = PLANE.toPlane([lon!, lat!]);
      expect(Math.min(Math.abs(Math.abs(x) - 60), Math.abs(Math.abs(y) - 40))).toBeLessThan(1e-3);
    }
  });

  it("changes class where the height passes a quarter of the limit, and hatches past it", () => {
    const line = sizedOn(
      (xM) => 101 - (xM + 100) * 0.02,
      openLine([
        [-100, 0],
        [0, 0],
      ]),
    );
    const classes = strips(line).map((each) => each.properties!.heightClass as number);
    expect(classes).toEqual([0, 1, 2, 3, 4]);
    const over = strips(line)[4]!.geometry as MultiPolygon;
    const west = Math.min(
      ...over.coordinates[0]![0]!.map(([lon, lat]) => PLANE.toPlane([lon!, lat!])[0]),
    );
    expect(Math.abs(west - (-100 + LIMIT_M / 0.02))).toBeLessThan(1.5);
  });

  it("draws free ground and missing ground as lines, and no strip there", () => {
    const shape = (heightAt: (xM: number) => number) =>
      leveeShapes(
        sizedOn(
          heightAt,
          openLine([
            [-50, 0],
            [50, 0],
          ]),
        ),
        LIMIT_M,
      ).features;
    const free = shape(() => 105);
    expect(free.map((each) => each.properties!.kind)).toEqual(["free"]);
    const holed = shape((xM) => (xM > 0 ? Number.NaN : 100));
    const kinds = holed.map((each) => each.properties!.kind);
    expect(kinds).toEqual(["strip", "no-data"]);
    const gap = holed[1]!.geometry as unknown as { coordinates: Position[][] };
    const [from] = gap.coordinates[0]!;
    expect(PLANE.toPlane([from![0]!, from![1]!])[0]).toBeLessThan(0.5);
  });
});

describe("stations on the map", () => {
  it.each([rectangle(60, 40), [...rectangle(60, 40)].reverse()])(
    "stand outside a ring drawn either way round",
    (...corners) => {
      const line = sizedOn(() => 100, ring(corners));
      const side = waterSideIn({ ...PLAN, alignments: [ring(corners)] }, "a");
      const marks = stationMarks(line, 0.25, "us", side).features as Feature<Point>[];
      expect(marks[0]!.properties!.text).toBe("0+00");
      expect(marks[1]!.properties!.text).toBe("1+00");
      expect(marks).toHaveLength(13);
      for (const { geometry } of marks) {
        const [x, y] = PLANE.toPlane(geometry.coordinates as [number, number]);
        const outsideM = Math.max(Math.abs(x) - 60, Math.abs(y) - 40);
        expect(Math.abs(outsideM - 1.5)).toBeLessThan(0.02);
      }
    },
  );

  it("are spaced in round numbers that keep labels apart", () => {
    expect(stationStepM(0.25, "us") / 0.3048).toBeCloseTo(100, 9);
    expect(stationStepM(0.05, "us") / 0.3048).toBeCloseTo(20, 9);
    expect(stationStepM(0.25, "metric")).toBe(25);
    expect(stationStepM(10, "metric")).toBe(1000);
  });
});

describe("places along the line", () => {
  const line = sizedOn(() => 100);

  it("are found from a chainage and back", () => {
    for (const chainageM of [0, 33.3, 120, 259.4]) {
      const spot = spotAt(line.walk, chainageM)!;
      const found = nearestChainage(line.walk, spot.at)!;
      expect(found.awayM).toBeLessThan(1e-3);
      expect(Math.abs(found.chainageM - chainageM)).toBeLessThan(1e-3);
    }
    expect(spotAt(line.walk, 1e9)!.at).toEqual(spotAt(line.walk, line.totals.lengthM)!.at);
  });

  it("mark a station with a cut from beyond one toe to beyond the other", () => {
    const [cut] = markedShapes(line, 50, 0.1).features as [Feature<LineString>];
    const [from, to] = cut.geometry.coordinates.map((at) => PLANE.toPlane(at as [number, number]));
    expect(Math.hypot(from![0] - to![0], from![1] - to![1])).toBeCloseTo(2 * (1.5 + 1.6), 2);
    expect(cut.properties!.isOver).toBe(false);
    expect(markedShapes(line, null, 0.1).features).toEqual([]);
    expect(markedShapes(null, 50, 0.1).features).toEqual([]);
  });

  it("show a stretch, over the closing point too", () => {
    expect(stretch(line.walk, 10, 20).length).toBeGreaterThan(10);
    const closing = pointedShape(line, { fromM: 390, toM: 15 }).features[0]!;
    expect((closing.geometry as unknown as { coordinates: unknown[] }).coordinates).toHaveLength(2);
    expect(pointedShape(line, { fromM: 0, toM: 0 }).features).toEqual([]);
    expect(pointedShape(line, null).features).toEqual([]);
  });
});

describe("check marks", () => {
  it("share one mark when close on the screen, the gravest first, on the land side", () => {
    const line = sizedOn(() => 100);
    const at = spotAt(line.walk, 60)!.at;
    const far = spotAt(line.walk, 200)!.at;
    const check = (id: RuleId, severity: "stop" | "note", place: typeof at | null): Check => ({
      ...{ id, severity, fromM: 60, toM: 60, at: place, where: null },
      finding: { kind: "carpentry" },
    });
    const checks = [
      check("time", "note", at),
      check("setback", "stop", at),
      check("pumps", "note", far),
      check("datum", "stop", null),
    ];
    const groups = groupChecks(
      { ...line, checks },
      ([lon, lat]) => ({
        x: PLANE.toPlane([lon, lat])[0] * 4,
        y: -PLANE.toPlane([lon, lat])[1] * 4,
      }),
      0.25,
      -1,
    );
    expect(groups.map((group) => group.checks.map((each) => each.id))).toEqual([
      ["setback", "time"],
      ["pumps"],
    ]);
    expect(groups[0]!.offset[0]).toBeCloseTo(0, 3);
    expect(groups[0]!.offset[1]).toBeCloseTo(-27, 3);
  });
});

describe("what the person drew", () => {
  it("leaves the chosen alternative to the editor and letters the others", () => {
    const a = ring(rectangle(60, 40));
    const b = {
      ...openLine([
        [-80, 0],
        [90, 10],
      ]),
      id: "b",
      name: "By the road",
    };
    const plan: Plan = {
      ...PLAN,
      alignments: [a, b],
      structures: [{ id: "s", name: "House", outline: a.corners, floorM: 100.5 }],
    };
    const shown = { plan, chosenId: "a", showAll: true };
    const { features } = planShapes(shown);
    const texts = features.map((each) => each.properties!.text).filter(Boolean);
    expect(texts).toEqual(["House", "B"]);
    expect(features.filter((each) => each.properties!.kind === "other")).toHaveLength(1);
    const alone = planShapes({ ...shown, showAll: false }).features;
    expect(alone.some((each) => each.properties!.kind === "other")).toBe(false);
  });
});
