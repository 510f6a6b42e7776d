import fc from "fast-check";
import geodesic from "geographiclib-geodesic";
import { describe, expect, it } from "vitest";
import { layLine, placeAt, signedAreaM2 } from "../../shared/alignment.ts";
import { CUBIC_YARD_M3, FOOT_M, SURVEY_FOOT_M } from "../../shared/constants.ts";
import type { Alignment, LonLat } from "../../shared/plan.ts";
import { planPlane } from "../../shared/plan-plane.ts";
import { formatStation, parseStation, volumeIn } from "../../shared/units.ts";

const WGS84 = geodesic.Geodesic.WGS84;

function alignment(kind: "ring" | "line", corners: readonly LonLat[]): Alignment {
  return { id: "a", name: "A", kind, corners, reachBreaksM: [] };
}

const PLACES: readonly LonLat[] = [
  [-96.78, 46.88],
  [0.01, 0.002],
  [151.2, -33.87],
  [25.5, 69.9],
  [-179.9, -16.5],
];

describe("lengths on the ellipsoid, against GeographicLib", () => {
  const leg = fc.record({
    place: fc.constantFrom(...PLACES),
    azimuth: fc.double({ min: 0, max: 360, noNaN: true }),
    lengthM: fc.double({ min: 1, max: 5000, noNaN: true }),
    away: fc.double({ min: 0, max: 4000, noNaN: true }),
  });

  it("any leg up to 5 km is within 0.02 %, in fact 1 part in a million", () => {
    fc.assert(
      fc.property(leg, ({ place, azimuth, lengthM, away }) => {
        const start = WGS84.Direct(place[1], place[0], azimuth + 77, away);
        const end = WGS84.Direct(start.lat2!, start.lon2!, azimuth, lengthM);
        const corners: LonLat[] = [
          [start.lon2!, start.lat2!],
          [end.lon2!, end.lat2!],
        ];
        const line = layLine(alignment("line", corners), planPlane(place));
        expect(Math.abs(line.lengthM / lengthM - 1)).toBeLessThan(1e-6);
      }),
      { seed: 11, numRuns: 400 },
    );
  });

  it("chainage along a ring is the geodesics' lengths added up", () => {
    for (const place of PLACES) {
      const corners = [20, 110, 200, 290].map((azimuth, i): LonLat => {
        const corner = WGS84.Direct(place[1], place[0], azimuth, 60 + 25 * i);
        return [corner.lon2!, corner.lat2!];
      });
      const line = layLine(alignment("ring", corners), planPlane(place));
      let chainageM = 0;
      corners.forEach(([lon, lat], i) => {
        expect(Math.abs(line.chainageM[i]! - chainageM)).toBeLessThan(1e-4);
        const [nextLon, nextLat] = corners[(i + 1) % corners.length]!;
        chainageM += WGS84.Inverse(lat, lon, nextLat, nextLon).s12!;
      });
      expect(Math.abs(line.lengthM - chainageM)).toBeLessThan(1e-4);
    }
  });

  it("a place at a chainage is where the geodesic is, to the millimetre on a 1 km leg", () => {
    const place = PLACES[0]!;
    const plane = planPlane(place);
    const end = WGS84.Direct(place[1], place[0], 63, 1000);
    const line = layLine(alignment("line", [place, [end.lon2!, end.lat2!]]), plane);
    for (const chainageM of [0, 123.4, 500, 999]) {
      const { xM, yM } = placeAt(line, chainageM);
      const [lon, lat] = plane.toLonLat(xM, yM);
      const on = WGS84.Direct(place[1], place[0], 63, chainageM);
      expect(WGS84.Inverse(lat, lon, on.lat2!, on.lon2!).s12!).toBeLessThan(0.001);
    }
  });

  it("areas of rings are the ellipsoid's to 1 part in 100,000", () => {
    for (const place of PLACES) {
      for (const radiusM of [30, 400, 2500]) {
        const corners = [5, 80, 160, 230, 300].map((azimuth): LonLat => {
          const corner = WGS84.Direct(place[1], place[0], azimuth, radiusM);
          return [corner.lon2!, corner.lat2!];
        });
        const polygon = WGS84.Polygon(false);
        for (const [lon, lat] of corners) polygon.AddPoint(lat, lon);
        const expected = Math.abs(polygon.Compute(false, true).area!);
        const line = layLine(alignment("ring", corners), planPlane(place));
        expect(Math.abs(Math.abs(signedAreaM2(line)) / expected - 1)).toBeLessThan(1e-5);
      }
    }
  });
});

describe("stations (MAHUN)", () => {
  const feet = (text: string) => {
    const read = parseStation(text, "us");
    return read.ok ? read.value / FOOT_M : Number.NaN;
  };

  it("V5: 8+35.67 is 835.67 ft, and 12+50 is 1,250 ft", () => {
    expect(feet("8+35.67")).toBeCloseTo(835.67, 9);
    expect(feet("12+50")).toBeCloseTo(1250, 9);
    expect(formatStation(835.67 * FOOT_M, "us", 2)).toBe("8+35.67");
    expect(formatStation(1250 * FOOT_M, "us")).toBe("12+50");
  });

  it("V6: 12+38.28 to 16+56.85 is 418.57 ft", () => {
    expect(feet("16+56.85") - feet("12+38.28")).toBeCloseTo(418.57, 9);
  });

  it("a metric station 1+256.02 is 1,256.02 m; 3.2 miles end at 168+96", () => {
    const read = parseStation("1+256.02", "metric");
    expect(read.ok && read.value).toBeCloseTo(1256.02, 9);
    expect(formatStation(1256.02, "metric", 2)).toBe("1+256.02");
    expect(formatStation(3.2 * 5280 * FOOT_M, "us")).toBe("168+96");
  });
});

describe("feet (NGS, 85 FR 62698)", () => {
  it("U1: 304,800 m are 1,000,000.000 ft and 999,998.000 survey ft", () => {
    expect(304_800 / FOOT_M).toBeCloseTo(1_000_000, 3);
    expect(304_800 / SURVEY_FOOT_M).toBeCloseTo(999_998, 3);
  });

  it("U2: a survey mile is 0.01056 ft longer", () => {
    expect((5280 * (SURVEY_FOOT_M - FOOT_M)) / FOOT_M).toBeCloseTo(0.01056, 5);
  });

  it("a cubic yard is 27 cubic feet, and 2,270.4 of them are V4's volume", () => {
    expect(volumeIn(CUBIC_YARD_M3, "us")).toBe(1);
    expect(volumeIn(61_300 * FOOT_M ** 3, "us")).toBeCloseTo(2270.4, 1);
  });
});
