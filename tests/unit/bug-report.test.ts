import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bugReport } from "../../shared/bug-report.ts";
import { asFailure } from "../../shared/failure.ts";
import type { LonLat } from "../../shared/plan.ts";
import { readPlanFile } from "../../shared/plan-file.ts";
import { withoutPlaces } from "../../shared/without-places.ts";
import { anyPlan } from "../helpers/arbitrary-plan.ts";
import { said } from "../helpers/said.ts";
import { ROOT } from "../helpers/terminal.ts";

const read = readPlanFile(readFileSync(`${ROOT}sample-terrain/demo.geojson`, "utf8"));
if (!read.ok) throw new Error(said(read.failure).message);
const DEMO = read.value.plan;
const RUNNING = { version: "1.2.3", commit: null, browser: "A browser" };
const PLACED = { withPlaces: true };
const UNPLACED = { withPlaces: false };

function thrownAt(
  message: string,
  address = "https://county.example/plans/assets/index-a1.js:1:22",
) {
  const error = new TypeError(message, { cause: new Error("the first cause") });
  error.stack = `TypeError: ${message}\n    at sizeLine (${address})`;
  return asFailure(error);
}

describe("the report of a bug", () => {
  it("has version, commit, browser, stack and cause", () => {
    const report = bugReport(thrownAt("No such corner"), DEMO, RUNNING, UNPLACED);
    expect(report).toContain("Drystead 1.2.3, commit not known");
    expect(report).toContain("Browser: A browser");
    expect(report).toContain("should not have: No such corner (unexpected)");
    expect(report).toContain("at sizeLine (index-a1.js:1:22)");
    expect(report).toMatch(/Caused by Error: the first cause/);
    const built = { ...RUNNING, commit: "abc123" };
    expect(bugReport(thrownAt("x"), DEMO, built, UNPLACED)).toContain("commit abc123");
  });

  it("leaves out the plan's places, names and files, and what a message quotes of them", () => {
    const [building] = DEMO.structures;
    const message = `Cannot read ${building?.name} of "jane/field 7.tif" at -96.78123, 46.9 or 667000 in ${DEMO.title}`;
    const report = bugReport(thrownAt(message), DEMO, RUNNING, UNPLACED);
    for (const secret of secretsOf(DEMO)) expect(report).not.toContain(secret);
    for (const secret of ["jane", "96.78", "46.9", "667000", "county.example"]) {
      expect(report).not.toContain(secret);
    }
    expect(report).toContain('"limitM": 1.2192');
    expect(report).toContain('"kind": "ring"');
  });

  it("has the plan as it is saved, and the text as it is, once the person says so", () => {
    const report = bugReport(thrownAt(`In ${DEMO.title}`), DEMO, RUNNING, PLACED);
    for (const secret of secretsOf(DEMO)) expect(report).toContain(secret);
    expect(report).toContain("county.example");
  });

  it("leaves out every text of any plan, whatever the message has of it", () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const texts = textsIn(plan).filter((text) => text.length >= 5);
        const report = bugReport(thrownAt(`In ${texts.join("; ")}`), plan, RUNNING, UNPLACED);
        const said = report.split("Plan, without")[0]!.replace(/\[(?:name|address|number)\]/g, "");
        expect(texts.filter((text) => said.includes(text))).toEqual([]);
      }),
      { numRuns: 100, seed: 52 },
    );
  });

  it("leaves out an address with the name of its file, its host alone, and numbers in any form", () => {
    const [file] = DEMO.terrain;
    const address = "https://gis.cedar.example/lidar/cedar-falls.tif";
    const plan = { ...DEMO, terrain: [{ ...file!, address }] };
    const message = `No range of ${address}, https://other.example/fargo.tif: gis.cedar.example, at -9.67812e1`;
    const report = bugReport(thrownAt(message), plan, RUNNING, UNPLACED);
    expect(report).not.toMatch(/cedar|fargo|other\.example|67812/);
    expect(report).toContain("at sizeLine (index-a1.js:1:22)");
  });

  it("never has a coordinate, a name or a note of any plan", () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const text = JSON.stringify(withoutPlaces(plan));
        expect(text).not.toMatch(/"(name|at|from|to|outline|path|title|datumNote|note|file)":/);
        const degrees = new Set(cornersOf(plan).flat());
        const kept = numbersIn(withoutPlaces(plan)).filter((number) => number % 1 !== 0);
        expect(kept.filter((number) => degrees.has(number))).toEqual([]);
      }),
      { numRuns: 100, seed: 51 },
    );
  });
});

function secretsOf({ title, structures, alignments, terrain }: typeof DEMO): string[] {
  const names = [...structures, ...terrain].map(({ name }) => name);
  const degrees = [
    ...structures.map(({ outline }) => outline),
    ...alignments.map((a) => a.corners),
  ];
  return [title, ...names, ...degrees.flat(2).map(String)].filter((each) => each.length > 3);
}

/** What a person or a file wrote; one of a few words of ours is none. */
function textsIn(part: unknown, key = ""): string[] {
  const ours = ["by", "levels", "soil", "uplift", "verticalUnit", "is", "gate", "kind", "answer"];
  if (typeof part === "string") return ours.includes(key) ? [] : [part];
  if (typeof part !== "object" || part === null) return [];
  return Object.entries(part).flatMap(([name, value]) => textsIn(value, name));
}

function cornersOf({ structures, alignments, noGo }: typeof DEMO): LonLat[] {
  return [...structures, ...noGo]
    .flatMap(({ outline }) => outline)
    .concat(alignments.flatMap((a) => a.corners));
}

function numbersIn(value: unknown): number[] {
  if (typeof value === "number") return [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}
