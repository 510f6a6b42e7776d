import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import type { Alignment, Plan } from "../../shared/plan.ts";
import { readPlanFile, writePlanFile } from "../../shared/plan-file.ts";
import { heightOfInstrumentM } from "../../shared/survey/leveling.ts";
import { parseReadings, type ReadingInputs } from "../../shared/survey/parse-readings.ts";
import { withReadings } from "../../shared/survey/placed-readings.ts";
import { benchmarkMark, benchmarkWords } from "../../shared/words/build-sheet.ts";
import { checkWords } from "../../shared/words/checks.ts";
import { notPlacedWords } from "../../shared/words/work-places.ts";
import { flat, openLine, planWith, rectangle, ring, size } from "../helpers/grounds.ts";
import { said } from "../helpers/said.ts";

const STEP_M = 25 * FOOT_M;
const STRAIGHT = openLine([
  [0, 0],
  [60, 0],
]);
const PLAN: Plan = { ...planWith(100.5), alignments: [STRAIGHT] };

function read(readings: readonly (readonly [m: number, groundM: number])[], line = STRAIGHT) {
  const taken = readings.map(([chainageM, groundM]) => ({ chainageM, groundM }));
  return withReadings({ ...PLAN, alignments: [line] }, line, taken);
}

function groundAt(plan: Plan, chainageM: number, line: Alignment = STRAIGHT) {
  const { walk } = size(plan, line, flat(100));
  const i = walk.chainageM.findIndex((m) => m >= chainageM - 1e-9);
  return walk.groundM[i]!;
}

describe("ground read in the field", () => {
  const plan = read([
    [STEP_M, 99.8],
    [3 * STEP_M, 99.6],
  ]);

  it("replaces the elevation data at its stake, and between two stakes by a straight line of the difference", () => {
    const { stations } = size(plan, STRAIGHT, flat(100));
    const at = (m: number) => stations.find(({ chainageM }) => Math.abs(chainageM - m) < 0.01)!;
    expect(at(STEP_M)).toMatchObject({ groundFrom: "reading" });
    expect(at(STEP_M).groundM).toBeCloseTo(99.8, 6);
    expect(at(2 * STEP_M)).toMatchObject({ groundFrom: "between" });
    expect(at(2 * STEP_M).groundM).toBeCloseTo(99.7, 6);
    expect(at(2 * STEP_M).heightM).toBeCloseTo(100.5 + 0.3048 - 99.7, 6);
    expect(at(3 * STEP_M).groundM).toBeCloseTo(99.6, 6);
  });

  it("never goes beyond its last stake", () => {
    expect(groundAt(plan, STEP_M - 0.5)).toBe(100);
    expect(groundAt(plan, 3 * STEP_M + 0.5)).toBe(100);
    expect(size(plan, STRAIGHT, flat(100)).stations[0]).not.toHaveProperty("groundFrom");
  });

  it("does not bridge stakes more than two intervals apart, and says where it is", () => {
    const apart = read([
      [STEP_M, 99.8],
      [4 * STEP_M, 99.6],
    ]);
    expect(groundAt(apart, 2 * STEP_M)).toBe(100);
    expect(size(apart, STRAIGHT, flat(100)).surveyed).toMatchObject({ stretches: [] });
    const { stretches } = size(plan, STRAIGHT, flat(100)).surveyed!;
    expect(stretches).toHaveLength(1);
    expect(stretches[0]!.fromM).toBeCloseTo(STEP_M, 4);
    expect(stretches[0]!.toM).toBeCloseTo(3 * STEP_M, 4);
  });

  it("takes more bags where the ground is lower", () => {
    const before = size(PLAN, STRAIGHT, flat(100)).totals.bags;
    expect(size(plan, STRAIGHT, flat(100)).totals.bags).toBeGreaterThan(before);
  });

  it("runs over a ring's closing point", () => {
    const round = ring(rectangle(20, 20));
    const closing = read(
      [
        [155, 99],
        [0, 99.5],
      ],
      round,
    );
    const { walk, stations } = size(closing, round, flat(100));
    const i = walk.chainageM.findIndex((m) => m >= 157);
    const share = (walk.chainageM[i]! - 155) / 5;
    expect(walk.groundM[i]).toBeCloseTo(99 + share * 0.5, 6);
    expect(stations.at(-1)).toMatchObject({
      groundFrom: "reading",
    });
  });

  it("belongs to its place: a line that was moved away does not use it", () => {
    const moved = openLine([
      [0, 1],
      [60, 1],
    ]);
    const { surveyed, stations } = size(plan, moved, flat(100));
    expect(surveyed).toMatchObject({ readings: [], offLine: 2 });
    expect(stations.every(({ groundM }) => groundM === 100)).toBe(true);
  });

  it("is no ground where there is no elevation data beside it", () => {
    const { surveyed, stations } = size(plan, STRAIGHT, {
      heightAt: (x) => (Math.abs(x - STEP_M) < 0.6 ? Number.NaN : 100),
      cellM: 1,
    });
    expect(surveyed!.readings).toHaveLength(1);
    expect(surveyed!.withoutDataM[0]).toBeCloseTo(STEP_M, 4);
    const at = stations.find(({ chainageM }) => Math.abs(chainageM - STEP_M) < 0.01)!;
    expect(at.groundM).toBeNull();
  });

  it("gives a caution where it differs by more than the accuracy of the elevation data, and none within it", () => {
    const found = (plan: Plan) =>
      size(plan, STRAIGHT, flat(100)).checks.filter(({ id }) => id === "ground-reading");
    const [caution, ...more] = found(plan);
    expect(more).toEqual([]);
    expect(caution!.severity).toBe("caution");
    expect(checkWords(caution!, "us").message).toContain("0+75: the ground was read 1.31 ft lower");
    expect(found(read([[STEP_M, 99.95]]))).toEqual([]);
  });

  it("is in the plan file and comes back; a plan without any is written as before", () => {
    const whole: Plan = {
      ...plan,
      survey: {
        ...plan.survey!,
        benchmark: { name: "BM 1", elevationM: 101.25, at: [-96.78, 46.88] },
        backsightM: 1.5,
      },
    };
    const again = readPlanFile(writePlanFile(whole));
    expect(again.ok && again.value.plan.survey).toEqual(whole.survey);
    expect(writePlanFile(PLAN)).not.toContain("survey");
    const broken = readPlanFile(
      writePlanFile(whole).replace('"backsightM": 1.5', '"backsightM": 99'),
    );
    expect(!broken.ok && said(broken.failure).message).toContain("backsight");
  });

  it("replaces what was read at the same stake before", () => {
    const once = read([[STEP_M, 99.8]]);
    const twice = withReadings(once, STRAIGHT, [{ chainageM: STEP_M, groundM: 99.9 }]);
    expect(twice.survey!.readings).toHaveLength(1);
    expect(twice.survey!.readings[0]!.groundM).toBe(99.9);
  });
});

describe("a table of readings", () => {
  const INPUTS: ReadingInputs = {
    ...{ readAs: "rod", system: "us", lengthM: 262 },
    instrumentM: 879.6 * FOOT_M,
  };
  const parse = (text: string, changes: Partial<ReadingInputs> = {}) => {
    const outcome = parseReadings(text, { ...INPUTS, ...changes });
    return outcome.ok
      ? outcome.value.map(({ chainageM, groundM }) => [
          Number((chainageM / FOOT_M).toFixed(3)),
          Number((groundM / FOOT_M).toFixed(3)),
        ])
      : outcome.failure;
  };

  it("is stations and rod readings below the height of instrument, however it is divided", () => {
    const expected = [
      [0, 873.71],
      [225, 873.56],
    ];
    for (const text of [
      "0+00, 5.89\n2+25, 6.04",
      "0+00\t5.89\r\n2+25\t6.04\r\n",
      "0+00 5.89\n225 6.04",
    ]) {
      expect(parse(text)).toEqual(expected);
    }
    expect(parse("station;rod_m\n0+00;1.795")).toEqual([[0, 873.711]]);
  });

  it("is ground elevations where it says so; stakes without a figure are left out of a wider table", () => {
    expect(parse("0+00, 873.4", { readAs: "ground" })).toEqual([[0, 873.4]]);
    expect(parse("Station,Ground (ft),By\n0+25,873.5,AB\n0+50,,")).toEqual([[25, 873.5]]);
  });

  it("is refused with the number of the line, what was expected, and what came", () => {
    const refused = (text: string, changes: Partial<ReadingInputs> = {}) => {
      const failure = parse(text, changes);
      return Array.isArray(failure) ? null : `${failure.code} ${said(failure).message}`;
    };
    expect(refused("")).toMatch(/^readings\/empty/);
    expect(refused("0+00, 5.89\n2+x, 6.04")).toMatch(/^readings\/station Line 2: .*"2\+x"/);
    expect(refused("0+00, 5.89\n\n0+25, wet")).toMatch(/^readings\/value Line 3: .*"wet"/);
    expect(refused("0+00, 58.9")).toMatch(/^readings\/value Line 1: .*rod/);
    expect(refused("0+00, 5.89\n9+00, 5.9")).toMatch(/^readings\/outside Line 2/);
    expect(refused("0+25, 5.89\n0+50, 6\n25, 5.9")).toMatch(
      /^readings\/duplicate Line 3: .*line 1/,
    );
    expect(refused("0+00, 5.89, 7")).toMatch(/^readings\/columns Line 1/);
    expect(refused("station, height\n0+00, 5.89")).toMatch(/^readings\/columns Line 1: .*"height"/);
    expect(refused("station,ground_ft,top_of_levee_ft,height_ft\n0+00,1,2,3")).toMatch(
      /^readings\/columns Line 1/,
    );
    expect(refused("0+00, 5.89", { instrumentM: null })).toMatch(/^readings\/no-instrument/);
  });

  it("needs both benchmark and backsight for a height of instrument", () => {
    const benchmark = { name: "BM 1", elevationM: 267.13, at: null };
    expect(heightOfInstrumentM({ benchmark, backsightM: 0.97, readings: [] })).toBeCloseTo(
      268.1,
      9,
    );
    expect(heightOfInstrumentM({ benchmark, backsightM: null, readings: [] })).toBeNull();
    expect(heightOfInstrumentM({ benchmark: null, backsightM: 1, readings: [] })).toBeNull();
  });
});

describe("ground read beside the line", () => {
  const IN_FEET = { readAs: "ground", system: "us", lengthM: 60, instrumentM: null } as const;
  const TABLE = "station, offset_ft, ground_ft\n0+50, 12 L, 328.4\n0+50, 12, 328.1\n1+00, , 328.2";

  it("is typed with its offset: a side, or plus to the right", () => {
    const outcome = parseReadings(TABLE, IN_FEET);
    if (!outcome.ok) throw new Error(said(outcome.failure).message);
    const offsets = outcome.value.map(({ offsetM = 0 }) => Number(offsetM.toFixed(4)));
    expect(offsets).toEqual([3.6576, -3.6576, 0]);
  });

  it.each(["12 X", "far", "-3 L", "2000"])("refuses the offset %s, naming the line", (offset) => {
    const text = `station, offset_ft, ground_ft\n0+50, ${offset}, 328.4`;
    const outcome = parseReadings(text, IN_FEET);
    expect(outcome).toMatchObject({ ok: false, failure: { code: "readings/value" } });
    if (!outcome.ok) expect(said(outcome.failure).message).toContain("Line 2");
  });

  it("tells of the error of the elevation data there and changes no height", () => {
    const readings = [{ chainageM: 20, offsetM: 6, groundM: 100.4 }];
    const line = size(withReadings(PLAN, STRAIGHT, readings), STRAIGHT, flat(100));
    expect(line.surveyed).toMatchObject({ readings: [], offLine: 1 });
    const [beside] = line.surveyed!.beside!;
    expect(beside!.chainageM).toBeCloseTo(20, 3);
    expect(beside!.offsetM).toBeCloseTo(6, 3);
    expect(beside!.readM - beside!.dataM).toBeCloseTo(0.4, 6);
    expect(line.stations.every(({ groundM }) => groundM === 100)).toBe(true);
  });
});

describe("the benchmark on the build page", () => {
  const benchmark = { name: "BM 1, well pad", elevationM: 876.42 * FOOT_M, at: null };
  const backsightM = 3.18 * FOOT_M;

  it("has name, elevation, backsight and the height of instrument that they add up to", () => {
    const survey = { benchmark, backsightM, readings: [] };
    expect(benchmarkWords({ survey }, "us")).toBe(
      "Benchmark BM 1, well pad: 876.42 ft. Backsight 3.18, height of instrument 879.60.",
    );
    expect(benchmarkWords({ survey }, "metric")).toBe(
      "Benchmark BM 1, well pad: 267.13 m. Backsight 0.97, height of instrument 268.10.",
    );
  });

  it("has no height of instrument without a backsight, and no words without a benchmark", () => {
    const survey = { benchmark: { ...benchmark, name: " " }, backsightM: null, readings: [] };
    expect(benchmarkWords({ survey }, "us")).toBe(
      "Benchmark: 876.42 ft. Backsight not typed: height of instrument not known.",
    );
    const none = { benchmark: null, backsightM, readings: [] };
    expect(benchmarkWords({ survey: none }, "us")).toBeNull();
  });

  it("is marked by its name up to the comma; one that is not on the plan is to be marked by hand", () => {
    expect(benchmarkMark(benchmark)).toBe("BM 1");
    expect(benchmarkMark({ ...benchmark, name: " , well pad" })).toBe("Benchmark");
    expect(notPlacedWords([], false)).toContain("benchmark");
    expect(notPlacedWords([], true)).not.toContain("benchmark");
  });
});
