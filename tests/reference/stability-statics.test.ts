import { describe, expect, it } from "vitest";
import { FOOT_M, POUND_KG, STATICS_GRAVITY } from "../../shared/constants.ts";
import { DEFAULT_HOLDING, DEFAULT_SECTION } from "../../shared/defaults.ts";
import { factorsOf, freeBody, thrustNPerM } from "../../shared/holding/free-body.ts";
import { restingLevee } from "../../shared/holding/levee-body.ts";
import { verdictOf } from "../../shared/holding/weakest.ts";
import { sideSlope } from "../../shared/section.ts";
import { formatLineForce } from "../../shared/units.ts";

const POUND_N = POUND_KG * 9.80665;
const LB_PER_FT = POUND_N / FOOT_M;
const KG_PER_M3 = DEFAULT_HOLDING.leveeKgPerM3;
const FRICTION = { low: DEFAULT_HOLDING.frictionLow, high: DEFAULT_HOLDING.frictionHigh };

/** A trapezoid on level ground, feet: height, base, crown. */
function levelLevee(heightFt: number, baseFt: number, crownFt: number, waterFt: number) {
  const [heightM, baseM, crownM] = [heightFt * FOOT_M, baseFt * FOOT_M, crownFt * FOOT_M];
  const shape = {
    crownM,
    areaM2: (heightM * (baseM + crownM)) / 2,
    runWater: (baseM - crownM) / (2 * heightM),
    runLand: (baseM - crownM) / (2 * heightM),
    ...{ toeWaterM: baseM / 2, toeLandM: baseM / 2, dropWaterM: heightM, dropLandM: heightM },
  };
  const { body, load } = restingLevee(shape, waterFt * FOOT_M, KG_PER_M3);
  return freeBody(body, load, FRICTION, "triangular");
}

/** A section with upright faces: a wall so many bags wide. */
const wallBody = (heightM: number, widthM: number, kgPerM3: number) => ({
  weightNPerM: heightM * widthM * kgPerM3 * STATICS_GRAVITY,
  weightArmM: widthM / 2,
  baseM: widthM,
});

const within = (value: number, expected: number, share = 0.005) =>
  expect(Math.abs(value / expected - 1)).toBeLessThan(share);

describe("thrust of water (handbook W1, W2: NDSU text quoted by WAFB; derived)", () => {
  it("W1: 5 ft of water: 312 psf at the foot, 780 lb/ft, 1,300 ft-lb/ft", () => {
    const body = levelLevee(5, 15, 0.75, 5);
    within(body.footPressurePa / (POUND_N / FOOT_M ** 2), 312);
    within(body.thrustNPerM / LB_PER_FT, 780);
    within((body.thrustNPerM * body.thrustArmM) / POUND_N, 1300);
  });

  it("W2: 1.0 m of water: 4.905 kN/m, 1.635 kN m/m", () => {
    expect(thrustNPerM(1)).toBeCloseTo(4905, 6);
    expect(thrustNPerM(1) / 3).toBeCloseTo(1635, 6);
    expect(formatLineForce(thrustNPerM(1), "metric")).toBe("4.9 kN/m");
  });
});

/** Handbook table 6.3 (derived): W = section x 110 pcf, no help from toe, trench or water on the face. */
const TABLE = [
  {
    of: [4, 12, 1, 3],
    weight: 2860,
    thrust: 280.8,
    dry: [3.06, 5.09],
    wet: [1.86, 3.09],
    over: 1.85,
  },
  {
    of: [4, 8, 1, 3],
    weight: 1980,
    thrust: 280.8,
    dry: [2.12, 3.53],
    wet: [1.32, 2.19],
    over: 1.85,
  },
  {
    of: [3, 9, 1, 2],
    weight: 1650,
    thrust: 124.8,
    dry: [3.97, 6.61],
    wet: [2.62, 4.36],
    over: 2.15,
  },
] as const;

describe("pyramids (handbook table 6.3 and W3)", () => {
  it.each(TABLE)("$of ft: $weight lb/ft", ({ of: [height, base, crown, water], ...row }) => {
    const body = levelLevee(height, base, crown, water);
    within(body.weightNPerM / LB_PER_FT, row.weight);
    within(body.thrustNPerM / LB_PER_FT, row.thrust);
    within(body.byUplift.none.sliding.low, row.dry[0]);
    within(body.byUplift.none.sliding.high, row.dry[1]);
    within(body.sliding.low, row.wet[0]);
    within(body.sliding.high, row.wet[1]);
    within(body.overturning, row.over);
    expect(body.byUplift.full.sliding.low).toBeLessThan(row.wet[0]);
    expect(body.byUplift.full.overturning).toBeLessThan(row.over);
  });
});

describe("what stands against 3 ft of water and what does not", () => {
  it("the 3:1 pyramid stands, with friction anywhere in its range", () => {
    const heightM = 4 * FOOT_M;
    const { baseRatio, crownM } = DEFAULT_SECTION;
    const body = levelLevee(4, baseRatio * 4, crownM / FOOT_M, 3);
    expect(sideSlope(DEFAULT_SECTION, heightM)).toBeCloseTo(1.40625, 9);
    expect(verdictOf(body.sliding, 1.5)).toBe("meets-required");
    expect(body.overturning).toBeGreaterThan(1.5);
  });

  it.each([3, 4])(
    "a wall two bags wide, %s ft high, cannot, even at the best friction",
    (height) => {
      const wall = wallBody(height * FOOT_M, 2 * DEFAULT_SECTION.bag.placedWidthM, KG_PER_M3);
      const load = { waterDepthM: 3 * FOOT_M, toeDropM: 0 };
      const { sliding } = factorsOf(wall, load, FRICTION, "triangular");
      expect(verdictOf(sliding, 1.5)).toBe("below-required");
    },
  );

  it("the same wall stands against half a foot", () => {
    const wall = wallBody(1.5 * FOOT_M, 2 * DEFAULT_SECTION.bag.placedWidthM, KG_PER_M3);
    const load = { waterDepthM: 0.5 * FOOT_M, toeDropM: 0 };
    const { sliding, overturning } = factorsOf(wall, load, FRICTION, "triangular");
    expect(verdictOf(sliding, 1.5)).toBe("meets-required");
    expect(overturning).toBeGreaterThan(1.5);
  });
});
