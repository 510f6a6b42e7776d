import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Totals } from "../../shared/sizing-types.ts";
import { type Corner, flat, groundOf, planWith, ring, size } from "../helpers/grounds.ts";

const RUNS = { seed: 20, numRuns: 40 };

/** A ring that does not cross itself: corners by angle round the middle. */
const star = fc
  .array(
    fc.record({ radius: fc.integer({ min: 15, max: 40 }), turn: fc.integer({ min: 0, max: 8 }) }),
    {
      minLength: 3,
      maxLength: 8,
    },
  )
  .map((spokes) =>
    spokes.map(({ radius, turn }, i): Corner => {
      const angle = ((i + turn / 10) / spokes.length) * 2 * Math.PI;
      return [radius * Math.cos(angle), radius * Math.sin(angle)];
    }),
  );

/** Rolling ground with a ditch, by a few numbers. */
const rolling = fc
  .record({
    wave: fc.integer({ min: 3, max: 20 }),
    swing: fc.integer({ min: 0, max: 9 }),
    tilt: fc.integer({ min: -30, max: 30 }),
    ditch: fc.integer({ min: -30, max: 30 }),
  })
  .map(({ wave, swing, tilt, ditch }) =>
    groundOf(
      (x, y) =>
        100 +
        (swing / 10) * Math.sin(x / wave) * Math.cos(y / (wave + 2)) +
        (tilt / 1000) * (x + y) -
        (Math.abs(x - ditch) < 1.2 ? 0.5 : 0),
    ),
  );

function expectClose(found: Totals, expected: Totals, relative: number): void {
  const keys = [
    "lengthM",
    "builtLengthM",
    "volumeM3",
    "prismoidalVolumeM3",
    "sandM3",
    "sheetM2",
  ] as const;
  for (const key of [...keys, "greatestHeightM", "lengthOverLimitM", "lengthOver3FtM"] as const) {
    const slack = relative * Math.max(1, Math.abs(expected[key]));
    expect(Math.abs(found[key] - expected[key]), key).toBeLessThanOrEqual(slack);
  }
  expect(Math.abs(found.bags - expected.bags)).toBeLessThanOrEqual(1);
}

describe("properties of sizing", () => {
  it("moving the whole ring on flat ground changes nothing", () => {
    const shift = fc.integer({ min: -800, max: 800 });
    fc.assert(
      fc.property(star, shift, shift, (corners, east, north) => {
        const moved = corners.map(([x, y]): Corner => [x + east, y + north]);
        const plan = planWith(100.6);
        const here = size(plan, ring(corners), flat(100), true).totals;
        expectClose(size(plan, ring(moved), flat(100), true).totals, here, 1e-8);
      }),
      RUNS,
    );
  });

  it("raising the stage never lowers a height, an area or a volume", () => {
    const rise = fc.integer({ min: 1, max: 60 }).map((n) => n / 50);
    fc.assert(
      fc.property(star, rolling, rise, (corners, ground, riseM) => {
        const low = size(planWith(100.2), ring(corners), ground, true);
        const high = size(planWith(100.2 + riseM), ring(corners), ground, true);
        const leastRise = (key: "heightM" | "greatestHeightM" | "areaM2") =>
          low.walk[key].reduce((least, m, i) => Math.min(least, high.walk[key][i]! - m), Infinity);
        expect(leastRise("heightM")).toBeGreaterThanOrEqual(0);
        expect(leastRise("greatestHeightM")).toBeGreaterThanOrEqual(0);
        expect(leastRise("areaM2")).toBeGreaterThanOrEqual(-1e-9);
        expect(high.totals.volumeM3).toBeGreaterThanOrEqual(low.totals.volumeM3);
        expect(high.totals.bags).toBeGreaterThanOrEqual(low.totals.bags);
        expect(high.totals.lengthOverLimitM).toBeGreaterThanOrEqual(
          low.totals.lengthOverLimitM - 1e-9,
        );
      }),
      RUNS,
    );
  });

  it("reversing or rotating the order of corners changes no total", () => {
    fc.assert(
      fc.property(star, rolling, fc.nat(7), (corners, ground, turn) => {
        const plan = planWith(100.5);
        const { totals } = size(plan, ring(corners), ground, true);
        const start = turn % corners.length;
        const rotated = [...corners.slice(start), ...corners.slice(0, start)];
        expectClose(size(plan, ring(rotated), ground, true).totals, totals, 1e-6);
        expectClose(size(plan, ring([...corners].reverse()), ground, true).totals, totals, 1e-6);
      }),
      RUNS,
    );
  });

  it("totals of reaches add up to the whole, counts ordered included", () => {
    const breaks = fc.array(
      fc.integer({ min: 1, max: 900 }).map((n) => n / 10),
      { maxLength: 5 },
    );
    fc.assert(
      fc.property(star, rolling, breaks, (corners, ground, breaksM) => {
        const { totals, reaches } = size(planWith(100.5), ring(corners, breaksM), ground, true);
        const sum = (pick: (each: Totals) => number) =>
          reaches.reduce((total, reach) => total + pick(reach.totals), 0);
        expect(sum((each) => each.lengthM)).toBeCloseTo(totals.lengthM, 6);
        expect(sum((each) => each.volumeM3)).toBeCloseTo(totals.volumeM3, 6);
        expect(sum((each) => each.sandM3)).toBeCloseTo(totals.sandM3, 6);
        expect(sum((each) => each.sheetM2)).toBeCloseTo(totals.sheetM2, 6);
        expect(sum((each) => each.lengthOverLimitM)).toBeCloseTo(totals.lengthOverLimitM, 6);
        for (const key of ["bags", "bagsPlaced", "sheetBags", "sheetRolls", "trucks"] as const) {
          expect(
            sum((each) => each[key]),
            key,
          ).toBe(totals[key]);
        }
        expect(Math.max(...reaches.map((reach) => reach.totals.greatestHeightM))).toBe(
          totals.greatestHeightM,
        );
        expect(reaches[0]!.fromM).toBe(0);
        expect(reaches.at(-1)!.toM).toBeCloseTo(totals.lengthM, 9);
        expect(reaches.slice(1).map((reach) => reach.fromM)).toEqual(
          reaches.slice(0, -1).map((reach) => reach.toM),
        );
      }),
      RUNS,
    );
  });

  it("cutting the line into reaches changes no total by more than the step does", () => {
    fc.assert(
      fc.property(star, rolling, (corners, ground) => {
        const plain = size(planWith(100.5), ring(corners), ground, true).totals;
        const cut = size(planWith(100.5), ring(corners, [7.7, 31.4]), ground, true).totals;
        expect(Math.abs(cut.volumeM3 - plain.volumeM3)).toBeLessThanOrEqual(
          0.02 * plain.volumeM3 + 0.02,
        );
      }),
      RUNS,
    );
  });
});
