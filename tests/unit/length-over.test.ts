import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { BRIEFS } from "../../shared/words/checks/brief.ts";
import { stationWords } from "../../shared/words/reading.ts";
import { unitsOf } from "../../shared/words/units.ts";

const LIMIT_M = 4 * FOOT_M;
const us = unitsOf("us");

describe("a height over its limit", () => {
  it.each([
    [4.36, "4.4 ft"],
    [4.04, "4.04 ft"],
    [4.004, "4.004 ft"],
    [4, "4.0 ft"],
    [3.96, "4.0 ft"],
  ])("of %d ft is written as %s beside 4.0 ft", (ft, words) => {
    expect(us.lengthOver(ft * FOOT_M, LIMIT_M)).toBe(words);
  });

  it("is told from the limit in metric units too", () => {
    expect(unitsOf("metric").lengthOver(1.221, 1.2192)).toBe("1.221 m");
  });

  it("never reads as the limit itself: in a check, and at the marked station", () => {
    const figures = { heightM: 4.04 * FOOT_M, limitM: LIMIT_M, lengthM: 9, doubtsData: false };
    const brief = BRIEFS["over-limit"]!({ kind: "over-limit", ...figures } as never, us);
    expect(brief.what).toBe("4.04 ft, limit 4.0 ft");
    const heightM = 4.04 * FOOT_M;
    const place = { chainageM: 726 * FOOT_M, heightM, greatestHeightM: heightM };
    expect(stationWords(place, "us", LIMIT_M)).toBe("7+26: 4.04 ft");
    expect(stationWords(place, "us")).toBe("7+26: 4.0 ft");
  });
});
