import { describe, expect, it } from "vitest";
import type { Alignment } from "../../shared/plan.ts";
import type { Check } from "../../shared/sizing-types.ts";
import {
  type Corner,
  flat,
  groundOf,
  openLine,
  planWith,
  rectangle,
  ring,
  size,
} from "../helpers/grounds.ts";

const PLAN = planWith(100);

function found(id: string, alignment: Alignment, cellM = 1): Check[] {
  return size(PLAN, alignment, flat(100, cellM), true).checks.filter((check) => check.id === id);
}

/** A pentagon whose fourth corner dips to `dipM` above the middle of its first side. */
const dipping = (dipM: number): Corner[] => [
  [-20, -15],
  [20, -15],
  [20, 15],
  [0, -15 + dipM],
  [-20, 15],
];

/** Corners as a file with a given number of decimals of a degree holds them. */
function rounded(alignment: Alignment, decimals: number): Alignment {
  const at = (degrees: number) => Number(degrees.toFixed(decimals));
  return { ...alignment, corners: alignment.corners.map(([lon, lat]) => [at(lon), at(lat)]) };
}

describe("a corner that is meant to lie on another leg", () => {
  it.each([7, 8, 9])("touches it with %i decimals of a degree in the file", (decimals) => {
    const [first, ...others] = found("crosses-itself", rounded(ring(dipping(0)), decimals));
    expect(first).toMatchObject({ severity: "stop", at: expect.anything() });
    expect(first!.fromM).toBeCloseTo(20, 0);
    expect(others.length).toBeLessThanOrEqual(1);
  });

  it("touches within a hand's breadth, and from there on does not", () => {
    expect(found("crosses-itself", ring(dipping(0.05)))).not.toEqual([]);
    expect(found("crosses-itself", ring(dipping(0.15)))).toEqual([]);
  });

  it("is found on an open line that nearly comes back to its start", () => {
    const back: Corner[] = [...rectangle(20, 15), [-20, -14.95]];
    expect(found("crosses-itself", openLine(back))).toMatchObject([{ fromM: 0 }]);
  });

  it("is not said of bends with many close corners", () => {
    const round = Array.from({ length: 2000 }, (_, i): Corner => {
      const angle = (2 * Math.PI * i) / 2000;
      return [12 * Math.cos(angle), 12 * Math.sin(angle)];
    });
    expect(found("crosses-itself", ring(round))).toEqual([]);
    const notch: Corner[] = [...rectangle(20, 15).slice(0, 2), [20, 0], [20.04, 0.03], [20, 0.06]];
    expect(found("crosses-itself", ring([...notch, ...rectangle(20, 15).slice(2)]))).toEqual([]);
  });
});

describe("a height over the limit where ground is missing beside the line", () => {
  const narrow = groundOf((x, y) => (Math.abs(Math.hypot(x, y) - 20) < 3 ? 100 : Number.NaN));
  const round = Array.from({ length: 40 }, (_, i): Corner => {
    const angle = (2 * Math.PI * i) / 40;
    return [20 * Math.cos(angle), 20 * Math.sin(angle)];
  });
  const idsAt = (waterM: number) =>
    size(planWith(waterM), ring(round), narrow, true).checks.map((check) => check.id);

  it("is a stop beside the missing ground: water in feet taken for metres must not pass as a hole", () => {
    expect(idsAt(328)).toEqual(expect.arrayContaining(["no-ground", "over-limit"]));
  });

  it("is not said below the limit", () => {
    expect(idsAt(100.6)).not.toContain("over-limit");
  });
});

describe("a raster of 3 m", () => {
  it("stays within the rule where its projection makes a cell a little longer on the ground", () => {
    expect(found("coarse-raster", ring(rectangle(20, 15)), 3 / 0.9996)).toEqual([]);
    expect(found("coarse-raster", ring(rectangle(20, 15)), 3.05)).toHaveLength(1);
  });
});
