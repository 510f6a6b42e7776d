import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Fix, placeOnLine } from "../../shared/field/place-on-line.ts";
import { feetAndInchesUp, heightUp } from "../../shared/field/rounded-up.ts";
import {
  alongM,
  type Staked,
  stakeBeside,
  stakeNear,
  stretchesOfStakes,
} from "../../shared/field/stakes.ts";
import { moved, type Place } from "../../shared/line-shapes/offset.ts";
import type { Station, Walk } from "../../shared/sizing-types.ts";
import { heightUpWords, stakeOnMapWords } from "../../shared/words/height-up.ts";

const FOOT_M = 0.3048;
const ORIGIN: Place = [-97.2, 46.8];

/** A walk through corners given in metres east and north of the origin, a sample a metre. */
function walkThrough(corners: readonly (readonly [number, number])[]): Walk {
  const lonLat: number[] = [];
  const chainageM: number[] = [];
  let sumM = 0;
  for (const [k, [east, north]] of corners.entries()) {
    const from = corners[k - 1];
    const lengthM = from ? Math.hypot(east - from[0], north - from[1]) : 0;
    const steps = from ? Math.max(1, Math.round(lengthM)) : 1;
    for (let i = from ? 1 : 0; i <= (from ? steps : 0); i++) {
      const share = i / steps;
      const [x, y] = from
        ? [from[0] + (east - from[0]) * share, from[1] + (north - from[1]) * share]
        : [east, north];
      lonLat.push(...moved(ORIGIN, x, y));
      chainageM.push(sumM + lengthM * share);
    }
    sumM += lengthM;
  }
  return {
    chainageM: Float64Array.from(chainageM),
    lonLat: Float64Array.from(lonLat),
  } as unknown as Walk;
}

function stakedEvery(stepM: number, lengthM: number, isRing: boolean): Staked {
  const stakes: Station[] = [];
  for (let chainageM = 0; chainageM < lengthM - 1e-9; chainageM += stepM) {
    stakes.push({ chainageM } as Station);
  }
  if (!isRing) stakes.push({ chainageM: lengthM } as Station);
  return { isRing, lengthM, stakes };
}

const at = (eastM: number, northM: number, accuracyM: number): Fix => ({
  at: moved(ORIGIN, eastM, northM),
  accuracyM,
});

/** 100 m east, 60 m north, and 100 m back: the ends are 60 m apart. */
const BENT = walkThrough([
  [0, 0],
  [100, 0],
  [100, 60],
  [0, 60],
]);
const BENT_STAKES = stakedEvery(10, 260, false);

describe("the place on a line from a fix", () => {
  it("is the nearest chainage, how far off, and the nearest stake", () => {
    const place = placeOnLine(BENT, BENT_STAKES, at(43, -4, 5))!;
    expect(place.chainageM).toBeCloseTo(43, 1);
    expect(place.awayM).toBeCloseTo(4, 1);
    expect(BENT_STAKES.stakes[place.stake]!.chainageM).toBe(40);
    expect(place).toMatchObject({ isPoor: false, isOff: false, alsoM: null, accuracyM: 5 });
  });

  it("says where the fix is too poor to tell one stake from the next", () => {
    const isPoor = (everyM: number, accuracyM: number) =>
      placeOnLine(BENT, stakedEvery(everyM, 260, false), at(43, 0, accuracyM))!.isPoor;
    expect([isPoor(10, 10), isPoor(10, 10.1)]).toEqual([false, true]);
    expect([isPoor(1.2, 5), isPoor(1.2, 5.1)]).toEqual([false, true]);
    expect([isPoor(50, 15), isPoor(50, 15.1)]).toEqual([false, true]);
  });

  it("says where one is not at the line", () => {
    expect(placeOnLine(BENT, BENT_STAKES, at(43, -34, 5))!.isOff).toBe(false);
    expect(placeOnLine(BENT, BENT_STAKES, at(43, -36, 5))!.isOff).toBe(true);
  });

  it("names the other stretch where the line passes twice within the accuracy", () => {
    const between = placeOnLine(BENT, BENT_STAKES, at(20, 28, 8))!;
    expect(between.chainageM).toBeCloseTo(20, 1);
    expect(between.alsoM).toBeCloseTo(240, 0);
    expect(placeOnLine(BENT, BENT_STAKES, at(20, 20, 8))!.alsoM).toBeNull();
  });

  it("is none for what is no place", () => {
    expect(placeOnLine(BENT, BENT_STAKES, { at: [Number.NaN, 46.8], accuracyM: 5 })).toBeNull();
    expect(placeOnLine(BENT, BENT_STAKES, at(0, 0, -1))).toBeNull();
    expect(placeOnLine(walkThrough([]), BENT_STAKES, at(0, 0, 5))).toBeNull();
  });
});

describe("stakes along a line", () => {
  const ring = stakedEvery(25, 110, true);
  const line = stakedEvery(25, 100, false);

  it("follow each other over the closing point of a ring, and end at the end of a line", () => {
    expect(stakeBeside(ring, 4, 1)).toBe(0);
    expect(stakeBeside(ring, 0, -1)).toBe(4);
    expect(stakeBeside(line, 4, 1)).toBeNull();
    expect(stakeBeside(line, 0, -1)).toBeNull();
  });

  it("have stretches that cover the whole line once", () => {
    for (const staked of [ring, line]) {
      const stretches = stretchesOfStakes(staked);
      expect(stretches[0]!.fromM).toBe(0);
      expect(stretches.at(-1)!.toM).toBe(staked.lengthM);
      for (let k = 1; k < stretches.length; k++) {
        expect(stretches[k]!.fromM).toBe(stretches[k - 1]!.toM);
      }
    }
  });

  it("are near over the closing point too", () => {
    expect(stakeNear(ring, 109)).toBe(0);
    expect(stakeNear(ring, 101)).toBe(4);
    expect(stakeNear(line, 99)).toBe(4);
  });

  it("are the shorter way ahead or back on a ring", () => {
    expect(alongM(ring, 100, 5)).toBeCloseTo(15, 9);
    expect(alongM(ring, 5, 100)).toBeCloseTo(-15, 9);
    expect(alongM(line, 100, 5)).toBe(-95);
  });
});

describe("a height for the crew", () => {
  it("is rounded up to the tenth of a foot, to the inch, to the centimetre", () => {
    expect(heightUp(4.35 * FOOT_M, "us")).toBe(4.4);
    expect(feetAndInchesUp(4.35 * FOOT_M)).toEqual({ feet: 4, inches: 5 });
    expect(heightUp(1.321, "metric")).toBe(1.33);
  });

  it("is the same on the map as at the stake", () => {
    const at = { chainageM: 0, heightM: 0.4, greatestHeightM: 1.42 * FOOT_M };
    expect(stakeOnMapWords(at, "us")).toBe(`0+00: ${heightUpWords(at.greatestHeightM, "us")}`);
    expect(stakeOnMapWords(at, "us")).toBe("0+00: 1.5 ft");
    expect(stakeOnMapWords({ ...at, greatestHeightM: null }, "us")).toMatch(/no elevation data/);
  });

  it("stays where it is already a round figure", () => {
    expect(heightUp(2.2 * FOOT_M, "us")).toBe(2.2);
    expect(feetAndInchesUp(3 * FOOT_M)).toEqual({ feet: 3, inches: 0 });
    expect(heightUp(0.67, "metric")).toBe(0.67);
  });

  it("is never lower than the levee, and by less than a step higher", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 6, noNaN: true }), (m) => {
        const feet = m / FOOT_M;
        const { feet: whole, inches } = feetAndInchesUp(m);
        const overTenth = heightUp(m, "us") - feet;
        const overInch = whole + inches / 12 - feet;
        expect(overTenth).toBeGreaterThan(-1e-6);
        expect(overTenth).toBeLessThan(0.1);
        expect(overInch).toBeGreaterThan(-1e-6);
        expect(overInch).toBeLessThan(1 / 12);
        expect(inches).toBeLessThan(12);
      }),
    );
  });
});
