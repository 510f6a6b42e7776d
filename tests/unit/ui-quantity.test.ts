import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { SETTINGS, type SettingPath } from "../../shared/settings.ts";
import {
  BEARING,
  ELEVATION,
  LATITUDE,
  LONGITUDE,
  OFFSET,
  type Quantity,
  STATION,
  settingQuantity,
} from "../../src/ui/quantity.ts";
import { checkRange } from "../../src/ui/range.ts";
import { said } from "../helpers/said.ts";

const value = (quantity: Quantity, text: string) => {
  const outcome = quantity.parse(text, "us");
  return outcome.ok ? outcome.value : outcome.failure.code;
};

describe("figures that are typed", () => {
  it.each([
    [OFFSET, "3.5 ft", 3.5 * FOOT_M],
    [OFFSET, "3'6\"", 3.5 * FOOT_M],
    [OFFSET, "1.07 m", 1.07],
    [OFFSET, "-12", -12 * FOOT_M],
    [ELEVATION, "873.90 ft", 873.9 * FOOT_M],
    [STATION, "12+50", 1250 * FOOT_M],
    [BEARING, "95°", 95],
    [LATITUDE, "-33.8712345", -33.8712345],
  ] as const)("%o takes %j", (quantity, text, expected) => {
    expect(value(quantity, text)).toBeCloseTo(expected, 9);
  });

  it.each([
    [OFFSET, "a lot"],
    [OFFSET, ""],
    [BEARING, "361"],
    [BEARING, "NaN"],
    [LATITUDE, "90.1"],
    [LONGITUDE, "181"],
    [LONGITUDE, "12,34"],
  ] as const)("%o refuses %j with what was expected and what came", (quantity, text) => {
    const outcome = quantity.parse(text, "us");
    expect(outcome.ok).toBe(false);
    if (outcome.ok) return;
    const { message, remedy } = said(outcome.failure);
    expect(message).toMatch(/^Expected /);
    expect(message).toContain(text || "nothing was typed");
    expect(remedy).not.toBe("");
  });

  it("what a field writes it reads again, within what it shows", () => {
    for (const [at, text] of [
      [-96.7897001, LONGITUDE.format(-96.7897001, "us")],
      [46.8771863, LATITUDE.format(46.8771863, "us")],
    ] as const) {
      expect(Number(text)).toBeCloseTo(at, 7);
    }
    expect(value(STATION, STATION.format(100, "us"))).toBeCloseTo(328 * FOOT_M, 6);
  });

  it("an arrow key moves every setting by something, and not past its range", () => {
    for (const path of Object.keys(SETTINGS) as SettingPath[]) {
      const { lowSI, highSI } = SETTINGS[path];
      for (const system of ["us", "metric"] as const) {
        const step = settingQuantity(path).step(system);
        expect(step).toBeGreaterThan(0);
        expect(step).toBeLessThan(highSI - lowSI);
      }
    }
  });
});

describe("the range of a field", () => {
  const field = { range: { least: 0, most: 2 * FOOT_M }, quantity: OFFSET };

  it("takes both ends, a rounding error past them too", () => {
    expect(checkRange(2 * FOOT_M + 1e-12, field).ok).toBe(true);
    expect(checkRange(0, field).ok).toBe(true);
  });

  it.each([-0.01, 3, Number.NaN, Number.POSITIVE_INFINITY])("refuses %d", (value) => {
    const outcome = checkRange(value, field);
    expect(outcome.ok).toBe(false);
    if (outcome.ok) return;
    expect(said(outcome.failure).message).toContain("Expected 0.0 ft to 2.0 ft");
    expect(said(outcome.failure, "metric").message).toContain("Expected 0.00 m to 0.61 m");
  });

  it("refuses a part of a thing where only whole ones make sense", () => {
    const whole = { range: { least: 1, most: 9, whole: true }, quantity: STATION };
    expect(checkRange(2.5, whole).ok).toBe(false);
    expect(checkRange(2, whole).ok).toBe(true);
  });
});
