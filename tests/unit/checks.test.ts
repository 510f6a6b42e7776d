import { describe, expect, it } from "vitest";
import { RULES } from "../../shared/checks.ts";
import { FOOT_M, POUND_KG } from "../../shared/constants.ts";
import { DEFAULT_SECTION } from "../../shared/defaults.ts";
import type { GroundSampler } from "../../shared/ground.ts";
import { documentsIn } from "../../shared/handbook.ts";
import type { Alignment, Plan } from "../../shared/plan.ts";
import type { Check } from "../../shared/sizing-types.ts";
import { checkWords, ruleWords } from "../../shared/words/checks.ts";
import { messageOf, remedyOf, withWords } from "../helpers/check-text.ts";
import {
  type Corner,
  flat,
  groundOf,
  lonLats,
  openLine,
  planWith,
  rectangle,
  ring,
  size,
  structure,
} from "../helpers/grounds.ts";

const HOUSE = structure("House", rectangle(6, 5));
const RING = ring(rectangle(20, 15));
/** A plan without a complaint: 2 ft high on level ground round a house, with nothing left unsaid. */
const SOUND = { structures: [HOUSE], practice: { raiseM: 0 } };

function checksOf(plan: Plan, alignment: Alignment, ground: GroundSampler): readonly Check[] {
  return size(plan, alignment, ground, true).checks;
}

function found(id: string, plan: Plan, alignment = RING, ground = flat(100)) {
  return checksOf(plan, alignment, ground)
    .filter((check) => check.id === id)
    .map((check) => withWords(check));
}

const two = (changes: Parameters<typeof planWith>[1] = {}) =>
  planWith(100 + FOOT_M, { ...SOUND, ...changes });
const at = (heightFt: number, changes: Parameters<typeof planWith>[1] = {}) =>
  planWith(100 + (heightFt - 1) * FOOT_M, { ...SOUND, ...changes });

describe("every check", () => {
  it("is silent about a sound plan", () => {
    const leave = { by: "elevation", levelM: 100, at: null, note: "" } as const;
    expect(checksOf({ ...two(), leave }, RING, flat(100))).toEqual([]);
  });

  it("has an identifier of its own, a rule and a source that the handbook knows or that says what it is", () => {
    expect(new Set(RULES.map((rule) => rule.id)).size).toBe(RULES.length);
    for (const rule of RULES) {
      const words = ruleWords(rule.id, "us");
      expect(words.rule).toMatch(/\.$/);
      const known = documentsIn(words.source).length > 0;
      expect(known || /judgement|no source|from memory/.test(words.source), rule.id).toBe(true);
    }
  });

  it("speaks in sentences, says what to do, and stays within the line; stops come first", () => {
    const ground = groundOf((x, y) => (y > 13 && x > 15 ? Number.NaN : 99.2 + 0.02 * x));
    const plan = planWith(100.2, {
      structures: [structure("House", rectangle(18, 5)), structure("Barn", rectangle(2, 40))],
      water: { fallPerM: 0.001, freeboardM: 0.1, datumNote: "" },
      section: { bag: { ...DEFAULT_SECTION.bag, filledMassKg: 30 }, baseRatio: 1.5 },
    });
    const line = size(
      plan,
      ring([
        [-20, -15],
        [20, -15],
        [-20, 15],
        [20, 15],
      ]),
      ground,
      true,
    );
    expect(line.checks.length).toBeGreaterThan(9);
    for (const check of line.checks) {
      expect(messageOf(check), check.id).toMatch(/^\S.*\.$/);
      expect(remedyOf(check), check.id).toMatch(/^\S.*\.$/);
      expect(messageOf(check) + remedyOf(check), check.id).not.toMatch(
        /NaN|undefined|Infinity|null|–/,
      );
      expect(check.fromM).toBeGreaterThanOrEqual(0);
      expect(check.toM).toBeGreaterThanOrEqual(check.fromM);
      expect(check.toM).toBeLessThanOrEqual(line.totals.lengthM);
    }
    const grades = line.checks.map((check) => ["stop", "caution", "note"].indexOf(check.severity));
    expect(grades).toEqual([...grades].sort());
  });
});

describe("height", () => {
  const hollow = (bottomM: number) =>
    groundOf((x, y) => (y < 0 && Math.abs(x) < 6 ? bottomM : 100));

  it("over the limit: the stretch, how high, how long, marked where it is worst", () => {
    const plan = at(3.5);
    const [check, ...more] = found("over-limit", plan, RING, hollow(100 - 1.5 * FOOT_M));
    expect(more).toEqual([]);
    expect(check).toMatchObject({ severity: "stop" });
    expect(check!.fromM).toBeGreaterThan(13);
    expect(check!.toM).toBeLessThan(27);
    expect(messageOf(check)).toContain("up to 5.0 ft above");
    expect(messageOf(check)).toContain("height limit of 4.0 ft");
    expect(messageOf(check)).toMatch(/^0\+4\d to 0\+8\d: /);
    expect(messageOf(check, "metric")).toMatch(
      /^0\+01\d to 0\+02\d: up to 1\.52 m .* height limit of 1\.22 m/,
    );
    expect(check!.at![1]).toBeLessThan(HOUSE.outline[0]![1]);
    expect(found("over-limit", plan)).toEqual([]);
  });

  it("is judged on the lowest ground under the base, not on the centre line", () => {
    const steep = groundOf((_x, y) => 100 + 0.3 * (y + 15));
    const plan = planWith(100 + 2.8 * FOOT_M, SOUND);
    const line = size(
      plan,
      openLine([
        [-20, -15],
        [20, -15],
      ]),
      steep,
      true,
    );
    expect(line.stations[0]!.heightM!).toBeLessThan(4 * FOOT_M);
    expect(line.checks.map((check) => check.id)).toContain("over-limit");
  });

  it("over 3 ft: bond trench, with its size", () => {
    const [check] = found("bond-trench", at(3.2));
    expect(check).toMatchObject({
      severity: "caution",
      source: expect.stringContaining("NDSU-11"),
    });
    expect(messageOf(check)).toContain("The whole line");
    expect(remedyOf(check)).toContain("18 to 24 in");
    expect(found("bond-trench", at(3))).toEqual([]);
  });

  it("raise reserve: past the limit is a caution, too narrow a base a note", () => {
    const raise = { practice: { raiseM: FOOT_M } };
    expect(found("room-to-raise", at(3.5, raise))).toMatchObject([{ severity: "caution" }]);
    const [narrow, ...more] = found("room-to-raise", at(1, raise));
    expect(more).toEqual([]);
    expect(narrow).toMatchObject({ severity: "note" });
    expect(messageOf(narrow)).toContain("1.5 ft");
    expect(found("room-to-raise", at(2.5, raise))).toEqual([]);
  });

  it("raise reserve: several stretches come as one, with their whole length", () => {
    const waves = groundOf((x) => 100 + 0.5 * Math.sign(Math.sin(x / 4)) + 0.5);
    const checks = found("room-to-raise", at(6.5, { practice: { raiseM: FOOT_M } }), RING, waves);
    expect(checks.length).toBeLessThanOrEqual(2);
    expect(messageOf(checks[0])).toContain("stretches");
  });
});

describe("ground", () => {
  it("no data: a stop, merged into one stretch when two holes are nearer than two stakes", () => {
    const holes = groundOf((x, y) =>
      y < 0 && [-10, -6, 10].some((m) => Math.abs(x - m) < 1) ? Number.NaN : 100,
    );
    const checks = found("no-ground", two(), RING, holes);
    expect(checks).toHaveLength(2);
    expect(checks[0]!.severity).toBe("stop");
    expect(messageOf(checks[0])).toContain("not in the totals");
    expect(checks[0]!.toM - checks[0]!.fromM).toBeGreaterThan(5);
  });

  it("no data over the closing point of a ring: two parts within the line, one message, one mark", () => {
    const hole = groundOf((x, y) => (Math.hypot(x + 20, y + 15) < 3 ? Number.NaN : 100));
    const line = size(two(), RING, hole, true);
    const checks = line.checks.filter((check) => check.id === "no-ground");
    expect(checks).toHaveLength(2);
    expect(checks.map((check) => messageOf(check))).toEqual([
      messageOf(checks[0]),
      messageOf(checks[0]),
    ]);
    expect(messageOf(checks[0])).toContain("over the closing point");
    expect(checks.filter((check) => check.at !== null)).toHaveLength(1);
    const [head, tail] = [...checks].sort((a, b) => a.fromM - b.fromM);
    expect(head!.fromM).toBe(0);
    expect(tail!.toM).toBeCloseTo(line.totals.lengthM, 9);
  });

  it("a side that never meets the ground: a stop", () => {
    const bank = groundOf((_x, y) => (y < -15.2 ? 100 + 2 * (y + 15.2) : 100));
    expect(found("open-toe", two(), RING, bank)).toMatchObject([{ severity: "stop" }]);
    expect(found("open-toe", two())).toEqual([]);
  });

  it("cross-fall: beyond half the height by default, and as set", () => {
    const slope = groundOf((_x, y) => 100 + 0.25 * y);
    const line = openLine([
      [-20, 0],
      [20, 0],
    ]);
    expect(found("cross-slope", two(), line, slope)).toMatchObject([{ severity: "caution" }]);
    const allowed = two({ practice: { raiseM: 0, crossFallShare: 2 } });
    expect(found("cross-slope", allowed, line, slope)).toEqual([]);
    expect(
      found(
        "cross-slope",
        two(),
        line,
        groundOf((_x, y) => 100 + 0.05 * y),
      ),
    ).toEqual([]);
  });

  const ditch = (middle: number, half: number) =>
    groundOf((x, y) => 100 - (y < 0 ? Math.max(0, 0.6 - (0.6 / half) * Math.abs(x - middle)) : 0));

  it.each([-17.3, -9, 0, 4.4, 13.1])(
    "a ditch narrower than the stakes' distance, at x = %s",
    (x) => {
      const checks = found("narrow-low", two(), RING, ditch(x, 2));
      expect(checks).toHaveLength(1);
      expect(checks[0]!.fromM).toBeCloseTo(x + 20, 0);
      expect(checks[0]).toMatchObject({ severity: "caution", toM: checks[0]!.fromM });
    },
  );

  it("a narrow low place at the closing point of a ring is one", () => {
    const low = groundOf((x, y) => 100 - Math.max(0, 0.6 - 0.3 * Math.hypot(x + 20, y + 15)));
    expect(found("narrow-low", two(), RING, low)).toHaveLength(1);
  });

  it("is not said of a broad hollow, a shallow rut, or ground above the crest", () => {
    expect(found("narrow-low", two(), RING, ditch(0, 18))).toEqual([]);
    const rut = groundOf((x, y) => 100 - (y < 0 ? Math.max(0, 0.1 - 0.1 * Math.abs(x)) : 0));
    expect(found("narrow-low", two(), RING, rut)).toEqual([]);
    const high = groundOf((x, y) => ditch(0, 2).heightAt(x, y) + 5);
    expect(found("narrow-low", two(), RING, high)).toEqual([]);
  });

  it("cells over 3 m: a caution", () => {
    expect(found("coarse-raster", two(), RING, flat(100, 10))).toMatchObject([
      { severity: "caution" },
    ]);
    expect(found("coarse-raster", two(), RING, flat(100, 3))).toEqual([]);
    const slim = { ...flat(100, 1.66), longCellM: 3.43 };
    expect(found("coarse-raster", two(), RING, slim)).toHaveLength(1);
  });
});

describe("place", () => {
  it("closer than the setback: how close, to what", () => {
    const close = two({ structures: [structure("House", rectangle(17.5, 5))] });
    const [check, ...more] = found("setback", close);
    expect(more).toHaveLength(1);
    expect(check).toMatchObject({ severity: "caution" });
    expect(checkWords(check!, "us").source).toContain("NDSU-11");
    const roomM = 2.5 - 3 * FOOT_M;
    expect(messageOf(check)).toContain(`${(roomM / FOOT_M).toFixed(1)} ft of "House"`);
    const enough = two({
      structures: [structure("House", rectangle(20 - 3 * FOOT_M - 8 * FOOT_M - 0.01, 5))],
    });
    expect(found("setback", enough)).toEqual([]);
  });

  it("a base over the structure: a stop", () => {
    const over = two({ structures: [structure("House", rectangle(19.5, 5))] });
    const stops = found("setback", over).filter((check) => check.severity === "stop");
    expect(stops.length).toBeGreaterThan(0);
    expect(messageOf(stops[0])).toContain('overlaps "House"');
  });

  it("a thin structure between two samples' toes is not missed", () => {
    const post = two({
      structures: [
        HOUSE,
        structure("Well", [
          [20.3, 0.1],
          [20.6, 0.1],
          [20.6, 0.9],
          [20.3, 0.9],
        ]),
      ],
    });
    expect(
      found("setback", post).some((check) => messageOf(check).includes('overlaps "Well"')),
    ).toBe(true);
  });

  it("a ring that encloses nothing, cuts through, or leaves another building out", () => {
    const away = two({
      structures: [
        structure("House", [
          [100, 100],
          [110, 100],
          [110, 110],
        ]),
      ],
    });
    expect(found("enclosure", away)).toMatchObject([{ severity: "stop", at: expect.anything() }]);
    const cut = two({ structures: [structure("House", rectangle(30, 5))] });
    expect(found("enclosure", cut)).toMatchObject([
      { severity: "stop", message: expect.stringContaining("cuts through") },
    ]);
    const barn = structure("Barn", [
      [100, 0],
      [110, 0],
      [110, 10],
    ]);
    expect(found("enclosure", two({ structures: [HOUSE, barn] }))).toMatchObject([
      { severity: "note", message: expect.stringContaining("Barn") },
    ]);
    expect(found("enclosure", two())).toEqual([]);
    const round = two({ structures: [structure("Hall", rectangle(60, 60))] });
    expect(found("enclosure", round)).toMatchObject([{ severity: "stop" }]);
  });

  it("no structure at all: a note that it is not checked", () => {
    expect(found("enclosure", two({ structures: [] }))).toMatchObject([{ severity: "note" }]);
  });

  it("a no-go area that the base enters", () => {
    const noGo = [
      {
        id: "n",
        name: "Gas main",
        outline: lonLats([
          [-3, -16.5],
          [3, -16.5],
          [3, -15.7],
          [-3, -15.7],
        ]),
      },
    ];
    const checks = found("no-go", two({ noGo }));
    expect(checks).toMatchObject([
      { severity: "stop", message: expect.stringContaining('"Gas main"') },
    ]);
    const imported = noGo.map((area) => ({
      ...area,
      name: "14 River Ln",
      isImported: true as const,
    }));
    expect(found("no-go", two({ noGo: imported }))).toMatchObject([
      { severity: "caution", finding: { kind: "over-footprint", building: "14 River Ln" } },
    ]);
    const far = [
      {
        id: "n",
        name: "Gas main",
        outline: lonLats([
          [-3, -19],
          [3, -19],
          [3, -17],
          [-3, -17],
        ]),
      },
    ];
    expect(found("no-go", two({ noGo: far }))).toEqual([]);
  });
});

describe("the line itself", () => {
  const crossings = (corners: readonly Corner[], kind = ring) =>
    found("crosses-itself", two({ structures: [] }), kind(corners));

  it("crossing: a stop at both chainages", () => {
    const checks = crossings([
      [-20, -15],
      [20, -15],
      [-20, 15],
      [20, 15],
    ]);
    expect(checks).toHaveLength(1);
    expect(checks[0]).toMatchObject({ severity: "stop", at: expect.anything() });
    expect(checks[0]!.fromM).toBeCloseTo(40 + 25, 3);
  });

  it("touching: a corner on another leg, two corners at one place", () => {
    expect(
      crossings([
        [-20, -15],
        [20, -15],
        [20, 15],
        [0, -15],
        [-20, 15],
      ]).length,
    ).toBeGreaterThan(0);
    expect(
      crossings([
        [-20, 0],
        [0, 0],
        [20, -10],
        [20, 10],
        [0, 0],
        [-20, 10],
      ]).length,
    ).toBeGreaterThan(0);
  });

  it("doubling back on itself", () => {
    expect(
      crossings(
        [
          [0, 0],
          [20, 0],
          [5, 0],
        ],
        openLine,
      ),
    ).toHaveLength(1);
    expect(
      crossings([
        [0, 0],
        [20, 0],
        [20, 10],
        [-5, 0],
        [-15, 0],
      ]).length,
    ).toBeGreaterThan(0);
  });

  it("is not said of a sound ring, a triangle, a concave ring or a sharp corner", () => {
    expect(crossings(rectangle(20, 15))).toEqual([]);
    expect(
      crossings([
        [0, 0],
        [20, 0],
        [5, 15],
      ]),
    ).toEqual([]);
    expect(
      crossings([
        [-20, -15],
        [20, -15],
        [20, 15],
        [0, -10],
        [-20, 15],
      ]),
    ).toEqual([]);
    expect(
      crossings(
        [
          [0, 0],
          [20, 0],
          [1, 1],
        ],
        openLine,
      ),
    ).toEqual([]);
  });

  it("tie-in: an end below the water is a stop, within the freeboard a caution, at the crest sound", () => {
    const rising = (top: number) => groundOf((x) => 100 + Math.max(0, (x * top) / 20));
    const ends = (top: number) => {
      const line = openLine([
        [-20, 0],
        [20, 0],
      ]);
      return found("tie-in", two({ structures: [] }), line, rising(top));
    };
    expect(ends(1)).toMatchObject([{ severity: "stop", fromM: 0, toM: 0 }]);
    expect(messageOf(ends(1)[0])).toContain("2.0 ft below the top of levee");
    const partly = ends(1.5 * FOOT_M);
    expect(partly.map((check) => check.severity)).toEqual(["stop", "caution"]);
    expect(messageOf(partly[1])).toContain("freeboard");
    expect(found("tie-in", two())).toEqual([]);
  });
});

describe("water", () => {
  it("datum: asked for until an offset or a note is given", () => {
    const stage = { by: "stage", gaugeZeroM: 100, stageM: FOOT_M, datumNote: "" } as const;
    expect(found("datum", two({ water: stage }))).toMatchObject([
      { severity: "caution", message: expect.stringContaining("gauge zero") },
    ]);
    expect(found("datum", two({ water: { ...stage, datumOffsetM: 0 } }))).toEqual([]);
    expect(found("datum", two({ water: { datumNote: " " } }))).toHaveLength(1);
    expect(found("datum", two({ water: { datumNote: "NAVD 88, both" } }))).toEqual([]);
  });

  it("fall without a direction: a stop", () => {
    const water = { fallPerM: 0.0005 };
    expect(found("fall-direction", two({ water }))).toMatchObject([{ severity: "stop" }]);
    const [from, to] = lonLats([
      [0, 0],
      [50, 0],
    ]);
    expect(found("fall-direction", two({ water, flow: { from: from!, to: to! } }))).toEqual([]);
    expect(found("fall-direction", two({ water, flow: { from: from!, to: from! } }))).toHaveLength(
      1,
    );
  });

  it("freeboard below 1 ft", () => {
    expect(found("freeboard", two({ water: { freeboardM: 0.2 } }))).toMatchObject([
      { severity: "caution" },
    ]);
    expect(found("freeboard", two())).toEqual([]);
  });

  it("no ground below the water: to be fixed first, for a plan of no bags is more often a wrong level than dry ground", () => {
    expect(found("water-level", planWith(90, SOUND))).toMatchObject([{ severity: "stop" }]);
    expect(found("water-level", two())).toEqual([]);
  });
});

describe("bag and base", () => {
  const bagOf = (pounds: number, cubicFeet: number) =>
    two({
      section: {
        bag: {
          ...DEFAULT_SECTION.bag,
          filledMassKg: pounds * POUND_KG,
          placedVolumeM3: cubicFeet * FOOT_M ** 3,
        },
      },
    });

  it("over 40 lb a caution, over 50 lb a stop (EFT-94, MB)", () => {
    expect(found("heavy-bag", bagOf(40, 0.36))).toEqual([]);
    expect(found("heavy-bag", bagOf(45, 0.4))).toMatchObject([{ severity: "caution" }]);
    expect(found("heavy-bag", bagOf(55, 0.5))).toMatchObject([{ severity: "stop" }]);
  });

  it("weight and volume that fit no sand", () => {
    expect(found("bag-density", bagOf(36, 0.6))).toMatchObject([
      { message: expect.stringContaining("60 lb/cu ft") },
    ]);
    expect(found("bag-density", bagOf(36, 0.2))).toHaveLength(1);
    expect(found("bag-density", bagOf(33.6, 0.28))).toEqual([]);
  });

  it("a base below twice the height", () => {
    expect(found("narrow-base", two({ section: { baseRatio: 1.5 } }))).toMatchObject([
      { severity: "stop" },
    ]);
    expect(found("narrow-base", two({ section: { baseRatio: 2 } }))).toEqual([]);
  });
});
