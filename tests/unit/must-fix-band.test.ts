import { describe, expect, it } from "vitest";
import { mustFixCount } from "../../shared/completeness.ts";
import { mustFixBand } from "../../shared/words/must-fix-band.ts";
import { markedStations } from "../../src/pages/plan-stations.ts";
import { SteadyRoom } from "../../src/pages/steady-room.ts";
import { groundOf, openLine, planWith, ring, size } from "../helpers/grounds.ts";

/** A pit every 100 m, 20 m wide, too deep for a levee of bags. */
const PITS = groundOf((x) =>
  ((x % 100) + 100) % 100 > 40 && ((x % 100) + 100) % 100 < 60 ? 97 : 100,
);
const PLAN = planWith(100.3);
const LINE = size(
  PLAN,
  openLine([
    [0, 0],
    [600, 0],
  ]),
  PITS,
);

describe("the band of a page", () => {
  it("names what its own part of the line has first, then the whole line's, and counts the rest", () => {
    const count = mustFixCount(LINE.checks);
    expect(count).toBeGreaterThan(6);
    const part = { fromM: 130, toM: 170 };
    const band = mustFixBand(LINE.checks, part, "metric");
    expect(band.count).toBe(count);
    const own = LINE.checks.filter(
      ({ severity, where, fromM, toM }) =>
        severity === "stop" && where?.at === "stretch" && fromM <= part.toM && toM >= part.fromM,
    );
    expect(own.length).toBeGreaterThan(0);
    expect(own.length).toBeLessThan(count);
    for (const each of band.named.slice(0, own.length)) expect(each).toMatch(/^0\+1[2-7]\d/);
    expect(band.rest).toBe(`and ${count - band.named.length} more on other pages.`);
  });

  it("names all on a page for all of the line, and the first few on a page for none of it", () => {
    const count = mustFixCount(LINE.checks);
    const whole = mustFixBand(LINE.checks, { fromM: 0, toM: 600 }, "us");
    expect(whole).toMatchObject({ count, rest: null });
    expect(whole.named).toHaveLength(count);
    const first = mustFixBand(LINE.checks, null, "us");
    expect(first.named).toHaveLength(4);
    expect(first.rest).toBe(`and ${count - 4} more on the Build pages.`);
  });

  it("knows a stretch that runs over the closing point on both pages that meet there", () => {
    const low = groundOf((x, y) => (x < -30 && y < -10 ? 97 : 100));
    const closed = size(
      PLAN,
      ring([
        [-50, -20],
        [50, -20],
        [50, 20],
        [-50, 20],
      ]),
      low,
    );
    const over = closed.checks.find(({ id, continued }) => id === "over-limit" && !continued)!;
    expect(over.where).toMatchObject({ overClosing: true });
    const many = [...LINE.checks, over];
    const [words] = mustFixBand([over], null, "us").named;
    for (const part of [
      { fromM: 0, toM: 5 },
      { fromM: closed.totals.lengthM - 5, toM: closed.totals.lengthM },
    ]) {
      expect(mustFixBand(many, part, "us").named).toContain(words);
    }
    const apart = mustFixBand(many, { fromM: 80, toM: 100 }, "us");
    expect(apart.named).not.toContain(words);
  });
});

describe("stations on paper", () => {
  it("keep the stake that stands in for one of the interval, under its own number", () => {
    const stepM = PLAN.practice.stationIntervalM;
    const shifted = {
      ...LINE,
      stations: LINE.stations.map((each) =>
        Math.abs(each.chainageM - 4 * stepM) < 1e-6
          ? { ...each, chainageM: 4 * stepM - 0.2, reason: "over" as const }
          : each,
      ),
    };
    const marked = markedStations(
      { plan: PLAN, line: shifted, system: "us", fromM: 0, toM: 40 },
      1,
      0.6,
    );
    expect(marked.map(({ station }) => station)).toEqual([
      "0+00",
      "0+25",
      "0+50",
      "0+75",
      "0+99",
      "1+25",
    ]);
  });
});

describe("the room of a page", () => {
  it("ends with the smaller of two that follow from each other, and begins anew with other pages", () => {
    const room = new SteadyRoom();
    const given = [200, 190, 200, 190, 200, 190, 200, 190, 200, 190];
    const got = given.map((mm) => room.next(mm, "Letter 40"));
    expect(got.slice(0, 2)).toEqual([200, 190]);
    expect(got.slice(-3)).toEqual([190, 190, 190]);
    expect(room.next(200, "A4 40")).toBe(200);
  });
});
