import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import type { LonLat, Plan } from "../../shared/plan.ts";
import { validatePlan } from "../../shared/plan-check.ts";
import { planPlane } from "../../shared/plan-plane.ts";
import { readBaseAddress } from "../../src/live/base-map.ts";
import { cornerStep, distinct, rounded, stepNote } from "../../src/map/corner-step.ts";
import { drawnEdit } from "../../src/map/finish-shape.ts";
import { readAddress, SCHEMES, tileAddress } from "../../src/map/tile-address.ts";
import { waterAt, waterTint } from "../../src/map/water-level.ts";
import { said } from "../helpers/said.ts";

const SQUARE: LonLat[] = [
  [-93.97, 42.99],
  [-93.969, 42.99],
  [-93.969, 42.991],
  [-93.97, 42.991],
];
const polygon = (corners: readonly LonLat[]) => ({
  type: "Polygon" as const,
  coordinates: [[...corners, corners[0]!].map((at) => [...at])],
});

describe("a corner step", () => {
  it("names what was moved, put in or taken out", () => {
    const moved = SQUARE.map((at, i): LonLat => (i === 2 ? [-93.9685, 42.992] : at));
    const inserted: LonLat[] = [...SQUARE.slice(0, 1), [-93.9695, 42.99], ...SQUARE.slice(1)];
    expect(stepNote(cornerStep(SQUARE, moved)!, "B")).toBe("Move corner 3 of B");
    expect(stepNote(cornerStep(SQUARE, inserted)!, "B")).toBe("Insert corner 2 in B");
    expect(stepNote(cornerStep(SQUARE, SQUARE.slice(0, 3))!, "B")).toBe("Remove corner 4 of B");
    expect(cornerStep(SQUARE, [...SQUARE])).toBeNull();
  });

  it("finds the corner whichever it is", () => {
    fc.assert(
      fc.property(fc.nat(SQUARE.length - 1), fc.boolean(), (index, remove) => {
        const after = remove
          ? SQUARE.filter((_, i) => i !== index)
          : SQUARE.map((at, i): LonLat => (i === index ? [at[0] + 1e-6, at[1]] : at));
        const step = cornerStep(SQUARE, after);
        expect(step).toEqual({ kind: remove ? "remove" : "move", index });
      }),
      { seed: 11 },
    );
  });

  it("rounds to nine decimals and drops repeated corners", () => {
    expect(rounded([-93.1234567894, 42.9999999996])).toEqual([-93.123456789, 43]);
    expect(distinct([SQUARE[0]!, SQUARE[0]!, SQUARE[1]!, SQUARE[0]!], true)).toEqual(
      SQUARE.slice(0, 2),
    );
    expect(distinct([SQUARE[0]!, SQUARE[1]!, SQUARE[0]!], false)).toHaveLength(3);
  });
});

describe("a finished drawing", () => {
  it("becomes the chosen alternative under the letter of its place", () => {
    const first = drawnEdit("draw-ring", polygon(SQUARE), EMPTY_PLAN);
    if (!first.ok) throw new Error(said(first.failure).message);
    const plan = first.value.change(EMPTY_PLAN);
    expect(first.value.note).toBe("Draw ring A");
    expect(plan.alignments[0]).toMatchObject({ name: "A", kind: "ring", corners: SQUARE });
    expect(plan.chosenId).toBe(plan.alignments[0]!.id);
    const line = {
      type: "LineString" as const,
      coordinates: SQUARE.slice(0, 3).map((at) => [...at]),
    };
    const second = drawnEdit("draw-line", line, plan);
    if (!second.ok) throw new Error(said(second.failure).message);
    const both = second.value.change(plan);
    expect(both.alignments.map((each) => each.name)).toEqual(["A", "B"]);
    expect(new Set(both.alignments.map((each) => each.id)).size).toBe(2);
    expect(validatePlan(both).ok).toBe(true);
  });

  it("is refused with what to do when it has too few corners, and nothing is lost", () => {
    const flat = polygon([SQUARE[0]!, SQUARE[1]!, SQUARE[0]!]);
    for (const tool of ["draw-ring", "draw-structure", "draw-no-go"] as const) {
      const outcome = drawnEdit(tool, flat, EMPTY_PLAN);
      expect(outcome).toMatchObject({ ok: false, failure: { code: "draw/too-few" } });
    }
    const point = { type: "Point" as const, coordinates: [-93.97, 42.99] };
    expect(drawnEdit("draw-flow", point, EMPTY_PLAN).ok).toBe(false);
  });

  it("makes structures, no-go areas, flow and gauge that the plan accepts", () => {
    const line = { type: "LineString" as const, coordinates: [[...SQUARE[0]!], [...SQUARE[2]!]] };
    const point = { type: "Point" as const, coordinates: [-93.97, 42.99] };
    const steps = [
      drawnEdit("draw-structure", polygon(SQUARE), EMPTY_PLAN),
      drawnEdit("draw-no-go", polygon(SQUARE), EMPTY_PLAN),
      drawnEdit("draw-flow", line, EMPTY_PLAN),
      drawnEdit("place-gauge", point, EMPTY_PLAN),
    ];
    const plan = steps.reduce(
      (now: Plan, step) => (step.ok ? step.value.change(now) : now),
      EMPTY_PLAN,
    );
    expect(plan.structures).toHaveLength(1);
    expect(plan.noGo).toHaveLength(1);
    expect(plan.flow).toEqual({ from: SQUARE[0], to: SQUARE[2] });
    expect(plan.gauge?.at).toEqual([-93.97, 42.99]);
    expect(validatePlan(plan).ok).toBe(true);
  });
});

describe("the water on the map", () => {
  const at: LonLat = [-93.97, 42.99];
  const plane = planPlane(at);
  const downstream = plane.toLonLat(300, 400);
  const water = { ...EMPTY_PLAN.water, by: "elevation" as const, elevationM: 264, fallPerM: 0.002 };

  it("is one level without a fall or without a direction", () => {
    expect(waterTint({ ...EMPTY_PLAN, water })).toEqual({ levelM: 264, fall: null });
    const flow = { from: at, to: downstream };
    expect(waterTint({ ...EMPTY_PLAN, water: { ...water, fallPerM: 0 }, flow }).fall).toBeNull();
    expect(waterTint({ ...EMPTY_PLAN, water, flow: { from: at, to: at } }).fall).toBeNull();
  });

  it("falls along the flow: 500 m at 2 per thousand is 1 m", () => {
    const plan: Plan = { ...EMPTY_PLAN, water, flow: { from: at, to: downstream } };
    expect(waterAt(plan, at)).toBeCloseTo(264, 6);
    expect(waterAt(plan, downstream)).toBeCloseTo(263, 4);
    const { fall } = waterTint(plan);
    expect(fall).toMatchObject({ at, fallPerM: 0.002 });
    const [x, y] = plane.toPlane(fall!.toward);
    expect(x / y).toBeCloseTo(0.75, 9);
  });
});

describe("addresses", () => {
  it("of tiles carry the request there and back", () => {
    const fall = { at: SQUARE[0]!, toward: SQUARE[1]!, fallPerM: 0.001 };
    const address = tileAddress(SCHEMES.water, 3, { fall });
    const asked = address.replace("{z}", "17").replace("{x}", "31322").replace("{y}", "48167");
    expect(readAddress(asked)).toEqual({ z: 17, x: 31322, y: 48167, fall, turn: 3 });
    expect(tileAddress(SCHEMES.water, 4, { fall })).not.toBe(address);
    expect(() => readAddress("https://elsewhere/1/2/3")).toThrow();
  });

  it("of base maps need a web address with all three parts", () => {
    expect(readBaseAddress(" https://tiles.example/{z}/{x}/{y}.png ").ok).toBe(true);
    for (const bad of [
      "",
      "ftp://a/{z}/{x}/{y}",
      "https://a/{z}/{x}",
      "javascript:{z}{x}{y}",
      "https://a b/{z}/{x}/{y}",
    ]) {
      expect(readBaseAddress(bad).ok).toBe(false);
    }
  });
});
