import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import type { GroundSampler } from "../../shared/ground.ts";
import type { Alignment } from "../../shared/plan.ts";
import { messageOf } from "../helpers/check-text.ts";
import { flat, groundOf, openLine, planWith, rectangle, ring, size } from "../helpers/grounds.ts";

const CREST_M = 100 + 2 * FOOT_M;
const ACCURACY_M = 0.1;
const plan = planWith(100 + FOOT_M, { ground: { rmseM: ACCURACY_M }, practice: { raiseM: 0 } });
const close = (line: Alignment, ground: GroundSampler) =>
  size(plan, line, ground, true).checks.filter(({ id }) => id === "close-bank");
const RING = ring(rectangle(40, 30));
/** Low ground with a bank along the east side whose top is so far above the top of levee. */
const banked = (aboveM: number) => groundOf((x) => (x > 35 ? CREST_M + aboveM : 100));
/** Rises from low ground to so far above the top of levee, at 1 in 5, at both ends of an east-west line. */
const bowl = (aboveM: number) =>
  groundOf((x) => Math.min(CREST_M + aboveM, 100 + Math.max(0, Math.abs(x) - 30) / 5));
const LINE = openLine([
  [-45, 0],
  [45, 0],
]);

describe("natural ground in the place of levee", () => {
  it("is a caution where it is high enough by less than the accuracy: by how much, the accuracy, where", () => {
    const [found, ...more] = close(RING, banked(0.06));
    expect(more).toEqual([]);
    expect(found).toMatchObject({ severity: "caution" });
    expect(messageOf(found)).toMatch(
      /^\d\+\d\d to \d\+\d\d: natural ground in place of levee is above the top of levee by only 0\.2 ft, less than the accuracy of the elevation data, ±0\.3 ft\.$/,
    );
  });

  it("is no matter where it is higher by more, or where everything is built", () => {
    expect(close(RING, banked(0.15))).toEqual([]);
    expect(close(RING, banked(-0.02))).toEqual([]);
    expect(close(RING, flat(100))).toEqual([]);
  });

  it("is one in a dip of a bank that is high enough elsewhere, at its lowest", () => {
    const dipped = groundOf((x, y) => {
      if (x < 35) return 100;
      return CREST_M + (Math.abs(y) < 5 ? 0.03 + 0.002 * Math.abs(y) : 0.5);
    });
    const [dip, ...more] = close(RING, dipped);
    expect(more).toEqual([]);
    expect(messageOf(dip, "metric")).toContain("by only 0.03 m");
    // South-east corner at 80 m, middle of the east side 30 m on.
    expect(Math.abs(dip!.fromM - 110)).toBeLessThan(1.5);
  });
});

describe("ground that an open line ends on", () => {
  it("is a caution where it is high enough by less than the accuracy", () => {
    const found = close(LINE, bowl(0.05));
    expect(found.map(({ severity }) => severity)).toEqual(["caution", "caution"]);
    for (const check of found) {
      expect(messageOf(check, "metric")).toMatch(
        /the ground that the line ends on .* by only 0\.05 m/,
      );
    }
  });

  it("is no matter where the line runs on into surely higher ground: its edge is always close", () => {
    expect(close(LINE, bowl(0.5))).toEqual([]);
  });

  it("is one where it rises so gently that the edge is longer than between two stakes", () => {
    const gentle = groundOf((x) => (x > 0 ? CREST_M - 0.05 + x / 200 : CREST_M + 0.5));
    const [found] = close(LINE, gentle);
    expect(found).toMatchObject({ severity: "caution" });
  });
});
