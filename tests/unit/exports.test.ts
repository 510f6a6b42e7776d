import { booleanClockwise } from "@turf/turf";
import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/defaults.ts";
import { lineGeoJson, stakesGeoJson } from "../../src/pages/line-geojson.ts";
import { planScale } from "../../src/pages/plan-scale.ts";
import { stationTableCsv } from "../../src/pages/station-table.ts";
import { groundOf, openLine, planWith, rectangle, ring, size } from "../helpers/grounds.ts";

const ground = groundOf((x, y) => (x > 10 && y > 5 ? Number.NaN : 100 + x / 100));
const plan = planWith(100.5);
const alternative = ring(rectangle(20, 15));
const line = size(plan, alternative, ground);
const cells = (text: string) =>
  text
    .trimEnd()
    .split("\r\n")
    .map((row) => row.split(","));

describe("the station table", () => {
  it("has one row a station and the unit of every measured column in its head", () => {
    const [head, ...rows] = cells(stationTableCsv(line, "us", 0));
    expect(rows).toHaveLength(line.stations.length);
    expect(head).toContain("Ground (ft)");
    expect(head).toContain("Bags (per ft)");
    expect(cells(stationTableCsv(line, "metric", 0))[0]).toContain("Section area (m2)");
  });

  it("gives each station's figures, rounded, in the person's unit", () => {
    const [head, first] = cells(stationTableCsv(line, "us", 0));
    const column = (title: string) => first![head!.indexOf(title)];
    const station = line.stations[0]!;
    expect(column("Station")).toBe("0+00");
    expect(column("Ground (ft)")).toBe((station.groundM! / FOOT_M).toFixed(2));
    expect(column("Crest (ft)")).toBe((station.crestM / FOOT_M).toFixed(2));
    expect(column("Longitude (deg)")).toBe(station.lon.toFixed(7));
  });

  it("leaves a cell empty where there is no ground data, never a zero", () => {
    const hole = line.stations.findIndex((station) => station.groundM === null);
    expect(hole).toBeGreaterThanOrEqual(0);
    const [head, ...rows] = cells(stationTableCsv(line, "metric", 0));
    const column = (title: string) => rows[hole]![head!.indexOf(title)];
    expect(column("Ground (m)")).toBe("");
    expect(column("Height (m)")).toBe("");
    expect(column("Bags (per m)")).toBe("");
    expect(column("Crest (m)")).not.toBe("");
  });

  it("says in every row how much of the line is not counted and how much must be fixed", () => {
    const [head, ...rows] = cells(stationTableCsv(line, "us", 2));
    const gapFt = (line.totals.lengthNoDataM / FOOT_M).toFixed(1);
    expect(Number(gapFt)).toBeGreaterThan(10);
    const gap = head!.indexOf("Line without elevation data (ft)");
    for (const row of rows) {
      expect(row[gap]).toBe(String(Number(gapFt)));
      expect(row[head!.indexOf("Must fix")]).toBe("2");
    }
  });

  it("keeps a formula-like name of an alternative from running in a spreadsheet", () => {
    const [, first] = cells(stationTableCsv({ ...line, name: "=HYPERLINK(1)" }, "us", 0));
    expect(first![0]).toBe("'=HYPERLINK(1)");
  });
});

describe("the line as GeoJSON (RFC 7946)", () => {
  it.each([
    ["counter-clockwise", alternative.corners],
    ["clockwise", [...alternative.corners].reverse()],
  ])("closes a ring drawn %s and runs it counter-clockwise (section 3.1.6)", (_, corners) => {
    const { features } = JSON.parse(lineGeoJson({ ...alternative, corners }, line, 0));
    const [outer] = features[0].geometry.coordinates;
    expect(features[0].geometry.type).toBe("Polygon");
    expect(outer).toHaveLength(5);
    expect(outer[0]).toEqual(outer[4]);
    expect(booleanClockwise(outer)).toBe(false);
  });

  it("writes a line tied in as a LineString in its own order, with its totals in SI", () => {
    const tied = openLine([
      [-20, 0],
      [20, 5],
    ]);
    const sized = size(plan, tied, ground);
    const { features } = JSON.parse(lineGeoJson(tied, sized, 0));
    expect(features[0].geometry.type).toBe("LineString");
    expect(features[0].geometry.coordinates[0][0]).toBeCloseTo(tied.corners[0]![0], 8);
    expect(features[0].properties.bags).toBe(sized.totals.bags);
    expect(features[0].properties.lengthM).toBeCloseTo(Math.hypot(40, 5), 1);
  });

  it("says on line and stakes that the totals are not complete, and how much must be fixed", () => {
    const whole = JSON.parse(lineGeoJson(alternative, line, 3)).features;
    const stakes = JSON.parse(stakesGeoJson(line, 3)).features;
    for (const { properties } of [...whole, ...stakes]) {
      expect(properties).toMatchObject({ complete: false, mustFix: 3 });
    }
    const level = size(
      plan,
      alternative,
      groundOf(() => 100),
    );
    const sound = JSON.parse(lineGeoJson(alternative, level, 0)).features[0].properties;
    expect(sound).toMatchObject({ complete: true, mustFix: 0, bags: level.totals.bags });
    const none = size(
      plan,
      alternative,
      groundOf(() => Number.NaN),
    );
    expect(JSON.parse(lineGeoJson(alternative, none, 1)).features[0].properties.bags).toBeNull();
  });

  it("sets a stake at every station, null where there is no ground data", () => {
    const { features } = JSON.parse(stakesGeoJson(line, 0));
    expect(features).toHaveLength(line.stations.length);
    for (const [i, station] of line.stations.entries()) {
      const { geometry, properties } = features[i];
      expect(geometry).toEqual({
        type: "Point",
        coordinates: [expect.any(Number), expect.any(Number)],
      });
      expect(geometry.coordinates[1]).toBeCloseTo(station.lat, 8);
      expect(properties.groundM === null).toBe(station.groundM === null);
    }
  });
});

describe("the scale of the plan on paper", () => {
  it.each([
    [{ widthM: 80, heightM: 40 }, "metric", "1 : 500", 0.5],
    [{ widthM: 81, heightM: 40 }, "metric", "1 : 600", 0.6],
    [{ widthM: 10, heightM: 200 }, "metric", "1 : 2000", 2],
  ] as const)(
    "%o in 160 x 100 mm is drawn at the next usual scale",
    (site, system, words, mPerMm) => {
      const scale = planScale(site, { widthMm: 160, heightMm: 100 }, system);
      expect(scale.words).toBe(words);
      expect(scale.mPerMm).toBeCloseTo(mPerMm, 9);
    },
  );

  it("is in feet to the inch for feet: 100 m in 160 mm need 52.1 ft to the inch, so 60 ft", () => {
    const scale = planScale({ widthM: 100, heightM: 1 }, { widthMm: 160, heightMm: 100 }, "us");
    expect(scale.words).toBe("1 in = 60 ft");
    expect(scale.mPerMm).toBeCloseTo((60 * FOOT_M) / 25.4, 9);
  });
});
