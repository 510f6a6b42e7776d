import { describe, expect, it } from "vitest";
import { daylightFrom } from "../../shared/time/daylight.ts";
import { clockHour, momentOf } from "../../shared/time/forecast-time.ts";

const hours = (clock: string) => {
  const [h, m, s = 0] = clock.split(":").map(Number);
  return h! + m! / 60 + s / 3600;
};

/** Sunrise and sunset on the clock of a start of work, so many days after it. */
function sunOn(startAt: string, at: readonly [number, number], day = 0): [number, number] {
  const start = momentOf(startAt)!;
  const [fromH, toH] = daylightFrom(start, at)(day);
  const midnightH = 24 * day - clockHour(start);
  return [fromH - midnightH, toH - midnightH];
}

const MINUTE = 1 / 60;

describe("sunrise and sunset against published ones, to five seconds", () => {
  /**
   * Reda and Andreas, Solar Position Algorithm, NREL/TP-560-34302: its worked example for Golden, Colorado,
   * 17 October 2003: sunrise 6:12:43, sunset 17:20:19, UTC-7. It counts its day in UTC, so that the sunset
   * is that of the evening before.
   */
  const GOLDEN = [-105.1786, 39.742476] as const;
  const CLOSE_H = 5 / 3600;

  it.each([
    ["from that day on", "2003-10-17T12:30-07:00", 0],
    ["from three days before, begun at night", "2003-10-14T22:15-07:00", 3],
    ["from the day before, begun before dawn", "2003-10-16T00:05-07:00", 1],
  ] as const)("%s", (_, startAt, day) => {
    const [rise] = sunOn(startAt, GOLDEN, day);
    expect(Math.abs(rise - hours("06:12:43"))).toBeLessThan(CLOSE_H);
    const [, set] = sunOn(startAt, GOLDEN, day - 1);
    expect(Math.abs(set - hours("17:20:19"))).toBeLessThan(CLOSE_H);
  });

  it("the day is as long at the same latitude and day of the year as astronomy has it: cos H = (sin h0 - sin φ sin δ) / (cos φ cos δ), by hand", () => {
    const rad = Math.PI / 180;
    const [phi, delta] = [43 * rad, 23.436 * rad];
    const cosH =
      (Math.sin(-0.833 * rad) - Math.sin(phi) * Math.sin(delta)) /
      (Math.cos(phi) * Math.cos(delta));
    const lengthH = (2 * Math.acos(cosH)) / rad / 15;
    const [rise, set] = sunOn("2026-06-21T08:00-05:00", [-93.98, 43]);
    expect(Math.abs(set - rise - lengthH)).toBeLessThan(MINUTE);
  });
});

describe("where the clock or the sun is not plain", () => {
  const SITE = [-93.98, 43] as const;

  it("a clock without an offset gets the shorter day: that of standard time's evening and summer time's morning", () => {
    const standard = sunOn("2026-04-07T07:00-06:00", SITE);
    const summer = sunOn("2026-04-07T07:00-05:00", SITE);
    const unsure = sunOn("2026-04-07T07:00", SITE);
    expect(unsure[0]).toBeCloseTo(summer[0], 2);
    expect(unsure[1]).toBeCloseTo(standard[1], 2);
  });

  it("beyond the polar circle the day is whole in summer and none in winter", () => {
    const NORTH = [20, 75] as const;
    expect(sunOn("2026-06-21T08:00+01:00", NORTH)).toEqual([0, 24]);
    const [rise, set] = sunOn("2026-12-21T08:00+01:00", NORTH);
    expect(set - rise).toBe(0);
  });
});
