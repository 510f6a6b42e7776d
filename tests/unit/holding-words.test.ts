import { describe, expect, it } from "vitest";
import { DEFAULT_HOLDING, DEFAULT_TIME } from "../../shared/defaults.ts";
import { lengthBracedM } from "../../shared/holding/bracing.ts";
import { factorWords } from "../../shared/holding/factor-words.ts";
import { lineVerdict } from "../../shared/holding/line-verdict.ts";
import type { Weakest } from "../../shared/holding/types.ts";
import type { HoldingSettings } from "../../shared/plan.ts";
import { formatFlowRange } from "../../shared/units.ts";
import { stabilityCell, timeCell } from "../../shared/words/compare.ts";
import { seenWords, spanWords, stabilityWords } from "../../shared/words/holding.ts";
import { watchPlaces } from "../../src/pages/watch-places.ts";
import { levelPicture } from "../../src/worksheet/holding/holding-level.ts";
import { flat, groundOf, planWith, rectangle, ring, size, structure } from "../helpers/grounds.ts";

const GPM_M3_PER_S = 3.785411784e-3 / 60;

function sizedWith(change: Partial<HoldingSettings>) {
  const plan = planWith(100.9, { structures: [structure("House", rectangle(4, 4))] });
  const ground = groundOf((x, y) => 100 - 0.02 * Math.hypot(x - 10, y));
  return size(
    { ...plan, holding: { ...DEFAULT_HOLDING, ...change } },
    ring(rectangle(25, 20)),
    ground,
  );
}

function weakest(change: Partial<Weakest>): Weakest {
  return {
    ...{ verdict: "meets-required", chainageM: 10, waterDepthM: 1, required: 1.5, lengthShortM: 0 },
    factor: { low: 2, high: 3 },
    ...change,
  };
}

describe("ranges as people read them", () => {
  it("flows come in two figures, outward, and no finer than a tenth", () => {
    const gpm = (low: number, high: number) =>
      formatFlowRange({ low: low * GPM_M3_PER_S, high: high * GPM_M3_PER_S }, "us");
    expect(gpm(251, 518)).toBe("250 to 520 gpm");
    expect(gpm(0.318, 42.46)).toBe("0.3 to 43 gpm");
    expect(gpm(1234, 1234)).toBe("1,200 to 1,300 gpm");
    expect(gpm(200, 200)).toBe("200 gpm");
    expect(formatFlowRange({ low: 0.0158, high: 0.0327 }, "metric")).toBe("15 to 33 L/s");
  });

  it("factors are rounded down and hours too: neither promises more than there is", () => {
    expect(factorWords({ low: 1.49, high: 2.48 })).toBe("1.4 to 2.4");
    expect(factorWords({ low: 1.5, high: 1.5 })).toBe("1.5");
    expect(spanWords(0.42)).toBe("25 min");
    expect(spanWords(3.96)).toBe("3.9 h");
    expect(spanWords(71)).toBe("2 days");
    expect(spanWords(682)).toBe("over a week");
  });

  it("gradients are told by what was seen at them (NIX-11)", () => {
    expect(seenWords(["light", "medium", "heavy"])).toBe("light to heavy seepage");
    expect(seenWords(["medium", "heavy", "boils"])).toBe("medium seepage to sand boils");
    expect(seenWords([])).toBe("");
  });
});

const narrow = { section: "two-bag-wall", figures: {} };

describe("the verdict on a line", () => {
  it("is the graver of sliding and overturning, whichever factor is the smaller", () => {
    const sliding = weakest({ verdict: "doubtful", factor: { low: 1.4, high: 2.4 } });
    const overturning = weakest({ verdict: "below-required", factor: { low: 1.45, high: 1.45 } });
    const { verdict, by } = lineVerdict({ uplift: "none", sliding, overturning });
    expect([verdict, by]).toEqual(["below-required", "overturning"]);
    const even = lineVerdict({
      uplift: "none",
      sliding: weakest({ factor: { low: 3, high: 5 } }),
      overturning: weakest({ factor: { low: 2, high: 2 } }),
    });
    expect([even.verdict, even.by]).toEqual(["meets-required", "overturning"]);
  });

  it("turns from as required through in doubt to below what is required as the friction falls", () => {
    const said = [0.5, 0.12, 0.05].map((frictionLow, i) => {
      const line = sizedWith({ frictionLow, frictionHigh: [0.5, 0.5, 0.06][i]! });
      return [stabilityWords(line, line.holding!, "us", 0), stabilityCell(line, "us", 0).word];
    });
    expect(said[0]).toEqual(["calculates at 1.5 or more, at the friction assumed", "as required"]);
    expect(said[1]![0]).toMatch(/^below the 1\.5 required on \d+ ft, at low friction$/);
    expect(said[1]![1]).toBe("in doubt");
    expect(said[2]![0]).toMatch(/^below the 1\.5 required at \d\+\d\d$/);
    expect(said[2]![1]).toBe("below required");
  });

  it("does not speak of ground that is not known, nor of bracing", () => {
    const gap = size(
      planWith(100.9),
      ring(rectangle(25, 20)),
      groundOf((x) => (x > 15 ? Number.NaN : 100)),
    );
    expect(stabilityWords(gap, gap.holding!, "us", 0)).toBe(
      "calculates at 1.5 or more, at the friction assumed, where there is elevation data",
    );
    const none = size(planWith(100.9), ring(rectangle(25, 20)), flat(Number.NaN));
    expect(stabilityWords(none, none.holding!, "us", 0)).toBe("no elevation data under it");
    const braced = size(
      planWith(100.9),
      { ...ring(rectangle(25, 20)), reachSections: [{ section: "braced-wall", figures: {} }] },
      flat(100),
    );
    expect(lengthBracedM(braced)).toBeCloseTo(braced.totals.builtLengthM, 6);
    expect(stabilityWords(braced, braced.holding!, "us", 0)).toBe("bracing not calculated");
    expect(stabilityCell(braced, "us", 0).why).toContain("braced, not calculated");
  });

  it("never says as required of a wall over its height limit, whatever its weight", () => {
    const built = { ...ring(rectangle(25, 20)), reachSections: [narrow, narrow] };
    const line = size(planWith(100.3), built, flat(100));
    const { verdict, weakest: at } = lineVerdict(line.holding!.standing!);
    expect(at.factor.low).toBeGreaterThan(at.required);
    expect(verdict).toBe("doubtful");
    expect(stabilityWords(line, line.holding!, "us", 0)).toMatch(
      /^over the height limit of its levee type at \d\+\d\d$/,
    );
    expect(stabilityCell(line, "us", 0)).toMatchObject({
      word: "over a height limit",
      isBad: true,
    });
  });

  it("says what must be fixed beside what is as required", () => {
    const line = sizedWith({ frictionLow: 0.5, frictionHigh: 0.5 });
    expect(stabilityWords(line, line.holding!, "us", 2)).toMatch(/assumed, but has 2 Must fix$/);
    expect(stabilityCell(line, "us", 2).why).toMatch(/2 Must fix$/);
  });

  it("says nothing of time without a forecast", () => {
    const time = { ...DEFAULT_TIME, startAt: "2026-04-03T08:00-05:00", shifts: 2 };
    const line = size(planWith(100.3, { time }), ring(rectangle(25, 20)), flat(100));
    expect(timeCell(line, "us", 0)).toEqual({
      ...{ word: "time not known: no forecast", isBad: true },
      why: expect.stringMatching(/^the work takes \d+ to \d+ h/),
    });
  });
});

describe("the picture of the level inside", () => {
  it("rises from the sump, the wettest curve over the driest, and crosses the structure when it is wet", () => {
    const { holding } = sizedWith({ rainMPerS: 0.0254 / 3600 });
    const picture = levelPicture(holding!)!;
    const points = (path: string) =>
      [...path.matchAll(/([\d.]+) ([\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);
    const [most, least] = [points(picture.most), points(picture.least)];
    expect(most[0]).toEqual(least[0]);
    expect(most[0]![1]).toBe(picture.sumpY);
    for (const path of [most, least]) {
      for (let i = 1; i < path.length; i++) {
        expect(path[i]![1]).toBeLessThanOrEqual(path[i - 1]![1]! + 1e-9);
        expect(path[i]![0]).toBeGreaterThanOrEqual(path[i - 1]![0]!);
      }
    }
    expect(most.at(-1)![1]).toBeLessThanOrEqual(least.at(-1)![1]!);
    expect(most).toContainEqual([picture.soonestX, picture.structureY]);
  });

  it("is left out where the ground inside is not known", () => {
    const line = size(
      planWith(100.9),
      ring(rectangle(25, 20)),
      groundOf((x, y) => (Math.abs(x) < 20 && Math.abs(y) < 15 ? Number.NaN : 100)),
    );
    expect(line.holding!.inside === null || levelPicture(line.holding!) !== null).toBe(true);
    expect(levelPicture({ ...line.holding!, inside: null })).toBeNull();
  });
});

describe("the stops of a patrol", () => {
  it("name the weakest, deepest and highest places in order, each once, on the line", () => {
    const line = sizedWith({});
    const { standing, seepage } = line.holding!;
    const places = watchPlaces(line, line.holding!, null, "us");
    const near = (chainageM: number) =>
      places.find((place) => Math.abs(place.chainageM - chainageM) <= 5)!;
    expect(near(standing!.sliding.chainageM).reasons.join()).toContain("against sliding");
    expect(near(seepage.worstM!).reasons.join()).toContain("most seepage");
    expect(near(line.totals.greatestHeightAtM).reasons.join()).toContain("highest");
    const chainages = places.map((place) => place.chainageM);
    expect(chainages).toEqual([...chainages].sort((a, b) => a - b));
    for (const { at } of places) expect(at.every(Number.isFinite)).toBe(true);
  });
});
