import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { bagTopM, mostSettlingM } from "../../shared/settling.ts";
import { bagTopFigure, mostSettlingFigure, topWords } from "../../shared/words/settling.ts";
import { groundOf, openLine, planWith, size } from "../helpers/grounds.ts";

const STATION = { crestM: 106 * FOOT_M, heightM: 6 * FOOT_M, courses: 15 };

describe("wet bags settle", () => {
  it("a height of 6 ft is laid 0.3 ft higher (MB: 5 %, 3 to 4 in on 6 ft)", () => {
    expect(bagTopM(STATION)! / FOOT_M).toBeCloseTo(100 + 6 * 1.05, 9);
    expect(bagTopFigure(STATION, "us")).toBe("106.30");
    expect(topWords(STATION, "us")).toBe("top of levee 106.00 ft, lay bags to 106.30 ft");
  });

  it("the elevation is rounded up, never down", () => {
    expect(bagTopFigure({ crestM: 10, heightM: 0.421, courses: 2 }, "metric")).toBe("10.03");
  });

  it("nothing is laid where there is no levee, no bags or no elevation data", () => {
    expect(bagTopM({ ...STATION, heightM: null })).toBeNull();
    expect(bagTopM({ ...STATION, courses: null })).toBeNull();
    expect(bagTopM({ ...STATION, courses: 0, heightM: 0 })).toBeNull();
  });

  it("a stretch is laid higher by what its highest place of bags takes", () => {
    const corners = [
      [0, 0],
      [40, 0],
    ] as const;
    const plan = planWith(101);
    const falling = groundOf((x) => 101 - x / 40);
    const bags = openLine(corners, [20]);
    const line = size(plan, bags, falling);
    const crestM = 101 + plan.water.freeboardM;
    expect(mostSettlingM(line, 0, 40)).toBeCloseTo(0.05 * (crestM - 100), 6);
    expect(mostSettlingM(line, 0, 20)).toBeCloseTo(0.05 * (crestM - 100.5), 6);
    const earth = size(
      plan,
      {
        ...bags,
        reachSections: [
          { section: "pyramid", figures: {} },
          { section: "earth-levee", figures: {} },
        ],
      },
      falling,
    );
    expect(mostSettlingM(earth, 0, 40)).toBeCloseTo(0.05 * (crestM - 100.5), 2);
    expect(mostSettlingM(earth, 25, 40)).toBeNull();
    expect(mostSettlingFigure(line, 0, 40, "us")).toBe("0.3");
  });
});
