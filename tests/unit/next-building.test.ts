import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { planForNext } from "../../shared/next-plan.ts";
import { readPlanFile } from "../../shared/plan-file.ts";
import { said } from "../helpers/said.ts";
import { sample } from "../helpers/screen.ts";

const read = readPlanFile(readFileSync(sample("demo.geojson"), "utf8"));
if (!read.ok) throw new Error(said(read.failure).message);
const { plan } = read.value;

describe("a plan for the next building on the same river", () => {
  it("has ground, gauge, water, forecast, crew and levee type of the former, as they were", () => {
    const next = planForNext(plan);
    for (const part of ["terrain", "ground", "gauge", "flow", "water", "section"] as const) {
      expect(next[part]).toEqual(plan[part]);
    }
    expect(next.practice.people).toBe(60);
    expect(next.time).toEqual(plan.time);
    expect(next.time?.forecast?.rows.length).toBeGreaterThan(1);
    expect(next.holding).toEqual(plan.holding);
  });

  it("has the culverts, drains and roads that are there, plugged or not", () => {
    const path = plan.structures[0]!.outline.slice(0, 2);
    const there = {
      culverts: [
        {
          id: "c",
          name: "Drive",
          path,
          invertsM: [null, null],
          sizeM: 0.6,
          gate: null,
          plugged: false,
        },
      ],
      drains: [
        { id: "d", name: "Sump", at: path[0]!, kind: "sewer", joinsOutside: true, plugged: true },
      ],
      possibleCulverts: [{ id: "p", name: "Bank", path, answer: "look" }],
      roads: [{ id: "r", name: "Lane", path }],
    } as const;
    expect(planForNext({ ...plan, ...there })).toMatchObject(there);
  });

  it("has none of its buildings, lines, no-go areas, title and hour to leave", () => {
    const leave = { by: "stage", levelM: 9.144, at: null, note: "Ford on the lane" } as const;
    const noGo = [{ id: "no-go-1", name: "Tank", outline: plan.structures[0]!.outline }];
    const next = planForNext({ ...plan, leave, noGo });
    expect(plan.structures.length).toBe(3);
    expect(next).toMatchObject({ structures: [], alignments: [], noGo: [], chosenId: null });
    expect(next.leave).toBeNull();
    expect(next.title).not.toBe(plan.title);
  });
});
