import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { DEFAULT_SECTION } from "../../shared/defaults.ts";
import {
  gridGround,
  groundOf,
  openLine,
  planWith,
  rectangle,
  ring,
  size,
} from "../helpers/grounds.ts";

/**
 * A rectangular ring on a plane that falls to the east, worked by hand.
 *
 * Ground z = g - s x; crest C. Legs at x = -a and x = +a run along the contour, of length 2 b: their height
 * h = C - z is constant and the ground falls across them by s. Legs at y = -b and y = +b run down the fall
 * line, of length 2 a: across them the ground is level and their height goes straight from h1 to h2.
 *
 * Down the fall line, A(h) = h (r h + w) / 2, so over a length L
 *   V = L [ r (h1² + h1 h2 + h2²) / 6 + w (h1 + h2) / 4 ].
 *
 * Along the contour, with c = w / 2 and m = (r h - w) / (2 h) run per height of the sides: the side that
 * faces down meets the ground at x_d = m (h + s c) / (1 - m s) beyond the crown edge, the one that faces up
 * at x_u = m (h - s c) / (1 + m s). The body over the crown is 2 c h; the two triangles are
 * (h + s c) x_d / 2 and (h - s c) x_u / 2.
 */
function byHand(a: number, b: number, lowH: number, highH: number, fall: number): number {
  const { baseRatio: r, crownM: w } = DEFAULT_SECTION;
  const downLeg =
    2 * a * ((r * (lowH ** 2 + lowH * highH + highH ** 2)) / 6 + (w * (lowH + highH)) / 4);
  const contourArea = (h: number) => {
    const c = w / 2;
    const m = (r * h - w) / (2 * h);
    const down = (m * (h + fall * c)) / (1 - m * fall);
    const up = (m * (h - fall * c)) / (1 + m * fall);
    return 2 * c * h + ((h + fall * c) * down) / 2 + ((h - fall * c) * up) / 2;
  };
  return 2 * downLeg + 2 * b * (contourArea(lowH) + contourArea(highH));
}

const CASES = [
  { a: 20, b: 15, fall: 0.02, middleH: 0.9 },
  { a: 30, b: 12, fall: 0.01, middleH: 1.1 },
  { a: 12, b: 40, fall: 0.05, middleH: 1.0 },
];

describe("a rectangular ring on a tilted plane, against the closed form worked by hand", () => {
  it.each(CASES)("a $a m, b $b m, fall $fall: volume within 0.1 %", ({ a, b, fall, middleH }) => {
    const waterM = 200 - FOOT_M;
    const ground = groundOf((x) => 200 - middleH - fall * x);
    const line = size(planWith(waterM), ring(rectangle(a, b)), ground);
    const expected = byHand(a, b, middleH - fall * a, middleH + fall * a, fall);
    expect(Math.abs(line.totals.volumeM3 / expected - 1)).toBeLessThan(0.001);
    expect(Math.abs(line.totals.prismoidalVolumeM3 / expected - 1)).toBeLessThan(1e-6);
  });

  it.each(CASES)("a $a m, b $b m, fall $fall: the same from a raster of 1 m cells", (each) => {
    const { a, b, fall, middleH } = each;
    const ground = gridGround(160, 1, (x) => 200 - middleH - fall * x);
    const line = size(planWith(200 - FOOT_M), ring(rectangle(a, b)), ground);
    const expected = byHand(a, b, middleH - fall * a, middleH + fall * a, fall);
    expect(Math.abs(line.totals.volumeM3 / expected - 1)).toBeLessThan(0.001);
  });

  it("heights at the corners are crest less ground, to a tenth of a millimetre", () => {
    const ground = groundOf((x) => 199 - 0.02 * x);
    const line = size(planWith(200 - FOOT_M), ring(rectangle(20, 15)), ground);
    const heights = line.cornersM.map(
      (m) => line.stations.find((station) => Math.abs(station.chainageM - m) < 1e-6)?.heightM,
    );
    for (const [i, expected] of [0.6, 1.4, 1.4, 0.6].entries()) {
      expect(heights[i]).toBeCloseTo(expected, 4);
    }
  });
});

describe("a line that runs out into rising ground", () => {
  it("ends where the ground reaches the crest, with the volume of the wedge", () => {
    const rise = 0.04;
    const crestM = 100;
    const top = 1;
    const lengthM = top / rise;
    const ground = groundOf((x) => crestM - top + rise * x);
    const line = size(
      planWith(crestM - FOOT_M),
      openLine([
        [0, 0],
        [40, 0],
      ]),
      ground,
    );
    const { baseRatio: r, crownM: w } = DEFAULT_SECTION;
    // Below h0 = w / r the sides are vertical: A = w h; above it A = h (r h + w) / 2. Integrated by hand over h.
    const h0 = w / r;
    const upper = (r * (top ** 3 - h0 ** 3)) / 6 + (w * (top ** 2 - h0 ** 2)) / 4;
    const expected = (upper + (w * h0 ** 2) / 2) / rise;
    expect(Math.abs(line.totals.volumeM3 / expected - 1)).toBeLessThan(0.001);
    expect(line.totals.builtLengthM).toBeCloseTo(lengthM, 6);
  });
});
