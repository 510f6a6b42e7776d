import { describe, expect, it } from "vitest";
import { averageEndVolume, prismoidalVolume } from "../../shared/volume.ts";

/** A railroad cut: base b, side slopes s to 1, depth d (VOSE arts 106-108). Feet. */
const cutArea = (base: number, slope: number, depth: number) => depth * (base + slope * depth);
const DEPTHS = [0, 5, 10, 15, 0];
const STEP_FT = 50;

function alongCut(volume: (from: number, to: number) => number): number {
  return DEPTHS.slice(1).reduce((sum, to, i) => sum + volume(DEPTHS[i]!, to), 0);
}

describe("volumes of published worked examples", () => {
  it("VOSE's end areas for cuts of 0, 5, 10, 15 ft are 0, 137, 350, 637 sq ft as printed", () => {
    const printed = [0, 137, 350, 637, 0];
    DEPTHS.forEach((depth, i) => {
      expect(Math.abs(cutArea(20, 1.5, depth) - printed[i]!)).toBeLessThanOrEqual(0.5);
    });
  });

  it("V1: average end areas give 56,250 cu ft (56,200 printed from rounded areas)", () => {
    const total = alongCut((from, to) =>
      averageEndVolume(cutArea(20, 1.5, from), cutArea(20, 1.5, to), STEP_FT),
    );
    expect(total).toBeCloseTo(56_250, 6);
    expect(Math.abs(total / 56_200 - 1)).toBeLessThan(0.005);
  });

  it("V2: the prismoidal rule with mid-section dimensions gives 52,500 cu ft", () => {
    const total = alongCut((from, to) =>
      prismoidalVolume(
        cutArea(20, 1.5, from),
        cutArea(20, 1.5, (from + to) / 2),
        cutArea(20, 1.5, to),
        STEP_FT,
      ),
    );
    expect(total).toBeCloseTo(52_500, 6);
  });

  it("V2: with VOSE's printed mid areas it gives 52,533", () => {
    const areas = [0, 137, 350, 637, 0];
    const middles = [59, 236, 483, 236];
    const total = middles.reduce(
      (sum, middle, i) => sum + prismoidalVolume(areas[i]!, middle, areas[i + 1]!, STEP_FT),
      0,
    );
    expect(Math.abs(total - 52_533)).toBeLessThan(1);
  });

  it("V3: 8 ft of cut on a 19 ft base at 1.5 to 1 is 919 cu yd per 100 ft (VOSE's table)", () => {
    const area = cutArea(19, 1.5, 8);
    expect(Math.abs(averageEndVolume(area, area, 100) / 27 - 919)).toBeLessThan(1);
  });

  it("V4: areas of 711 and 515 over 100 ft are 61,300 cu ft, 2,270.4 cu yd (KHAMIS)", () => {
    expect(averageEndVolume(711, 515, 100)).toBe(61_300);
    expect(averageEndVolume(711, 515, 100) / 27).toBeCloseTo(2270.4, 1);
  });

  it("V7: a pyramid of 60 on a base of 100 is 3,000 by end areas and 2,000 by the prismoidal rule", () => {
    expect(averageEndVolume(0, 100, 60)).toBe(3000);
    expect(prismoidalVolume(0, 25, 100, 60)).toBe(2000);
  });
});
