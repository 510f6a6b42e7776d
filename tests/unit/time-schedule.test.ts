import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DEFAULT_TIME } from "../../shared/defaults.ts";
import type { Hydrograph } from "../../shared/time/hydrograph.ts";
import { levelAt } from "../../shared/time/hydrograph.ts";
import { keepsAhead } from "../../shared/time/keeps-ahead.ts";
import type { Schedule } from "../../shared/time/schedule.ts";
import type { LiftedStretch } from "../../shared/time/stretches.ts";
import { waysOut } from "../../shared/time/ways-out.ts";
import { type WorkHours, workClock, workedUntil } from "../../shared/time/work-hours.ts";

describe("working hours", () => {
  /** Hours worked by looking at every minute. */
  function workedBy(time: WorkHours, startHour: number, elapsedH: number): number {
    const perDay = Math.min(24, time.shifts * time.shiftH);
    let worked = 0;
    let today = 0;
    for (let minute = 0; minute < elapsedH * 60; minute++) {
      const clock = startHour + minute / 60;
      const newDay = time.lit ? minute % 1440 === 0 : Math.abs(clock % 24) < 1e-9;
      if (newDay) today = 0;
      const open =
        time.lit || (clock % 24 >= time.dayFromH! - 1e-9 && clock % 24 < time.dayToH! - 1e-9);
      if (open && today < perDay - 1e-9) {
        worked += 1 / 60;
        today += 1 / 60;
      }
    }
    return worked;
  }

  /** The sun never sets: the hours stated for the day rule alone. */
  const polarDay = (startHour: number) => (day: number) =>
    [24 * day - startHour, 24 * (day + 1) - startHour] as const;

  it("are those that looking at every minute finds", () => {
    const whole = (min: number, max: number) => fc.integer({ min, max });
    fc.assert(
      fc.property(
        fc.boolean(),
        whole(0, 11),
        whole(12, 24),
        whole(1, 3),
        whole(1, 10),
        whole(0, 23),
        whole(1, 40),
        (lit, dayFromH, dayToH, shifts, shiftH, startHour, workedH) => {
          const time = { ...DEFAULT_TIME, lit, dayFromH, dayToH, shifts, shiftH };
          const elapsedH = workClock(time, startHour, polarDay(startHour))(workedH);
          expect(workedBy(time, startHour, elapsedH)).toBeCloseTo(workedH, 3);
          expect(workedBy(time, startHour, elapsedH - 0.5)).toBeLessThan(workedH);
        },
      ),
      { seed: 3, numRuns: 40 },
    );
  });

  it("that never come are never", () => {
    const none = { ...DEFAULT_TIME, shifts: 2, dayFromH: 6, dayToH: 6.001 };
    expect(workClock(none, 0, polarDay(0))(1)).toBe(Number.POSITIVE_INFINITY);
  });

  it("until an hour of the clock are the most that end by it", () => {
    const time = { ...DEFAULT_TIME, dayFromH: 7, dayToH: 15, shifts: 1 };
    const clock = workClock(time, 7, polarDay(7));
    // 07:00 to 15:00 each day: 8 h on the first, none at night, 1 h on the second by 08:00.
    expect([0, 5, 8, 20, 24, 25].map((hour) => workedUntil(clock, hour))).toEqual(
      [0, 5, 8, 8, 8, 9].map((worked) => expect.closeTo(worked, 6)),
    );
    expect(workedUntil(clock, Number.POSITIVE_INFINITY)).toBe(Number.POSITIVE_INFINITY);
  });
});

function stretch(lowestM: number, tops: readonly number[], bags: number): LiftedStretch {
  const lifts = tops.map((topM) => ({ topM, bags }));
  return {
    ...{ fromM: 0, toM: 10, lowestM, crestM: tops.at(-1)!, lowestSample: 0, lifts },
    ...{ isOnHold: false, isOfBags: true },
  };
}

/** One party that lays the stretches one after another, each to its top. */
function oneByOne(stretches: readonly LiftedStretch[], bagsPerH: number, setUpH = 2): Schedule {
  let atH = setUpH;
  const byStretch = stretches.map(({ lifts }) =>
    lifts.map((lift) => {
      const startH = atH;
      atH += lift.bags / bagsPerH;
      return { ...lift, startH, finishH: atH };
    }),
  );
  return { byStretch, finishH: atH };
}

describe("the crest against the river", () => {
  const anyStretch = fc
    .tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 4 }))
    .map(([down, count]) => {
      const tops = Array.from({ length: count }, (_, k) => 0.3 - (0.3 * (count - 1 - k)) / 1);
      return stretch(Math.min(tops[0]! - 0.05, -0.1 * down), tops, 60);
    });
  const anyRiver = fc.array(fc.integer({ min: -15, max: 2 }), { minLength: 3, maxLength: 9 }).map(
    (levels): Hydrograph => ({
      atS: Float64Array.from(levels, (_, k) => k * 4 * 3600),
      levelM: Float64Array.from(levels, (level) => 100 + level / 10),
    }),
  );

  /** Every stretch looked at every six minutes. */
  function bruteForce(
    stretches: readonly LiftedStretch[],
    schedule: Schedule,
    river: Hydrograph,
    marginM: number,
  ): number | null {
    const endH = river.atS.at(-1)! / 3600;
    for (let step = 0; step <= endH * 10; step++) {
      const hour = step / 10;
      const waterM = levelAt(river, hour * 3600) - 100;
      for (const [index, { lowestM, crestM }] of stretches.entries()) {
        const done = schedule.byStretch[index]!.filter((lift) => lift.finishH <= hour);
        const standsM = done.at(-1)?.topM ?? lowestM;
        const wet = waterM > lowestM + 1e-6;
        if (wet && standsM < Math.min(crestM, waterM + marginM) - 1e-6) return hour;
      }
    }
    return null;
  }

  it("is behind when looking at every six minutes finds it behind", () => {
    let behind = 0;
    fc.assert(
      fc.property(
        fc.array(anyStretch, { minLength: 1, maxLength: 6 }),
        anyRiver,
        fc.integer({ min: 10, max: 200 }),
        (stretches, hydrograph, bagsPerH) => {
          const schedule = oneByOne(stretches, bagsPerH);
          const inputs = { stretches, schedule, hydrograph, startS: 0, designM: 100, marginM: 0.2 };
          const found = keepsAhead(inputs);
          const expected = bruteForce(stretches, schedule, hydrograph, 0.2);
          if (expected !== null) {
            behind++;
            expect(Math.abs(found.behindFromH! - expected)).toBeLessThan(0.25);
            expect(found.leastSpareM).toBeLessThan(0);
            expect(found.behindStretch).not.toBeNull();
          }
          if (found.behindFromH === null) expect(expected).toBeNull();
        },
      ),
      { seed: 5, numRuns: 150 },
    );
    expect(behind).toBeGreaterThan(20);
  });

  it("a river over the finished crest is not a matter of time", () => {
    const stretches = [stretch(-0.5, [0, 0.3], 1)];
    const schedule = oneByOne(stretches, 1000, 0);
    const rising = { atS: Float64Array.of(0, 36_000), levelM: Float64Array.of(99, 102) };
    const inputs = { stretches, schedule, startS: 0, designM: 100, marginM: 0.2 };
    expect(keepsAhead({ ...inputs, hydrograph: rising }).behindFromH).toBeNull();
  });
});

describe("ways out", () => {
  const late = {
    ...{ bags: 10_000, bagsPerHEach: 10, bagsPerH: 600 },
    ...{ neededByDay: 1364, neededWithHold: 1401, neededAlways: 690 },
  };

  it("are the fewest people with the pace needed, and the share that the people stated lay at theirs", () => {
    expect(waysOut(late)).toEqual({
      ...{ people: 137, peopleWithHold: 141, peopleDayAndNight: 69, bagsAtMost: 4398 },
    });
  });

  it("are none when no pace is enough, and none for more people than are ever called", () => {
    const never = {
      ...{ ...late, neededByDay: Infinity, neededWithHold: null, neededAlways: 60_000 },
    };
    expect(waysOut(never)).toEqual({
      ...{ people: null, peopleWithHold: null, peopleDayAndNight: null, bagsAtMost: null },
    });
  });
});
