import { booleanClockwise } from "@turf/turf";
import type { FeatureCollection, Geometry } from "geojson";
import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import type { Exported } from "../../shared/exports/exported.ts";
import { geoJson } from "../../shared/exports/geojson.ts";
import { stakesCsv } from "../../shared/exports/stakes.ts";
import type { Alignment, Plan } from "../../shared/plan.ts";
import type { Check, SizedLine } from "../../shared/sizing-types.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { CAUTIONS } from "../../shared/words/cautions.ts";
import { checkWords } from "../../shared/words/checks.ts";
import { buildSequenceCsv } from "../../src/pages/build-sequence-table.ts";
import { surveyFeet } from "../helpers/exported-line.ts";
import { groundOf, openLine, planWith, rectangle, ring, size } from "../helpers/grounds.ts";
import { FOREIGN, NEVER } from "../helpers/never-said.ts";
import { readCsv } from "../helpers/read-csv.ts";

type Properties = Readonly<Record<string, unknown>>;

const SYSTEMS = ["us", "metric"] as const;
const FAILS: Check = {
  ...{ id: "if-it-fails", severity: "caution", fromM: 0, toM: 0, at: null, where: null },
  finding: { kind: "if-it-fails", building: "Barn", depthM: 1.3 * FOOT_M },
};

const ground = groundOf((x, y) => (x > 10 && y > 5 ? Number.NaN : 100 + x / 100));
const plan = planWith(101.5, {
  time: {
    ...{ forecast: null, startAt: "2026-04-03T14:00-05:00", marginM: 0.3, setUpH: 2 },
    ...{ fillShare: 0.5, crews: 2, shifts: 2, shiftH: 10, lit: true },
    ...{ dayFromH: null, dayToH: null, liftM: 0.3 },
  },
});
const alternative = ring(rectangle(20, 15));
const line = size(plan, alternative, ground);

/** A line with one thing to fix, over its height limit, as it leaves the program. */
function leaving(system: UnitSystem, changes: Partial<Exported> = {}): Exported {
  return {
    ...{ plan, alternative, line, checks: [...line.checks, FAILS], system },
    ...{ isTraced: true, verticalDatum: "NAVD 88", ...changes },
  };
}

function of(own: Alignment, sized: SizedLine, by: Plan = plan): Exported {
  return leaving("us", { plan: by, alternative: own, line: sized, checks: sized.checks });
}

const csvOf = (exported: Exported) => stakesCsv(exported, surveyFeet);

/** Records of a file by their heads, and what is noted above them. */
function read(csv: string) {
  const [head, ...rows] = readCsv(csv);
  const named = rows.map((row) => Object.fromEntries(head!.map((name, i) => [name, row[i]!])));
  const isNote = ({ row }: Record<string, string>) => /^(Must fix|Leave|Caution|Note)$/.test(row!);
  return {
    head: head!,
    rows,
    notes: named.filter(isNote),
    records: named.filter((each) => !isNote(each)),
  };
}

describe("stakes as CSV", () => {
  it("have one record a station, every column named with its unit, all in the person's system", async () => {
    const us = read(await csvOf(leaving("us")));
    expect(us.records).toHaveLength(line.stations.length);
    expect(us.head).toEqual(
      expect.arrayContaining(["ground_ft", "top_of_levee_ft", "lay_bags_to_ft", "bags_per_ft"]),
    );
    expect(us.head.join(" ")).not.toMatch(/_m\d?\b/);
    const metric = read(await csvOf(leaving("metric")));
    expect(metric.head).toContain("cross_section_m2");
    const own = metric.head.filter((name) => !name.startsWith("grid_"));
    expect(own.join(" ")).not.toMatch(/_(?:ft|cu|sq)\b/);
  });

  it("give each station's figures, rounded, and say what elevations count from", async () => {
    const [first] = read(await csvOf(leaving("us"))).records;
    const { groundM, crestM, heightM, lon } = line.stations[0]!;
    expect(first).toMatchObject({
      station: "0+00",
      ground_ft: (groundM! / FOOT_M).toFixed(2),
      top_of_levee_ft: (crestM / FOOT_M).toFixed(2),
      longitude: lon.toFixed(7),
      vertical_datum: "NAVD 88",
    });
    const laidFt = (groundM! + 1.05 * heightM!) / FOOT_M;
    expect(Number(first!.lay_bags_to_ft) - laidFt).toBeGreaterThanOrEqual(-1e-6);
    expect(Number(first!.lay_bags_to_ft) - laidFt).toBeLessThan(0.01);
  });

  it("say how each stake is found, and where the ground is read the rod readings for it and for its mark", async () => {
    const benchmark = { name: "BM 1", elevationM: 103, at: null };
    const surveyed = { ...plan, survey: { benchmark, backsightM: 1.2, readings: [] } };
    const [first, second] = read(await csvOf(leaving("metric", { plan: surveyed }))).records;
    expect(first).toMatchObject({
      ...{ without_ties: "by coordinates", grid: "EPSG:9999", ground_from: "elevation data" },
      ...{ from_stake_before_m: "", rod_for_top_of_levee_m: "2.4", rod_for_ground_m: "4.4" },
    });
    expect(first!.grid_east_us_ft).toMatch(/^1999934\.38$/);
    expect(second).toMatchObject({
      ...{ without_ties: "on line 0+000.0 to 0+040.0", from_stake_before_m: "7.62" },
      bearing_from_stake_before_deg: "90",
    });
  });

  it("leave a cell empty where there is no elevation data, never a zero", async () => {
    const hole = line.stations.findIndex((station) => station.groundM === null);
    const record = read(await csvOf(leaving("metric"))).records[hole]!;
    expect(record).toMatchObject({ ground_m: "", height_m: "", bags_per_m: "", lay_bags_to_m: "" });
    expect(record.top_of_levee_m).not.toBe("");
  });

  it("say in every row how much of the line is not counted and how much must be fixed", async () => {
    const gapFt = (line.totals.lengthNoDataM / FOOT_M).toFixed(1);
    expect(Number(gapFt)).toBeGreaterThan(10);
    const mustFix = line.checks.filter(
      ({ severity, continued }) => severity === "stop" && !continued,
    );
    expect(mustFix.length).toBeGreaterThan(0);
    for (const record of read(await csvOf(leaving("us"))).records) {
      expect(record).toMatchObject({
        line_without_elevation_data_ft: String(Number(gapFt)),
        must_fix_count: String(mustFix.length),
      });
    }
  });

  it("keep a formula-like name of a line from running in a spreadsheet", async () => {
    const named = leaving("us", { line: { ...line, name: "=HYPERLINK(1)" } });
    expect(read(await csvOf(named)).records[0]!.line).toBe("'=HYPERLINK(1)");
  });
});

describe.each(SYSTEMS)("what leaves the program in %s units", async (system) => {
  const exported = leaving(system);
  const sequence = buildSequenceCsv(exported, line.time!);
  const csvs = [await csvOf(exported), sequence];
  const geojsons = [JSON.parse(geoJson(exported))];
  const over = line.checks.find(({ finding }) => finding.kind === "over-limit")!;

  it("is of a line with figures, over its limit and not all counted", () => {
    expect(line.totals.lengthOverLimitM).toBeGreaterThan(1);
    expect(read(sequence).records.length).toBeGreaterThan(0);
  });

  it("says first what must be fixed, with kind and figures, then the cautions, the deadliest first", () => {
    const { what, remedy } = checkWords(over, system);
    for (const csv of csvs) {
      const { notes, rows } = read(csv);
      expect(rows[0]![0]).toBe("Must fix");
      const found = notes.find(({ finding }) => finding === JSON.stringify(over.finding))!;
      expect(found.note).toContain(what);
      expect(found.note).toContain(remedy);
      const cautions = notes.filter(({ row }) => row === "Caution").map(({ note }) => note!);
      expect(cautions[0]).toMatch(
        /^If the levee fails, water comes suddenly and fast, up to .* deep at "Barn"\.$/,
      );
      expect(cautions.slice(1)).toEqual(CAUTIONS.map(({ short }) => short));
    }
    for (const { properties } of geojsons.flatMap(({ features }) => features)) {
      const found = properties.must_fix.find(
        ({ finding }: { finding: unknown }) =>
          JSON.stringify(finding) === JSON.stringify(over.finding),
      );
      expect(found.what).toContain(what);
      expect(properties.must_fix_count).toBe(properties.must_fix.length);
      expect(properties.cautions[0]).toMatch(/^If the levee fails/);
      expect(properties.cautions).toEqual(
        expect.arrayContaining(CAUTIONS.map(({ short }) => short)),
      );
      expect(properties.vertical_datum).toBe("NAVD 88");
    }
  });

  it("has no word that the trade does not use, no promise and no figure of the other units", () => {
    const strings = [...csvs.flatMap((csv) => readCsv(csv).flat()), ...geojsons.flatMap(stringsIn)];
    expect(strings.length).toBeGreaterThan(500);
    for (const string of strings) {
      expect(string).not.toMatch(NEVER);
      expect(string).not.toMatch(FOREIGN[system]);
      expect(string).not.toMatch(/undefined|NaN|Infinity/);
    }
  });

  it("has rows of one width (RFC 4180, section 2.4)", () => {
    for (const csv of csvs) {
      expect(new Set(readCsv(csv).map(({ length }) => length)).size).toBe(1);
    }
  });
});

/** Features of one kind in a GeoJSON text. */
function featuresOf(text: string, what: string) {
  const { features }: FeatureCollection<Geometry & { coordinates: number[] }, Properties> =
    JSON.parse(text);
  return features.filter(({ properties }) => properties.feature === what);
}

/** Every string of a JSON value, and every name of a member. */
function stringsIn(value: unknown): string[] {
  if (typeof value === "string") return [value];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([name, each]) => [name, ...stringsIn(each)]);
}

describe("the line as GeoJSON (RFC 7946)", () => {
  it.each([
    ["counter-clockwise", alternative.corners],
    ["clockwise", [...alternative.corners].reverse()],
  ])("closes a ring drawn %s and runs it counter-clockwise (section 3.1.6)", (_, corners) => {
    const turned = { ...alternative, corners };
    const { features } = JSON.parse(geoJson(leaving("us", { alternative: turned })));
    const [outer] = features[0].geometry.coordinates;
    expect(features[0].geometry.type).toBe("Polygon");
    expect(outer).toHaveLength(5);
    expect(outer[0]).toEqual(outer[4]);
    expect(booleanClockwise(outer)).toBe(false);
  });

  it("writes a line tied in as a LineString in its own order, with its totals", () => {
    const tied = openLine([
      [-20, 0],
      [20, 5],
    ]);
    const sized = size(plan, tied, ground);
    const { features } = JSON.parse(geoJson(of(tied, sized)));
    expect(features[0].geometry.type).toBe("LineString");
    expect(features[0].geometry.coordinates[0][0]).toBeCloseTo(tied.corners[0]![0], 8);
    expect(features[0].properties.bags).toBe(sized.totals.bags);
    expect(features[0].properties.length_ft).toBeCloseTo(Math.hypot(40, 5) / FOOT_M, 0);
  });

  it("says on line and stakes that the totals are not complete", () => {
    const whole = JSON.parse(geoJson(leaving("us"))).features;
    for (const { properties } of whole) {
      expect(properties).toMatchObject({ complete: false });
    }
    const low = planWith(100.5);
    const level = size(
      low,
      alternative,
      groundOf(() => 100),
    );
    const sound = JSON.parse(geoJson(of(alternative, level, low))).features[0].properties;
    expect(sound).toMatchObject({ complete: true, bags: level.totals.bags });
    const none = size(
      plan,
      alternative,
      groundOf(() => Number.NaN),
    );
    const { properties } = JSON.parse(geoJson(of(alternative, none))).features[0];
    const counts = ["bags", "bags_to_order", "levee_cu_yd", "sand_cu_yd", "greatest_height_ft"];
    for (const name of [...counts, "line_over_height_limit_ft"]) {
      expect(properties[name], name).toBeNull();
    }
    expect(properties.must_fix_count).toBeGreaterThan(0);
  });

  it("sets a stake at every station with the figures of the CSV file, null without elevation data", async () => {
    const features = featuresOf(geoJson(leaving("metric")), "stake");
    const { records } = read(await csvOf(leaving("metric")));
    expect(features).toHaveLength(line.stations.length);
    for (const [i, station] of line.stations.entries()) {
      const { geometry, properties } = features[i]!;
      expect(geometry.type).toBe("Point");
      expect(geometry.coordinates[0]).toBeCloseTo(station.lon, 8);
      expect(geometry.coordinates[1]).toBeCloseTo(station.lat, 8);
      expect(properties.ground_m === null).toBe(station.groundM === null);
      expect(properties.top_of_levee_m).toBe(Number(records[i]!.top_of_levee_m));
      expect(properties.station).toBe(records[i]!.station);
    }
  });
});

describe("half widths, the height limit and what is not known", () => {
  const slope = groundOf((x, y) => (x > 10 && y > 5 ? Number.NaN : 100 + x / 20));
  const mixed = size(plan, alternative, slope);

  it("are given for every stake: the two half widths make the base, and over the limit is said", async () => {
    const { records } = read(await csvOf(leaving("metric", { line: mixed })));
    const overs = new Set<string>();
    for (const [i, station] of mixed.stations.entries()) {
      const { half_width_waterside_m: water, half_width_landside_m: land, ...record } = records[i]!;
      overs.add(record.over_height_limit!);
      const isEnd = station.isOverLimit === true && station.reason === "over";
      if (station.baseM === null) {
        expect([water, land, record.over_height_limit]).toEqual(["", "", isEnd ? "yes" : ""]);
        continue;
      }
      expect(Number(water) + Number(land)).toBeCloseTo(station.baseM, 1);
      expect(Number(record.base_width_m)).toBeCloseTo(Number(water) + Number(land), 9);
      const isOver = station.greatestHeightM! > plan.practice.limitM;
      expect(record.over_height_limit).toBe(isOver || isEnd ? "yes" : "no");
    }
    expect([...overs].sort()).toEqual(["", "no", "yes"]);
  });

  it("draw the base between the toes, over the limit apart, and the stretches without elevation data", () => {
    const text = geoJson(leaving("us", { line: mixed }));
    const bases = featuresOf(text, "base");
    expect(new Set(bases.map(({ properties }) => properties.over_height_limit)).size).toBe(2);
    expect(bases.every(({ geometry }) => geometry.type === "Polygon")).toBe(true);
    const gaps = featuresOf(text, "no elevation data");
    expect(gaps.length).toBeGreaterThan(0);
  });
});
