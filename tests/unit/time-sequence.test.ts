import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import type { LineSamples } from "../../shared/line-samples.ts";
import { bestCuts } from "../../shared/time/best-cuts.ts";
import { buildSequence } from "../../shared/time/build-sequence.ts";
import { begunAt, doneAt } from "../../shared/time/crew-pace.ts";
import { type CrewStep, crewSteps, MOVE_H, WALK_M_PER_S } from "../../shared/time/crew-steps.ts";
import type { Part } from "../../shared/time/divider.ts";
import { evenGroups } from "../../shared/time/even-stretches.ts";
import { peopleAtLeast } from "../../shared/time/people-at-least.ts";
import { sequencer } from "../../shared/time/sequencer.ts";
import type { LiftedStretch } from "../../shared/time/stretches.ts";
import { towards } from "../../shared/time/toward.ts";

const LIFT_M = FOOT_M;
const CREST_M = FOOT_M;

/** A stretch of ten meters from its number, so many lifts high with the same bags each. */
function stretchAt(
  k: number,
  lowestM: number,
  bagsALift: number,
  changes: Partial<LiftedStretch> = {},
): LiftedStretch {
  const count = Math.max(1, Math.ceil((CREST_M - lowestM) / LIFT_M - 1e-6));
  const lifts = Array.from({ length: count }, (_, i) => ({
    topM: CREST_M - (count - 1 - i) * LIFT_M,
    bags: bagsALift,
  }));
  return {
    ...{ fromM: 10 * k, toM: 10 * (k + 1), lowestM, crestM: CREST_M, lowestSample: k, lifts },
    ...{ isOnHold: false, isOfBags: true, ...changes },
  };
}

const lineOf = (stretches: readonly LiftedStretch[], crews: number, closed: boolean) => ({
  ...{ stretches, crews, closed, liftM: LIFT_M, marginM: FOOT_M, lengthM: 10 * stretches.length },
});
/** The steps of a crew that has these stretches, with its ground in at most so many groups. */
function stepsAlone(
  stretches: readonly LiftedStretch[],
  part: readonly number[],
  closed: boolean,
  mostGroups: number,
): CrewStep[] {
  const groups = evenGroups(stretches, mostGroups, LIFT_M, closed);
  return crewSteps({ ...lineOf(stretches, 2, closed), groups }, part[0]!, part.length);
}

const always = (workedH: number) => workedH;
/** Water 1 ft below the design water after 10 h, at it after 20 h: a foot in ten hours. */
const RIVER = {
  passesH: (levelM: number) => (levelM < 0.5 ? 20 + (10 * levelM) / FOOT_M : Infinity),
  endH: 40,
};

const anyLine = fc
  .array(
    fc.record({
      lowestFt: fc.integer({ min: -14, max: 3 }),
      bags: fc.integer({ min: 40, max: 900 }),
      isOnHold: fc.integer({ min: 0, max: 9 }).map((n) => n === 0),
    }),
    { minLength: 3, maxLength: 9 },
  )
  .filter((cells) => cells.some(({ isOnHold }) => !isOnHold))
  .map((cells) =>
    cells.map(({ lowestFt, bags, isOnHold }, k) =>
      stretchAt(k, (lowestFt / 5) * FOOT_M, bags, { isOnHold }),
    ),
  );

describe("the best division among crews", () => {
  /** Every choice of so many first places, on a ring any, on a line with the first at the start. */
  function allCuts(count: number, crews: number, isRing: boolean): number[][] {
    const choose = (from: number, left: number): number[][] =>
      left === 0
        ? [[]]
        : Array.from({ length: count - from }, (_, k) => from + k).flatMap((first) =>
            choose(first + 1, left - 1).map((rest) => [first, ...rest]),
          );
    return choose(0, crews).filter(([first]) => isRing || first === 0);
  }

  it("is as good as the best of all there are, by the first score and then by the second", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 7 }),
        fc.integer({ min: 1, max: 4 }),
        fc.boolean(),
        fc.array(fc.integer({ min: -6, max: 6 }), { minLength: 14, maxLength: 14 }),
        (count, asked, isRing, noise) => {
          const crews = Math.min(asked, count);
          const first = (from: number, size: number) =>
            Math.floor(noise[from + size - 1]! / 3) - size;
          const second = (from: number, size: number) => noise[(3 * from + size) % 14]!;
          const found = bestCuts({ count, isRing }, crews, [first, second])!;
          const scored = allCuts(count, crews, isRing)
            .filter((starts) => !(isRing && crews === 1) || starts[0] === 0)
            .map((starts) => {
              const sizes = starts.map((from, k) => {
                const end = starts[k + 1] ?? count + (isRing ? starts[0]! : 0);
                return [from, end - from] as const;
              });
              const least = (score: typeof first) =>
                Math.min(...sizes.map((part) => score(...part)));
              return [least(first), least(second)] as const;
            })
            .sort((a, b) => b[0] - a[0] || b[1] - a[1]);
          expect(found.least).toEqual([...scored[0]!]);
        },
      ),
      { seed: 7, numRuns: 200 },
    );
  });

  it("is none where there are fewer places than crews", () => {
    expect(bestCuts({ count: 2, isRing: false }, 3, [() => 1])).toBeNull();
  });
});

describe("the parts of the crews", () => {
  const pacing = { bagsPerH: 150, setUpH: 2 };
  const partsOf = (stretches: readonly LiftedStretch[], crews: number, closed: boolean) =>
    sequencer(lineOf(stretches, crews, closed)).divide({ pacing, clock: always, river: RIVER });

  it("hold every bag once, in one step or on HOLD, each part in one piece", () => {
    fc.assert(
      fc.property(
        anyLine,
        fc.integer({ min: 1, max: 3 }),
        fc.boolean(),
        (stretches, crews, closed) => {
          const parts = partsOf(stretches, crews, closed);
          expect(parts.flatMap((part) => part.stretches).sort((a, b) => a - b)).toEqual(
            stretches.map((_, k) => k),
          );
          for (const part of parts) {
            for (const [k, index] of part.stretches.entries()) {
              expect(index).toBe((part.stretches[0]! + k) % stretches.length);
            }
          }
          for (const [index, { lifts, isOnHold }] of stretches.entries()) {
            const owner = parts.find((part) => part.stretches.includes(index))!;
            const steps = owner.steps.filter((step) => step.stretches.includes(index));
            const others = parts.filter((part) => part !== owner).flatMap(({ steps }) => steps);
            expect(others.some((step) => step.stretches.includes(index))).toBe(false);
            if (isOnHold) expect(steps).toEqual([]);
            else expect(steps.at(-1)!.topM).toBeCloseTo(lifts.at(-1)!.topM, 9);
          }
          const inSteps = parts
            .flatMap(({ steps }) => steps)
            .reduce((sum, { bags }) => sum + bags, 0);
          const all = stretches
            .filter(({ isOnHold }) => !isOnHold)
            .flatMap(({ lifts }) => lifts)
            .reduce((sum, { bags }) => sum + bags, 0);
          expect(inSteps).toBeCloseTo(all, 6);
        },
      ),
      { seed: 11, numRuns: 150 },
    );
  });

  it("let no crew work at two places at once, walk for nothing or lay a lift before the one below it", () => {
    fc.assert(
      fc.property(
        anyLine,
        fc.integer({ min: 1, max: 3 }),
        fc.boolean(),
        (stretches, crews, closed) => {
          for (const { steps } of partsOf(stretches, crews, closed)) {
            const laid = new Map<number, number>();
            let before: CrewStep | null = null;
            for (const step of steps) {
              if (before)
                expect(begunAt(step, pacing)).toBeGreaterThanOrEqual(doneAt(before, pacing) - 1e-9);
              before = step;
              for (const index of step.stretches) {
                expect(step.topM).toBeGreaterThan(laid.get(index) ?? Number.NEGATIVE_INFINITY);
                laid.set(index, step.topM);
              }
            }
          }
        },
      ),
      { seed: 12, numRuns: 100 },
    );
  });

  it("have the greatest least margin of all divisions, each timed step by step", () => {
    let late = 0;
    fc.assert(
      fc.property(anyLine, fc.boolean(), (stretches, closed) => {
        const least = (parts: readonly Part[]) =>
          Math.min(
            ...parts.flatMap(({ steps }) => {
              let [atH, atM] = [pacing.setUpH, Number.NaN];
              return steps.map(({ fromM, toM, bags, needM }) => {
                const forward = !(Math.abs(toM - atM) < Math.abs(fromM - atM));
                const walkM = Math.abs((forward ? fromM : toM) - atM);
                if (walkM > 0.01) atH += MOVE_H + walkM / WALK_M_PER_S / 3600;
                atM = forward ? toM : fromM;
                atH += bags / pacing.bagsPerH;
                return RIVER.passesH(needM) - atH;
              });
            }),
          );
        const found = least(partsOf(stretches, 2, closed));
        const count = stretches.length;
        for (let first = 0; first < (closed ? count : 1); first++) {
          for (let size = 1; size < count; size++) {
            // Each of two crews alone, on its own part of the ring or line, with any grouping of its ground.
            const turned = (from: number, length: number) =>
              Array.from({ length }, (_, k) => (from + k) % count);
            const parts = [turned(first, size), turned(first + size, count - size)];
            if (parts.some((part) => part.every((k) => stretches[k]!.isOnHold))) continue;
            for (const most of [4, 6, 8]) {
              const own = parts.map((part) => stepsAlone(stretches, part, closed, most));
              expect(found).toBeGreaterThanOrEqual(
                least(own.map((steps, k) => ({ stretches: parts[k]!, steps }))) - 1e-6,
              );
            }
          }
        }
        if (found < 0) late++;
      }),
      { seed: 13, numRuns: 60 },
    );
    expect(late).toBeGreaterThan(10);
  });
});

describe("more people", () => {
  it("never make the least margin less, and the pace found is the least that is in time", () => {
    fc.assert(
      fc.property(anyLine, fc.boolean(), (stretches, closed) => {
        const line = sequencer(lineOf(stretches, 2, closed));
        const marginAt = (bagsPerH: number) => {
          const pacing = { bagsPerH, setUpH: 2 };
          const steps = line
            .divide({ pacing, clock: always, river: RIVER })
            .flatMap((part) => part.steps);
          return Math.min(...steps.map((step) => RIVER.passesH(step.needM) - doneAt(step, pacing)));
        };
        const margins = [40, 80, 81, 120, 200, 400, 2000].map(marginAt);
        for (const [k, margin] of margins.slice(1).entries()) {
          expect(margin).toBeGreaterThanOrEqual(margins[k]! - 1e-6);
        }
        const least = line.leastPace(2, RIVER.passesH);
        if (least > 1e6) expect(marginAt(1e9)).toBeLessThan(1e-6);
        else if (least > 0) {
          expect(marginAt(least * 1.0001)).toBeGreaterThanOrEqual(0);
          expect(marginAt(least * 0.999)).toBeLessThan(0);
        }
      }),
      { seed: 17, numRuns: 60 },
    );
  });

  it("are never fewer than all bags due over all hours until then", () => {
    fc.assert(
      fc.property(
        anyLine,
        fc.integer({ min: 1, max: 3 }),
        fc.boolean(),
        (stretches, crews, closed) => {
          const line = sequencer(lineOf(stretches, crews, closed));
          const atLeast = peopleAtLeast({
            ...{ stretches, marginM: FOOT_M, setUpH: 2, bagsPerH: 1, dueH: RIVER.passesH },
          });
          const needed = line.leastPace(2, RIVER.passesH) * line.crews;
          if (Number.isFinite(needed))
            expect(atLeast!).toBeLessThanOrEqual(Math.ceil(needed - 1e-6) || 1);
        },
      ),
      { seed: 19, numRuns: 100 },
    );
  });
});

describe("a line by hand", () => {
  // Two crews, 100 bags an hour each, 2 h to set up. A line of six stretches of 10 m, a mark 1 ft above the design
  // water, lifts of 1 ft, margin 1 ft. Ground in ft from the design water: -1 -1 -1 | -0.5 -0.5 -0.5; stretch 3 on HOLD.
  const FT = [-1, -1, -1, -0.5, -0.5, -0.5];
  const stretches = FT.map((ft, k) => stretchAt(k, ft * FOOT_M, 200, { isOnHold: k === 3 }));
  const pacing = { bagsPerH: 100, setUpH: 2 };
  const parts = sequencer(lineOf(stretches, 2, false)).divide({
    pacing,
    clock: always,
    river: RIVER,
  });

  it("is divided, ordered and timed as on paper", () => {
    // Each stretch has two lifts of 200 bags: the design water's level, then the mark. Water reaches -1 ft at 10 h and
    // -0.5 ft at 15 h, and both lifts are needed when it reaches the ground: the second is the foot over that water.
    // In work: five stretches of 400 bags, 2,000 in all. Cut after stretch 1: crew 1 lays 0 and 1, both lifts, by
    // 2 h + 800/100 = 10 h, due at 10 h: 0 h early. Crew 2 lays 2, 4 and 5: 400 bags by 6 h, due at 10 h, one lift
    // from 20 m to 30 m and the next one back; it walks 20 m past the HOLD to 40 m and sets up, 20/0.9144/3600 h and
    // 10 min, 0.173 h in all; 800 bags more by 14.173 h, due at 15 h.
    // Cut after stretch 0: crew 2 has 800 bags due at 10 h, as good, then 800 more by 18.17 h, due at 15 h: late. Cut after 2:
    // crew 1 lays 1,200 bags by 14 h, due at 10 h: 4 h late.
    expect(parts.map((part) => part.stretches)).toEqual([
      [0, 1],
      [2, 3, 4, 5],
    ]);
    const [one, two] = parts.map(({ steps }) =>
      steps.map((step) => [step.stretches, step.topM, doneAt(step, pacing)] as const),
    );
    expect(one).toEqual([
      [[0, 1], expect.closeTo(0, 9), 6],
      [[0, 1], expect.closeTo(FOOT_M, 9), 10],
    ]);
    const movedH = 0.1727423;
    expect(two).toEqual([
      [[2], expect.closeTo(0, 9), 4],
      [[2], expect.closeTo(FOOT_M, 9), 6],
      [[4, 5], expect.closeTo(0, 9), expect.closeTo(10 + movedH, 6)],
      [[4, 5], expect.closeTo(FOOT_M, 9), expect.closeTo(14 + movedH, 6)],
    ]);
  });

  it("needs by hand the people that it needs here, and no fewer than the bags over the hours", () => {
    // Crew 1 has 800 bags to lay in 10 h - 2 h: 100 an hour, as it has; crew 2 has less. Any division: 1,200 bags due
    // at 10 h over 8 h are 150 an hour; 2,000 due at 15 h over 13 h are 153.8. At 1 bag an hour each, 154 people.
    const line = sequencer(lineOf(stretches, 2, false));
    expect(line.leastPace(2, RIVER.passesH)).toBeCloseTo(100, 9);
    const inputs = { stretches, marginM: FOOT_M, setUpH: 2, bagsPerH: 1, dueH: RIVER.passesH };
    expect(peopleAtLeast(inputs)).toBe(154);
  });

  it("tells what is on HOLD beside the steps, in no step and in no hours", () => {
    const samples = { xM: Float64Array.from(FT, (_, k) => 10 * k), yM: new Float64Array(6) };
    const work = { pacing, clock: always };
    const [, second] = buildSequence({
      ...{
        plan: EMPTY_PLAN,
        samples: samples as unknown as LineSamples,
        stretches,
        parts,
        lengthM: 60,
      },
      ...{ designM: 100, passesH: RIVER.passesH, slow: work, fast: work },
    });
    expect(second!.holds).toEqual([
      {
        fromM: 30,
        toM: 40,
        bags: 400,
        decideM: 100 - 0.5 * FOOT_M,
        decideH: expect.closeTo(15, 9),
      },
    ]);
    expect(second).toMatchObject({ crew: 2, toward: "E", fromM: 20, toM: 60, bags: 1200 });
    expect(second!.steps[0]).toMatchObject({
      number: 1,
      belowM: expect.closeTo(FOOT_M, 9),
      bags: 200,
    });
    expect(second!.steps.map(({ earlyH }) => earlyH! > 0)).toEqual([true, true, true, true]);
    // 1 ft at 4 in a course is 3 courses; from -0.5 ft to the design water 0.5 ft, 2 courses.
    expect(second!.steps.map(({ courses }) => courses)).toEqual([
      [3, 3],
      [3, 3],
      [2, 2],
      [3, 3],
    ]);
  });
});

describe("names of crews", () => {
  it("are where their parts lie, and none where that does not tell them apart", () => {
    const at = (xM: number, yM: number) => ({ xM, yM });
    expect(towards([at(0, 9), at(1, -9)])).toEqual(["N", "S"]);
    expect(towards([at(8, 3), at(-9, -2)])).toEqual(["E", "W"]);
    expect(towards([at(0, 10), at(6, 8), at(-6, -18)])).toEqual(["N", "NE", "S"]);
    expect(towards([at(9, 0), at(10, 0), at(-19, 0)])).toEqual([null, null, null]);
    expect(towards([at(3, 4)])).toEqual([null]);
  });
});
