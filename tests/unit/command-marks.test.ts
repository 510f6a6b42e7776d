import { expect, test } from "vitest";
import { DEFAULT_GROUND, EMPTY_PLAN } from "../../shared/defaults.ts";
import { validatePlan } from "../../shared/plan-check.ts";
import { readPlanFile, writePlanFile } from "../../shared/plan-file.ts";
import { marksFrom } from "../../workers/command/marks.ts";
import { readWords } from "../../workers/command/words.ts";
import { madeFile } from "../helpers/raster-files.ts";

const KNOWN = { "--terrain": "many", "--no-data": "many", "--keep-value": "many" } as const;
const files = [madeFile("dem.tif", "12345"), madeFile("dem.prj", "1")];
const file = { name: "dem.tif", bytes: 5 };

const marks = (words: string[], kept: typeof DEFAULT_GROUND.marks = undefined) => {
  const { options } = readWords(words, KNOWN);
  return marksFrom(options, { ...EMPTY_PLAN, ground: { ...DEFAULT_GROUND, marks: kept } }, files);
};

test("a negative number is a value, also of an option that takes many", () => {
  const words = ["--no-data", "-99", "-.5", "--keep-value=0", "--terrain", "a.tif", "b.tif"];
  expect(marks(words)).toEqual([
    { value: -99, is: "hole" },
    { value: -0.5, is: "hole" },
    { value: 0, is: "ground" },
  ]);
});

test.each([
  [["--no-data", "lots"], "--no-data is a height of the raster, such as -99; came lots."],
  [["--no-data", "-99", "--keep-value", "-99.0"], "cannot be both"],
  [["--no-data"], "needs a value"],
])("%j cannot be followed", (words, message) => {
  expect(() => marks(words)).toThrow(message);
});

test("what the plan says of the very file counts, and the command line goes before it", () => {
  const kept = [
    { file, value: 0, is: "hole" as const },
    { file, value: -99, is: "hole" as const },
    { file: { name: "dem.tif", bytes: 6 }, value: 255, is: "hole" as const },
  ];
  expect(marks([], kept)).toEqual([
    { value: 0, is: "hole" },
    { value: -99, is: "hole" },
  ]);
  expect(marks(["--keep-value", "0"], kept)).toEqual([
    { value: 0, is: "ground" },
    { value: -99, is: "hole" },
  ]);
});

test("a plan file keeps what was said, and refuses what cannot be meant", () => {
  const answers = [{ file, value: -99, is: "hole" as const }];
  const plan = { ...EMPTY_PLAN, ground: { ...DEFAULT_GROUND, marks: answers } };
  const read = readPlanFile(writePlanFile(plan));
  expect(read.ok && read.value.plan.ground.marks).toEqual(answers);
  const wrong = { ...plan, ground: { ...plan.ground, marks: [{ ...answers[0], is: "water" }] } };
  const { ok, ...rest } = validatePlan(wrong);
  expect(ok).toBe(false);
  expect(JSON.stringify(rest)).toContain("hole, ground");
});
