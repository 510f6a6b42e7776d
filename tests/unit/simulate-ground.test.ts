import { describe, expect, it } from "vitest";
import { layLine } from "../../shared/alignment.ts";
import { FOOT_M } from "../../shared/constants.ts";
import { cutInto, emptyCutWalk } from "../../shared/cut-walk.ts";
import type { GroundSampler } from "../../shared/ground.ts";
import { errorModel } from "../../shared/ground-uncertainty/error-model.ts";
import { fieldGround } from "../../shared/ground-uncertainty/field-ground.ts";
import { type ErrorReading, lineErrors } from "../../shared/ground-uncertainty/line-errors.ts";
import { simulateGround } from "../../shared/ground-uncertainty/simulate-ground.ts";
import { stripGround } from "../../shared/ground-uncertainty/strip-ground.ts";
import type { Alignment, Plan } from "../../shared/plan.ts";
import { readPlanFile, writePlanFile } from "../../shared/plan-file.ts";
import { withReadings } from "../../shared/survey/placed-readings.ts";
import { bagsOf, totalsOf } from "../../shared/totals.ts";
import { walkLine } from "../../shared/walk-line.ts";
import {
  flat,
  gridGround,
  groundOf,
  openLine,
  PLANE,
  planWith,
  rectangle,
  ring,
  size,
} from "../helpers/grounds.ts";
import { said } from "../helpers/said.ts";

const LINE = openLine([
  [0, 0],
  [120, 0],
]);
const RING = ring(rectangle(30, 20));
const PLAN = planWith(100.7, { ground: { rmseM: 0.1 } });
/** Falls along and across, with a ditch. */
const ROUGH = gridGround(
  200,
  1,
  (x, y) => 100 - 0.002 * x + 0.02 * y - (Math.abs(x - 70) < 2 ? 0.3 : 0),
);

function simulate(plan: Plan, alignment: Alignment, ground: GroundSampler) {
  const whole = { ...plan, alignments: [alignment] };
  return simulateGround({ plan: whole, alignment, plane: PLANE, ground });
}

function withGroundRead(readings: readonly (readonly [m: number, groundM: number])[]): Plan {
  const taken = readings.map(([chainageM, groundM]) => ({ chainageM, groundM }));
  return withReadings({ ...PLAN, alignments: [LINE] }, LINE, taken);
}

const stakes = (lengthM: number) =>
  Array.from({ length: Math.floor(lengthM / (25 * FOOT_M)) + 1 }, (_, k) => k * 25 * FOOT_M);

/** What fields are drawn from: the line, its strip and errors. */
function drawerOf(
  plan: Plan,
  alignment: Alignment,
  ground: GroundSampler,
  readings: ErrorReading[] = [],
) {
  const walked = walkLine({ plan, alignment, plane: PLANE, ground });
  const model = errorModel(plan.ground, 0.1);
  const line = layLine(alignment, PLANE);
  const errors = lineErrors({ line, model, cellM: 1, reachM: 6, readings, seed: 3 });
  const strip = stripGround(walked.samples, ground, 6);
  return { walked, errors, field: fieldGround(walked.samples, ground, strip, errors) };
}

describe("a line on many grounds", () => {
  it("is the line as sized where the elevation data has no error", () => {
    const exact = { ...PLAN, ground: { ...PLAN.ground, rmseM: 0 } };
    const { totals } = size(exact, RING, ROUGH);
    const found = simulate(exact, RING, ROUGH);
    const used = { bags: totals.bags, order: totals.bags + totals.sheetBags };
    expect(found.used).toEqual(used);
    expect([found.expected, found.oneInTwo, found.nineInTen]).toEqual([used, used, used]);
    expect(found).toMatchObject({ overLimit: 1, short: 0, surveyFirst: [] });
    expect(totals.lengthOverLimitM).toBeGreaterThan(0);
  });

  it("takes bags as sized as the ground it uses, and gives the same figures again", () => {
    const found = simulate(PLAN, RING, ROUGH);
    expect(found.used.bags).toBe(size(PLAN, RING, ROUGH).totals.bags);
    expect(simulate(PLAN, RING, ROUGH)).toEqual(found);
  });

  it("needs more for nine of ten than for half, and less than with all of the ground three RMSE lower", () => {
    const found = simulate(PLAN, RING, ROUGH);
    expect(found.nineInTen.bags).toBeGreaterThan(found.oneInTwo.bags);
    const lower = size({ ...PLAN, ground: { ...PLAN.ground, rmseM: 0.3 } }, RING, ROUGH);
    expect(found.nineInTen.bags).toBeLessThan(lower.totalsGroundLow!.bags);
  });

  it("is with an error that is the same everywhere as the whole ground shifted by its normal quantile", () => {
    const shares = { biasShare: 1, correlatedShare: 0 };
    const same = { ...PLAN, ground: { ...PLAN.ground, ...shares } };
    // The 90 % point of the normal distribution is 1.2816.
    const shifted = { ...PLAN, ground: { ...PLAN.ground, rmseM: 0.12816 } };
    const expected = size(shifted, RING, ROUGH).totalsGroundLow!.bags;
    const found = simulate(same, RING, ROUGH).nineInTen.bags;
    // Of 500 draws the 90 % point is off by sqrt(0.9 x 0.1 / 500) / 0.1755 = 0.076 RMSE (1 sd), 5 % of these bags.
    const perRmse = (expected - size(same, RING, ROUGH).totals.bags) / 1.2816;
    expect(Math.abs(found - expected)).toBeLessThan(3 * 0.076 * perRmse);
  });

  it("varies less the less far its errors are alike", () => {
    const within = (rangeM: number) => {
      const shares = { biasShare: 0, correlatedShare: 1, rangeM };
      const found = simulate({ ...PLAN, ground: { ...PLAN.ground, ...shares } }, RING, ROUGH);
      return found.nineInTen.bags - found.oneInTwo.bags;
    };
    expect(within(10)).toBeLessThan(within(100));
    expect(within(100)).toBeLessThan(within(1000));
  });

  it("counts a place over its limit as often as the ground there is low enough", () => {
    const limitM = 4 * FOOT_M;
    // Level ground that the levee stands on exactly at its limit.
    const plan = planWith(100 + limitM - FOOT_M, {
      ground: { rmseM: 0.1, biasShare: 1, correlatedShare: 0 },
    });
    const { overLimit, stations } = simulate(plan, LINE, flat(100));
    expect(Math.abs(overLimit - 0.5)).toBeLessThan(0.01);
    expect(stations.every((station) => station.overLimit === overLimit)).toBe(true);
  });
});

describe("one of the grounds", () => {
  it("is cut and counted as the ordinary sizing does with the same errors in the ground itself", () => {
    const { walked, errors, field } = drawerOf(PLAN, LINE, ROUGH);
    const cuts = emptyCutWalk(walked.samples, walked.built);
    for (let k = 0; k < 5; k++) {
      const drawn = errors.draw();
      field.set(drawn, 1);
      cutInto(cuts, walked.samples, {
        ...{ groundAt: field.at, builtAt: () => walked.built[0]!, waterSide: walked.waterSide },
        raiseAt: (sample) => field.raiseM[sample]!,
      });
      const { whole } = totalsOf(walked.samples, cuts, PLAN, walked.waterSide);
      const { bags, bagsPlaced, sheetBags } = whole;
      expect(bagsOf(walked.samples, cuts, PLAN)).toEqual({ bags, bagsPlaced, sheetBags });
      // On a straight line along x the chainage is x and the offset y: the same errors, laid out anew.
      const half = (errors.across - 1) / 2;
      const at = (x: number, k: number) => {
        const own = errors.localAt(x);
        return (
          own.fromWeight * drawn.local[own.from * errors.across + k]! +
          own.toWeight * drawn.local[own.to * errors.across + k]!
        );
      };
      const errorAt = (x: number, y: number) => {
        const along = errors.correlatedAt(x);
        const k = Math.floor(y);
        const share = y - k;
        const own =
          ((1 - share) * at(x, half + k) + share * at(x, half + k + 1)) /
          Math.hypot(1 - share, share);
        return (
          drawn.bias +
          along.fromWeight * drawn.correlated[along.from]! +
          along.toWeight * drawn.correlated[along.to]! +
          errors.localSdAt(x) * own
        );
      };
      const shaken = groundOf((x, y) => ROUGH.heightAt(x, y) + errorAt(Math.max(0, x), y));
      const { totals } = size(PLAN, LINE, shaken);
      expect(Math.abs(whole.bags / totals.bags - 1)).toBeLessThan(0.001);
      expect(whole.greatestHeightM).toBeCloseTo(totals.greatestHeightM, 2);
      expect(Math.abs(whole.bags / walked.whole.bags - 1)).toBeGreaterThan(0.001);
    }
  });

  it("has no ground where the elevation data has a hole", () => {
    const isHole = (x: number, y: number) => x > 50 && x < 58 && y > -3 && y < 4;
    const holed = groundOf((x, y) => (isHole(x, y) ? Number.NaN : 100));
    const { walked, errors, field } = drawerOf(PLAN, LINE, holed);
    const cuts = emptyCutWalk(walked.samples, walked.built);
    for (let k = 0; k < 20; k++) {
      field.set(errors.draw(), k % 2 ? 1 : -1);
      cutInto(cuts, walked.samples, {
        ...{ groundAt: field.at, builtAt: () => walked.built[0]!, waterSide: walked.waterSide },
        raiseAt: (sample) => field.raiseM[sample]!,
      });
      for (const [i, x] of walked.samples.chainageM.entries()) {
        const isIn = x > 50 && x < 58;
        expect(Number.isNaN(cuts.groundM[i]!)).toBe(isIn);
        if (isIn) expect(cuts.areaM2[i]).toBeNaN();
      }
      const { whole } = totalsOf(walked.samples, cuts, PLAN, walked.waterSide);
      expect(bagsOf(walked.samples, cuts, PLAN).bags).toBe(whole.bags);
      expect(whole.lengthNoDataM).toBeGreaterThan(7.9);
    }
  });

  it("follows ground read beside the line less, the farther away it is", () => {
    const estimates = [0, 6, 12, 1000].map((offsetM) => {
      const { errors } = drawerOf(PLAN, LINE, flat(100), [{ chainageM: 40, offsetM, errorM: 0.2 }]);
      return errors.estimateAt(40);
    });
    expect(estimates[0]).toBeGreaterThan(0.19);
    expect(estimates[1]!).toBeLessThan(estimates[0]!);
    expect(estimates[2]!).toBeLessThan(estimates[1]!);
    // Far away only the part that is the same everywhere is left: its share of the variance.
    expect(estimates[3]! / 0.2).toBeCloseTo(PLAN.ground.biasShare, 2);
  });

  it("passes through the ground that was read", () => {
    const readings = [
      { chainageM: 12.5, errorM: 0.2 },
      { chainageM: 61, errorM: -0.1 },
    ];
    const { walked, errors, field } = drawerOf(PLAN, LINE, flat(100), readings);
    const cuts = emptyCutWalk(walked.samples, walked.built);
    for (let k = 0; k < 20; k++) {
      field.set(errors.draw(), k % 2 ? 1 : -1);
      cutInto(cuts, walked.samples, {
        ...{ groundAt: field.at, builtAt: () => walked.built[0]!, waterSide: walked.waterSide },
        raiseAt: (sample) => field.raiseM[sample]!,
      });
      for (const { chainageM, errorM } of readings) {
        const i = walked.samples.chainageM.findIndex((m) => Math.abs(m - chainageM) < 1e-6);
        // Four times what the rod leaves, 3 mm.
        expect(Math.abs(cuts.groundM[i]! - 100 - errorM)).toBeLessThan(0.012);
      }
    }
  });
});

describe("ground read in the field", () => {
  const asData = stakes(120).map((m) => [m, 100] as const);

  it("narrows the bags, about as much as was foretold", () => {
    const before = simulate(PLAN, LINE, flat(100));
    const after = simulate(withGroundRead(asData), LINE, flat(100));
    const spread = ({ nineInTen, oneInTwo }: typeof before) => nineInTen.bags - oneInTwo.bags;
    expect(after.readings).toBe(asData.length);
    expect(spread(after)).toBeLessThan(0.2 * spread(before));
    expect(Math.abs(before.nineInTenSurveyed!.bags / after.nineInTen.bags - 1)).toBeLessThan(0.02);
    expect(before.surveyFirst.length).toBeGreaterThan(0);
  });

  it("that is higher than the data at a few stakes makes fewer bags likely on all of the line", () => {
    const higher = withGroundRead([
      [0, 100.15],
      [60.96, 100.15],
      [114.3, 100.15],
    ]);
    const found = simulate(higher, LINE, flat(100));
    expect(found.expected.bags).toBeLessThan(found.used.bags);
  });

  it("is not named to be leveled again", () => {
    const { surveyFirst } = simulate(withGroundRead(asData.slice(0, 8)), LINE, flat(100));
    expect(surveyFirst.length).toBeGreaterThan(0);
    for (const { chainageM } of surveyFirst) {
      expect(chainageM).toBeGreaterThan(asData[7]![0] + 1);
    }
  });
});

describe("how the error is made up, in a plan file", () => {
  it("is kept, and may not be more than all of it", () => {
    const ground = {
      ...PLAN.ground,
      biasShare: 0.6,
      correlatedShare: 0.3,
      rangeM: 50,
      correctionM: -0.2,
    };
    const written = writePlanFile({ ...PLAN, alignments: [LINE], ground });
    const read = readPlanFile(written);
    expect(read.ok && read.value.plan.ground).toMatchObject(ground);
    const more = JSON.parse(written);
    more.drystead.ground.correlatedShare = 0.5;
    const refused = readPlanFile(JSON.stringify(more));
    expect(refused.ok ? "" : said(refused.failure).message).toMatch(
      /at most 1 together; came 0.6 and 0.5/,
    );
  });
});
