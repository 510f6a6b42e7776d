import { describe, expect, it } from "vitest";
import type { RuleId } from "../../shared/checks/findings.ts";
import { fittingSections, type Place } from "../../shared/checks/room.ts";
import { FOOT_M } from "../../shared/constants.ts";
import { DEFAULT_SECTION } from "../../shared/defaults.ts";
import type { ReachSection } from "../../shared/plan.ts";
import { checkWords } from "../../shared/words/checks.ts";
import { makeup } from "../../shared/words/makeup/line.ts";
import { messageOf, remedyOf } from "../helpers/check-text.ts";
import {
  type Corner,
  flat,
  openLine,
  planWith,
  rectangle,
  ring,
  size,
  structure,
} from "../helpers/grounds.ts";

const PLAN = planWith(101 - FOOT_M);
const EAST: Corner[] = [
  [0, 0],
  [60, 0],
];
const built = (section: string, figures: Record<string, number> = {}): ReachSection => ({
  section,
  figures,
});

function checksOf(
  reachSections: readonly ReachSection[],
  breaksM: readonly number[] = [],
  plan = PLAN,
  corners = EAST,
) {
  const line = { ...openLine(corners, breaksM), reachSections };
  return size(plan, line, flat(100)).checks;
}

describe("checks of sections", () => {
  it("stop a reach over its section's own limit, with that limit's source, and no other reach", () => {
    const checks = checksOf([built("pyramid"), built("two-bag-wall")], [30]);
    const over = checks.filter(({ id }) => id === "type-limit");
    expect(over).toHaveLength(1);
    expect(over[0]).toMatchObject({ severity: "stop" });
    expect(checkWords(over[0]!, "us").source).toBe("NDSU-11");
    expect(over[0]!.fromM).toBeCloseTo(30, 6);
    expect(messageOf(over[0])).toMatch(/limit of 1\.0 ft/);
    expect(checks.some(({ id }) => id === "over-limit")).toBe(false);
  });

  it("leave the plan's limit to what has none of its own", () => {
    const plan = planWith(100 + 4 * FOOT_M);
    const [pyramid, earth] = [built("pyramid"), built("earth-levee")];
    const over = checksOf([pyramid, earth], [30], plan).filter(({ id }) => id === "over-limit");
    expect(over).toHaveLength(1);
    expect(over[0]!.toM).toBeCloseTo(30, 1);
  });

  it("tell what each section asks for once, however often it is used", () => {
    const box = built("plywood-box");
    const checks = checksOf([box, built("pyramid"), box], [20, 40]);
    const told = checks.filter(({ id }) => id === "type-cautions");
    expect(told).toHaveLength(1);
    expect(remedyOf(told[0])).toMatch(/Never fill it with sandbags/);
    expect(messageOf(told[0])).toMatch(/0\+00.*1\+31/);
  });

  it("warn where two sections meet, and not where one goes on", () => {
    const checks = checksOf([built("pyramid"), built("pyramid"), built("plywood-box")], [20, 40]);
    const met = checks.filter(({ id }) => id === "types-meet");
    expect(met.map(({ fromM }) => fromM)).toEqual([expect.closeTo(40, 6)]);
    expect(met[0]).toMatchObject({ severity: "caution" });
    expect(checkWords(met[0]!, "us").source).toBe("common practice, no source");
  });

  it("say that carpentry is not in the hours where there is some, and only there", () => {
    const has = (section: string) =>
      checksOf([built(section)]).some(({ id }) => id === "carpentry");
    expect([has("braced-wall"), has("plywood-box"), has("earth-levee"), has("pyramid")]).toEqual([
      ...[true, true, false, false],
    ]);
  });

  it("ask no bond trench, base ratio, bag weight or raise of an earth levee", () => {
    const plan = planWith(100 + 2.5 * FOOT_M, {
      section: { baseRatio: 1.5, bag: { ...DEFAULT_SECTION.bag, filledMassKg: 40 } },
    });
    const ids = (section: string) =>
      new Set(checksOf([built(section)], [], plan).map(({ id }) => id));
    const asked: RuleId[] = ["bond-trench", "narrow-base", "heavy-bag", "room-to-raise"];
    expect(asked.filter((id) => ids("pyramid").has(id))).toEqual(asked);
    expect(asked.filter((id) => ids("earth-levee").has(id))).toEqual([]);
  });

  it("judge a pyramid by the base ratio of its own reach", () => {
    const narrow = checksOf([built("pyramid", { baseRatio: 1.5 })]);
    expect(messageOf(narrow.find(({ id }) => id === "narrow-base"))).toMatch(/1\.5 times/);
  });

  it("add nothing to a line of pyramids", () => {
    const ids = new Set(checksOf([]).map(({ id }) => id));
    for (const id of ["type-limit", "type-cautions", "types-meet", "carpentry"] as const) {
      expect(ids.has(id)).toBe(false);
    }
  });
});

describe("sections that fit where room is short", () => {
  const place = (changes: Partial<Place>): Place => ({
    ...{ heightM: 0.9, greatestM: 0.9, dropWaterM: 0.9, dropLandM: 0.9 },
    ...{ roomWaterM: Infinity, roomLandM: Infinity },
    ...changes,
  });
  const fitting = (places: readonly Place[], except: readonly string[] = []) =>
    fittingSections(places, PLAN, new Set(except)).map(({ typeId }) => typeId);

  it("are all that may be so high where there is room on both sides", () => {
    expect(fitting([place({})])).toEqual([
      ...["pyramid", "braced-wall", "plywood-box", "lumber-topping", "earth-levee"],
    ]);
  });

  it("have their half base in the room on that side: 0.9 of a box, 1.35 of a pyramid, 0.36 of a wall", () => {
    expect(fitting([place({ roomLandM: 1.3 })])).toEqual([
      ...["braced-wall", "plywood-box", "lumber-topping"],
    ]);
    expect(fitting([place({ roomLandM: 0.91 })])).toContain("plywood-box");
    expect(fitting([place({ roomLandM: 0.89 })])).toEqual(["braced-wall", "lumber-topping"]);
    expect(fitting([place({ roomLandM: 0.35 })])).toEqual([]);
  });

  it("are asked on the side of the water and of the land by their own runs", () => {
    const halfM = 2.5 * FOOT_M;
    const waterM = halfM + 2.5 * 0.9 + 0.01;
    expect(fitting([place({ roomWaterM: waterM })])).toContain("earth-levee");
    expect(fitting([place({ roomLandM: waterM })])).not.toContain("earth-levee");
  });

  it("fit at every place, within their limits, and are not what is built there now", () => {
    const low = place({ heightM: 0.3, greatestM: 0.3, dropLandM: 0.3, roomLandM: 0.4 });
    expect(fitting([low])).toEqual([
      ...["braced-wall", "plywood-box", "lumber-topping", "two-bag-wall"],
    ]);
    expect(fitting([low, place({ roomLandM: 0.4 })])).toEqual(["braced-wall", "lumber-topping"]);
    expect(fitting([place({ greatestM: 1 })])).not.toContain("braced-wall");
    expect(fitting([place({})], ["pyramid"])).not.toContain("pyramid");
  });

  it("say the width of their base", () => {
    const [wall] = fittingSections([place({ roomLandM: 0.5 })], PLAN, new Set());
    expect(wall!.baseM).toBeCloseTo(2 * DEFAULT_SECTION.bag.placedWidthM, 12);
  });

  const besideWall = (clearM: number) => {
    const house: Corner[] = [
      [10, clearM],
      [40, clearM],
      [40, clearM + 10],
      [10, clearM + 10],
    ];
    const plan = { ...PLAN, structures: [structure("House", house)] };
    return checksOf([], [], plan).find(({ id }) => id === "setback")!;
  };

  it("are proposed beside a house that the pyramid comes too near to", () => {
    const remedy = remedyOf(besideWall(8 * FOOT_M + 1.2));
    expect(remedy).toMatch(/Plywood box filled with sand \(base 6\.6 ft\)/);
    expect(remedy).not.toMatch(/Sandbag pyramid/);
  });

  it("are said not to be there where nothing fits", () => {
    expect(remedyOf(besideWall(8 * FOOT_M + 0.1))).toMatch(/No other levee type in the list fits/);
    expect(remedyOf(besideWall(1))).toMatch(/No other levee type in the list fits/);
  });

  it("are proposed where two bases overlap", () => {
    const back: Corner[] = [...EAST, [60, 2.7], [0, 2.7]];
    const said = checksOf([], [], PLAN, back).find(({ id }) => id === "bases-overlap")!;
    expect(remedyOf(said)).toMatch(/these fit there: Plywood box/);
  });

  it("need not be proposed to a ring that keeps clear", () => {
    const plan = { ...PLAN, structures: [structure("House", rectangle(4, 4))] };
    const { checks } = size(plan, ring(rectangle(20, 15)), flat(100), true);
    expect(checks.some((check) => /fit there/.test(remedyOf(check)))).toBe(false);
  });
});

describe("what the materials are made of", () => {
  const alignment = {
    ...openLine(EAST, [30, 45]),
    reachSections: [built("plywood-box"), built("earth-levee"), built("pyramid")],
  };
  const line = size(PLAN, alignment, flat(100), true);
  const made = (key: Parameters<typeof makeup>[0]) =>
    makeup(key, { plan: PLAN, line, totals: line.totals, system: "metric" });

  it("has formula, inputs and source for each", () => {
    for (const key of [
      "looseSandM3",
      "earthM3",
      "plywoodSheets",
      "lumberPieces",
      "stakes",
    ] as const) {
      const { formula, inputs, source } = made(key);
      expect(formula.length * source.length).toBeGreaterThan(0);
      expect(inputs.length).toBeGreaterThan(1);
    }
    expect(made("plywoodSheets").inputs).toContainEqual({
      name: "Plywood box filled with sand from 0+000.0",
      value: "60 m²",
    });
  });

  it("says what the hours count beside bags, and what they leave out", () => {
    const names = made("jobPersonHours").inputs.map(({ name }) => name);
    expect(names).toContain("carpentry");
    expect(names.some((name) => /sand and earth without bags/.test(name))).toBe(true);
  });

  it("says nothing of them for a line of pyramids", () => {
    const plain = size(PLAN, openLine(EAST), flat(100), true);
    const inputs = { plan: PLAN, line: plain, totals: plain.totals, system: "us" } as const;
    for (const key of ["bags", "sandM3", "jobPersonHours"] as const) {
      const names = makeup(key, inputs).inputs.map(({ name }) => name);
      expect(names.join()).not.toMatch(/loose|carpentry|without/);
    }
  });
});
