import type { Feature, MultiLineString, Point, Position } from "geojson";
import { describe, expect, it } from "vitest";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import { stationColumns } from "../../shared/exports/station-columns.ts";
import { leveeCores, leveeShapes } from "../../shared/line-shapes/levee-shapes.ts";
import type { Alignment, Plan, ReachSection } from "../../shared/plan.ts";
import { classOnReach, reachAt, STANDARD } from "../../shared/reaches.ts";
import { SECTIONS } from "../../shared/sections.ts";
import { sizeLine } from "../../shared/size-line.ts";
import { stretchTakes, takenMaterials } from "../../shared/words/materials.ts";
import { edgedSections, reachShapes } from "../../src/drawing/line/reach-shapes.ts";
import { sectionGroups } from "../../src/pages/section-groups.ts";
import { groundOf, PLANE, rectangle, ring } from "../helpers/grounds.ts";

const LIMIT_M = EMPTY_PLAN.practice.limitM;
const HEIGHT_M = 1;
const PLAN: Plan = {
  ...EMPTY_PLAN,
  water: { ...EMPTY_PLAN.water, by: "elevation", elevationM: 100 + HEIGHT_M, freeboardM: 0 },
};
const built = (id: string): ReachSection => ({ section: id, figures: {} });
const narrow = SECTIONS.find((each) => (each.limitM ?? LIMIT_M) < HEIGHT_M)!;
const boarded = SECTIONS.find((each) => each.fill === "sand")!;

/** A ring of 120 x 80 m on level ground: 400 m, its corners at 120, 200 and 320. */
function sized(reachBreaksM: number[], reachSections: ReachSection[], kind = ring) {
  const alignment: Alignment = { ...kind(rectangle(60, 40)), reachBreaksM, reachSections };
  const ground = groundOf(() => 100);
  return sizeLine({ plan: PLAN, alignment, plane: PLANE, ground, live: true });
}

const place = (at: Position) => PLANE.toPlane(at as [number, number]);
const ofKind = (features: readonly Feature[], kind: string) =>
  features.filter(({ properties }) => properties?.kind === kind);
const line = sized([20, 100, 140, 260], [STANDARD, built(boarded.id), STANDARD, built(narrow.id)]);

describe("reaches of other sections on the map", () => {
  it("are nothing on a line that is all as the plan says", () => {
    expect(reachShapes(sized([], []), 1).features).toEqual([]);
    expect(edgedSections(sized([50], []))).toEqual([]);
  });

  it("are edged at their toes, one pattern a section, and named beside their middle", () => {
    const { features } = reachShapes(line, 1);
    const edges = ofKind(features, "edge") as Feature<MultiLineString>[];
    expect(edges.map(({ properties }) => properties?.pattern)).toEqual([0, 1]);
    const halfM = line.reaches[1]!.totals.volumeM3 / 80 / HEIGHT_M / 2;
    const [box] = edges;
    const outM = box!.geometry.coordinates.flat().map((at) => Math.abs(place(at)[1]) - 40);
    for (const each of outM) expect(Math.abs(Math.abs(each) - halfM)).toBeLessThan(0.02);
    const labels = ofKind(features, "label") as Feature<Point>[];
    expect(labels.map(({ properties }) => properties?.text)).toEqual([boarded.name, narrow.name]);
    expect(place(labels[0]!.geometry.coordinates)[0]).toBeCloseTo(-60 + 60, 1);
  });

  it("have their outside on the left of every edge, so that it can be drawn outside the toes", () => {
    const { features } = reachShapes(line, 1);
    for (const { geometry } of ofKind(features, "edge") as Feature<MultiLineString>[]) {
      for (const path of geometry.coordinates) {
        const [a, b] = [place(path[0]!), place(path[1]!)];
        const [alongX, alongY] = [b[0] - a[0], b[1] - a[1]];
        const size = Math.hypot(alongX, alongY);
        const away = [
          (a[0] + b[0]) / 2 - (alongY / size) * 0.01,
          (a[1] + b[1]) / 2 + (alongX / size) * 0.01,
        ];
        const fromLine = (x: number, y: number) =>
          Math.abs(Math.max(Math.abs(x) - 60, Math.abs(y) - 40));
        expect(fromLine(away[0]!, away[1]!)).toBeGreaterThan(
          fromLine((a[0] + b[0]) / 2, (a[1] + b[1]) / 2),
        );
      }
    }
  });

  it("end in a line across at every break", () => {
    const [ends] = ofKind(reachShapes(line, 1).features, "end") as Feature<MultiLineString>[];
    expect(ends!.geometry.coordinates).toHaveLength(4);
    const whole = sized([200], [built(narrow.id)]);
    const [both] = ofKind(reachShapes(whole, 1).features, "end") as Feature<MultiLineString>[];
    expect(both!.geometry.coordinates).toHaveLength(2);
  });

  it("are over the limit by their own limit alone", () => {
    const strips = leveeShapes(line, LIMIT_M).features;
    for (const features of [strips, leveeCores(line, LIMIT_M).features]) {
      expect(features.map(({ properties }) => properties?.heightClass)).toEqual([3, 4]);
    }
  });
});

describe("a height's class on a reach", () => {
  it("is one colour for one height everywhere, and over only past the reach's own limit", () => {
    expect(classOnReach(0.5, 1.2, 0.3)).toBe(4);
    expect(classOnReach(0.5, 1.2, 1.8)).toBe(1);
    expect(classOnReach(1.5, 1.2, 1.8)).toBe(3);
    expect(classOnReach(1.9, 1.2, 1.8)).toBe(4);
    expect(classOnReach(0, 1.2, 1.8)).toBe(-1);
    expect(classOnReach(Number.NaN, 1.2, 1.8)).toBe(-1);
  });
});

describe("what other sections take", () => {
  it("is told only where there is some, by reach in the columns of the line", () => {
    const { totals, reaches } = line;
    const heads = takenMaterials(totals.materials, "us").map(({ key }) => key);
    expect(heads).toEqual(["looseSandM3", "plywoodSheets", "lumberPieces", "stakes"]);
    const plain = takenMaterials(reaches[0]!.totals.materials, "us", totals.materials);
    expect(plain.map(({ figure }) => figure)).toEqual(["–", "–", "–", "–"]);
    expect(stretchTakes(reaches[1]!.totals, "us")).toMatch(
      /^[\d.]+ cu yd of loose sand, \d+ panels of plywood, [\d,]+ pieces of lumber, \d+ stakes$/,
    );
    expect(stretchTakes(reaches[0]!.totals, "metric")).toMatch(/^[\d,]+ bags$/);
  });
});

describe("on paper", () => {
  it("each other levee type is drawn once, where it is highest, and the plan's own by height class", () => {
    const groups = sectionGroups(line, LIMIT_M);
    const drawn = groups.map(({ chainageM, kind }) => [reachAt(line, chainageM).section, kind]);
    expect(drawn).toEqual([
      [STANDARD.section, "typical"],
      [boarded.id, "type"],
      [narrow.id, "type"],
      ...(reachAt(line, line.totals.greatestHeightAtM).section === STANDARD.section
        ? [[STANDARD.section, "highest"]]
        : []),
    ]);
    expect(groups.slice(0, 3).reduce((sum, { lengthM }) => sum + lengthM, 0)).toBeCloseTo(400, 0);
  });

  it("the stakes name levee types only where they differ, both where two meet", () => {
    const column = stationColumns(line).find(({ id }) => id === "levee_type")!;
    const names = line.stations.map((station) => column.value(station, "us"));
    expect(names.every((name) => name !== "")).toBe(true);
    expect(names).toContain(`${SECTIONS[0]!.name} / ${boarded.name}`);
    expect(stationColumns(sized([50], [])).map(({ id }) => id)).not.toContain("levee_type");
  });
});
