import { describe, expect, it } from "vitest";
import { DEFAULT_PRACTICE, DEFAULT_TIME } from "../../shared/defaults.ts";
import { bagsPerFootByFormula } from "../../shared/handbook.ts";
import { crewPace } from "../../shared/time/pace.ts";

describe("labour", () => {
  it("L1: 205.1 person-hours for 85 ft at 3 ft (ERDC): 2.413 per ft, about 19 bags an hour", () => {
    const perFoot = 205.1 / 85;
    expect(perFoot).toBeCloseTo(2.413, 3);
    const bagsPerHour = bagsPerFootByFormula(3) / perFoot;
    expect(Math.abs(DEFAULT_PRACTICE.jobRate / bagsPerHour - 1)).toBeLessThan(0.02);
  });

  it("L2: ten people fill 400 bags in an hour by hand (THW-B)", () => {
    const tenFill = { ...DEFAULT_PRACTICE, taskRateLow: 40, jobRate: 1000 };
    const { fillers, slowBagsPerH } = crewPace(tenFill, DEFAULT_TIME, 20);
    expect(fillers).toBe(10);
    expect(slowBagsPerH).toBe(400);
  });

  it("L3: two people fill 100 bags in an hour untied, 50 tied (AT): the plan's range holds the first", () => {
    const each = 100 / 2;
    expect(each).toBeGreaterThanOrEqual(DEFAULT_PRACTICE.taskRateLow);
    expect(each).toBeLessThanOrEqual(DEFAULT_PRACTICE.taskRateHigh);
    const twoFill = { ...DEFAULT_PRACTICE, taskRateLow: 25, jobRate: 1000 };
    expect(crewPace(twoFill, DEFAULT_TIME, 4).slowBagsPerH).toBe(50);
  });

  it("L4: 40 to 60 an hour for one task (THW-E); the slow pace is the whole job's where that is slower", () => {
    expect(DEFAULT_PRACTICE).toMatchObject({ taskRateLow: 40, taskRateHigh: 60 });
    const { slowBagsPerH, fastBagsPerH } = crewPace(DEFAULT_PRACTICE, DEFAULT_TIME, 60);
    expect(slowBagsPerH).toBe(60 * DEFAULT_PRACTICE.jobRate);
    expect(fastBagsPerH).toBe(30 * 60);
  });
});
