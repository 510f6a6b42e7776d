import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { HOLE_DISPLAY_M, UNREAD_DISPLAY_M } from "../../shared/messages.ts";
import type { MapColours } from "../../src/map/colours.ts";
import { faded } from "../../src/map/colours.ts";
import { contourIntervalM, contourLabel, isIndexContour } from "../../src/map/contour-interval.ts";
import { waterRamp } from "../../src/map/ramps.ts";

const COLOURS = { water: "#2b7a8c", hole: "#b9b2a3", paper: "#f4efe6" } as MapColours;

const ABOVE_GROUND_M = 8_200;

/** Stops of the ramp as heights and opacities; an opaque colour without alpha counts 1. */
function stops(levelM: number): { heightM: number; opacity: number; hole: boolean }[] {
  const [, , , ...rest] = waterRamp(levelM, ABOVE_GROUND_M, COLOURS) as unknown as (
    | number
    | string
  )[];
  return rest.flatMap((heightM, i) => {
    if (i % 2 === 1) return [];
    const colour = String(rest[i + 1]);
    const opacity = /,\s*([\d.]+)\)$/.exec(colour)?.[1];
    const hole = colour === COLOURS.hole || colour.startsWith(faded(COLOURS.hole, 0).slice(0, 14));
    return [{ heightM: Number(heightM), opacity: opacity ? Number(opacity) : 1, hole }];
  });
}

function opacityAt(levelM: number, heightM: number): { opacity: number; hole: boolean } {
  const all = stops(levelM);
  const after = all.findIndex((stop) => stop.heightM >= heightM);
  if (after === 0) return all[0]!;
  if (after < 0) return all.at(-1)!;
  const [a, b] = [all[after - 1]!, all[after]!];
  const share = (heightM - a.heightM) / (b.heightM - a.heightM);
  return { opacity: a.opacity + (b.opacity - a.opacity) * share, hole: b.hole };
}

describe("the tint of the water", () => {
  it("is nothing above the surface, and deepens below it, at any stage", () => {
    fc.assert(
      fc.property(fc.double({ min: -400, max: 8000, noNaN: true }), (levelM) => {
        const heights = stops(levelM).map((stop) => stop.heightM);
        for (let i = 1; i < heights.length; i++) {
          expect(heights[i]! - heights[i - 1]!).toBeGreaterThan(1 / 256);
        }
        expect(opacityAt(levelM, levelM + 0.001).opacity).toBe(0);
        expect(opacityAt(levelM, levelM + 150).opacity).toBe(0);
        const depths = [0.02, 0.1, 0.5, 1, 2, 4, 9].map(
          (depthM) => opacityAt(levelM, levelM - depthM).opacity,
        );
        expect(depths[0]).toBeGreaterThan(0.25);
        expect([...depths].sort((a, b) => a - b)).toEqual(depths);
      }),
      { seed: 5 },
    );
  });

  it("never colours missing ground as water", () => {
    for (const levelM of [-400, 262, 1e9]) {
      expect(opacityAt(levelM, HOLE_DISPLAY_M)).toEqual({ opacity: 1, hole: true });
      expect(stops(levelM).map(({ heightM }) => heightM)).toContain(ABOVE_GROUND_M);
    }
  });
});

describe("ground that is not read yet", () => {
  it("is opaque paper, neither ground nor water nor missing", () => {
    for (const levelM of [-400, 262, 1e9]) {
      const last = stops(levelM).at(-1)!;
      expect(last.heightM).toBeLessThan(UNREAD_DISPLAY_M);
      expect(last).toMatchObject({ opacity: 1, hole: false });
      expect((waterRamp(levelM, ABOVE_GROUND_M, COLOURS) as unknown[]).at(-1)).toBe(COLOURS.paper);
    }
  });
});

describe("contour intervals", () => {
  it("are 1, 2 or 5 times a power of ten in the unit, and grow with the scale", () => {
    for (const system of ["us", "metric"] as const) {
      let before = 0;
      for (const metresPerPx of [0.05, 0.2, 0.7, 3, 20, 200]) {
        const intervalM = contourIntervalM({ metresPerPx, steepness: 0.02, rmseM: 0.05, system });
        const inUnit = system === "us" ? intervalM / 0.3048 : intervalM;
        const digit = inUnit / 10 ** Math.floor(Math.log10(inUnit) + 1e-9);
        expect([1, 2, 5].some((each) => Math.abs(each - digit) < 1e-6)).toBe(true);
        expect(intervalM).toBeGreaterThanOrEqual(before);
        before = intervalM;
      }
    }
  });

  it("are never finer than twice the error of the heights", () => {
    const view = { metresPerPx: 0.01, steepness: 0.001, rmseM: 0.3, system: "metric" as const };
    expect(contourIntervalM(view)).toBe(1);
    expect(contourIntervalM({ ...view, rmseM: 0.1 })).toBe(0.2);
  });

  it("are labelled with the decimals they need, every fifth one heavy", () => {
    expect(contourLabel(266.3952, 0.3048, "us")).toBe("874");
    expect(contourLabel(266.4, 0.2, "metric")).toBe("266.4");
    expect([0, 1, 5, 6].map((k) => isIndexContour(k * 0.3048, 0.3048))).toEqual([
      true,
      false,
      true,
      false,
    ]);
  });
});
