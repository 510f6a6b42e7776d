import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { crossSection } from "../../shared/cross-section.ts";
import { DEFAULT_HOLDING, DEFAULT_SECTION } from "../../shared/defaults.ts";
import type { GroundSampler } from "../../shared/ground.ts";
import { factorsOf, freeBody } from "../../shared/holding/free-body.ts";
import { restingLevee } from "../../shared/holding/levee-body.ts";
import { standingAt } from "../../shared/holding/standing-at.ts";
import type { Holding } from "../../shared/holding/types.ts";
import type { Alignment, HoldingSettings, Plan } from "../../shared/plan.ts";
import { messageOf, remedyOf, withWords } from "../helpers/check-text.ts";
import {
  flat,
  groundOf,
  openLine,
  PLANE,
  planWith,
  rectangle,
  ring,
  size,
  structure,
} from "../helpers/grounds.ts";

const KG_PER_M3 = DEFAULT_HOLDING.leveeKgPerM3;
const FRICTION = { low: 0.3, high: 0.5 };
const RING = ring(rectangle(20, 15));

/** Levee as high as stated, its water one foot below the crest. */
function planAt(heightFt: number, holding: Partial<HoldingSettings> = {}, baseRatio = 3): Plan {
  const plan = planWith(100 + (heightFt - 1) * FOOT_M, {
    structures: [structure("House", rectangle(6, 5))],
    section: { baseRatio },
    practice: { raiseM: 0 },
  });
  return { ...plan, holding: { ...DEFAULT_HOLDING, ...holding } };
}

function holdingFor(plan: Plan, alignment: Alignment, ground: GroundSampler): Holding {
  return size(plan, alignment, ground).holding!;
}

const checksOf = (plan: Plan, alignment = RING, ground = flat(100)) =>
  size(plan, alignment, ground).checks.map((check) => withWords(check));

describe("a levee on ground that falls across it", () => {
  it("has its weight through the centroid of its section", () => {
    const shape = {
      crownM: 0.3,
      runWater: 1.4,
      runLand: 1.4,
      ...{ toeWaterM: 1.5, toeLandM: 2.4 },
    };
    const drops = { dropWaterM: 0.8, dropLandM: 1.2 };
    const strips = 200_000;
    let area = 0;
    let moment = 0;
    const baseM = shape.toeWaterM + shape.toeLandM;
    const topAt = (x: number) => {
      const fromCentre = shape.toeLandM - x;
      const beyond = Math.abs(fromCentre) - shape.crownM / 2;
      if (beyond <= 0) return 0;
      const toe = fromCentre > 0 ? shape.toeLandM : shape.toeWaterM;
      const drop = fromCentre > 0 ? drops.dropLandM : drops.dropWaterM;
      return (-drop * beyond) / (toe - shape.crownM / 2);
    };
    for (let k = 0; k < strips; k++) {
      const x = ((k + 0.5) / strips) * baseM;
      const ground = -drops.dropLandM + ((drops.dropLandM - drops.dropWaterM) * x) / baseM;
      const strip = ((topAt(x) - ground) * baseM) / strips;
      area += strip;
      moment += strip * x;
    }
    const { body, planeM } = restingLevee({ ...shape, ...drops, areaM2: area }, 0.5, KG_PER_M3);
    expect(planeM).toBe(0);
    expect(body.weightArmM).toBeCloseTo(moment / area, 6);
  });

  it("slides and turns more easily toward lower ground than on the level", () => {
    const body = { weightNPerM: 30_000, weightArmM: 1.8, baseM: 3.6 };
    const level = factorsOf(body, { waterDepthM: 0.9, toeDropM: 0 }, FRICTION, "triangular");
    const down = factorsOf(body, { waterDepthM: 0.9, toeDropM: 0.3 }, FRICTION, "triangular");
    expect(down.sliding.low).toBeLessThan(level.sliding.low);
    expect(down.overturning).toBeLessThan(level.overturning);
  });

  it("rests on the level of its landside toe where the ground rises toward the land", () => {
    const shape = {
      crownM: 0.3,
      runWater: 1.4,
      runLand: 1.4,
      areaM2: 2,
      ...{ toeWaterM: 3, toeLandM: 1.5 },
    };
    const resting = restingLevee({ ...shape, dropWaterM: 1.6, dropLandM: 1 }, 1.2, KG_PER_M3);
    expect(resting.planeM).toBeCloseTo(0.6, 12);
    expect(resting.load.waterDepthM).toBeCloseTo(0.6, 12);
    expect(resting.body.baseM).toBeCloseTo(0.3 + 2 * 1.4, 12);
  });

  it("is not troubled by water that does not reach it", () => {
    const body = freeBody(
      { weightNPerM: 1000, weightArmM: 1, baseM: 2 },
      { waterDepthM: 0, toeDropM: 0 },
      FRICTION,
      "full",
    );
    expect(body).toMatchObject({ overturning: Number.POSITIVE_INFINITY, thrustNPerM: 0 });
    expect(body.byUplift.full.sliding.low).toBe(Number.POSITIVE_INFINITY);
  });
});

describe("a sized line", () => {
  it("says what it stands with, at its weakest place", () => {
    const { standing } = holdingFor(planAt(4), RING, flat(100));
    const { crownM } = DEFAULT_SECTION;
    const heightM = 4 * FOOT_M;
    const weight = (heightM * (3 * heightM + crownM)) / 2;
    const thrust = (1000 * (3 * FOOT_M) ** 2) / 2;
    const uplift = (1000 * 3 * FOOT_M * 3 * heightM) / 2;
    const expected = (weight * KG_PER_M3 - uplift) / thrust;
    expect(standing!.sliding.verdict).toBe("meets-required");
    expect(standing!.sliding.factor.low).toBeCloseTo(0.3 * expected, 3);
    expect(standing!.sliding.factor.high).toBeCloseTo(0.5 * expected, 3);
    expect(standing!.sliding.waterDepthM).toBeCloseTo(3 * FOOT_M, 5);
    expect(standing!.sliding.lengthShortM).toBe(0);
  });

  it("finds the deepest water, from whichever side it is walked", () => {
    const slope = groundOf((x) => 100 + 0.02 * x);
    const forward = holdingFor(planAt(3), RING, slope);
    const corners = [...rectangle(20, 15)].reverse();
    const backward = holdingFor(planAt(3), ring(corners), slope);
    expect(forward.standing!.sliding.factor.low).toBeCloseTo(
      backward.standing!.sliding.factor.low,
      4,
    );
    const deepest = forward.profile.waterDepthM.reduce((a, b) => Math.max(a, b), 0);
    expect(forward.standing!.sliding.waterDepthM).toBeCloseTo(deepest, 1);
  });

  it("gives the section view the same free body as the walk", () => {
    const plan = planAt(3);
    const slope = groundOf((x, y) => 100 + 0.01 * x - 0.01 * y);
    const line = size(plan, RING, slope);
    const { walk, holding } = line;
    for (const at of [20, 60, 130, 250]) {
      const chainageM = walk.chainageM[at]!;
      const cross = { plan, alignment: RING, plane: PLANE, ground: slope, chainageM, marginM: 2 };
      const body = standingAt(crossSection(cross), plan)!;
      expect(body.sliding.low / holding!.profile.slidingLow[at]!).toBeCloseTo(1, 4);
      expect(body.overturning / holding!.profile.overturning[at]!).toBeCloseTo(1, 4);
    }
  });

  it("says nothing while something is dragged, nor of a line without water or ground", () => {
    expect(size(planAt(4), RING, flat(100), true).holding).toBeNull();
    expect(holdingFor(planAt(1), RING, flat(100)).standing).toBeNull();
    const nothing = holdingFor(planAt(4), RING, flat(Number.NaN));
    expect(nothing).toMatchObject({ standing: null, exit: null, creep: null, inside: null });
    expect(nothing.seepage.lengthNoDataM).toBeCloseTo(140, 3);
    expect(Number.isNaN(nothing.profile.slidingLow[5]!)).toBe(true);
  });
});

describe("checks of standing", () => {
  const found = (id: string, plan: Plan) => checksOf(plan).filter((check) => check.id === id);

  it("are silent about 3:1 with 3 ft of water", () => {
    expect(found("sliding", planAt(4))).toEqual([]);
    expect(found("overturning", planAt(4))).toEqual([]);
  });

  it("2:1 with 3 ft of water slides if friction is poor: a caution (table 6.3: 1.32 to 2.19)", () => {
    const [check, ...more] = found("sliding", planAt(4, {}, 2));
    expect(more).toEqual([]);
    expect(check).toMatchObject({ severity: "caution" });
    expect(messageOf(check)).toMatch(/3\.0 ft of water, sliding calculates at 1\.2 to 2\.\d, /);
    expect(remedyOf(check)).toContain("licensed engineer");
  });

  it("is a stop where even the best friction will not do, and with full uplift", () => {
    expect(found("sliding", planAt(4, { frictionHigh: 0.3 }, 2))).toMatchObject([
      { severity: "stop" },
    ]);
    expect(found("sliding", planAt(4, { uplift: "full" }))).toMatchObject([
      { severity: "stop", message: expect.stringContaining("The whole line") },
    ]);
    expect(found("overturning", planAt(4, { uplift: "full" }))).toMatchObject([
      { severity: "stop" },
    ]);
  });

  it("asks for what the plan asks for", () => {
    expect(found("overturning", planAt(4, { overturningFactor: 2.5 }))).toMatchObject([
      { message: expect.stringContaining("2.5 is required") },
    ]);
  });
});

describe("raise reserve", () => {
  it("says how much more the line can carry and the stage it then stands for", () => {
    const plan = planAt(2);
    const water = { ...plan.water, by: "stage" as const, gaugeZeroM: 90, stageM: 10 + FOOT_M };
    const { raise } = holdingFor({ ...plan, water }, RING, flat(100));
    expect(raise!.leastM).toBeCloseTo(1 * FOOT_M, 6);
    expect(raise!.standsForStageM).toBeCloseTo(10 + 2 * FOOT_M, 6);
    expect(raise!.standsForM).toBeCloseTo(100 + 2 * FOOT_M, 6);
    const high = holdingFor(planAt(5), RING, flat(100)).raise!;
    expect(high.leastM).toBeCloseTo(-1 * FOOT_M, 5);
    expect(high.standsForM).toBeCloseTo(100 + 4 * FOOT_M, 6);
    expect(high.standsForStageM).toBeNull();
  });
});

describe("an open line", () => {
  it("is looked at from the side of the water", () => {
    const slope = groundOf((_x, y) => 100 - 0.1 * y);
    const line = openLine([
      [-20, 0],
      [20, 0],
    ]);
    const house = (y: number) =>
      structure("House", [
        [-5, y],
        [5, y],
        [5, y + 8],
      ]);
    const plan = planAt(3);
    const above = holdingFor({ ...plan, structures: [house(-30)] }, line, slope);
    const below = holdingFor({ ...plan, structures: [house(30)] }, line, slope);
    expect(above.profile.waterDepthM[20]!).toBeGreaterThan(below.profile.waterDepthM[20]!);
    expect(above.inside).toBeNull();
    expect(above.pumping.rainM3PerS).toBeNull();
  });
});
