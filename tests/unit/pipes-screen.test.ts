import { describe, expect, it } from "vitest";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import type { LonLat, Plan } from "../../shared/plan.ts";
import { validatePlan } from "../../shared/plan-check.ts";
import { pipeStateWords, pipeStops, plugRows, plugsWords } from "../../shared/words/pipes.ts";
import { changeListed, deleteListed } from "../../src/document/edits/listed.ts";
import { plan, replacePlan, undo } from "../../src/document/store.ts";
import { drawnEdit } from "../../src/map/finish-shape.ts";
import { planShapes } from "../../src/map/plan-shapes.ts";
import { watchPlaces } from "../../src/pages/watch-places.ts";
import { groundOf, lonLats, planWith, rectangle, ring, size } from "../helpers/grounds.ts";

const [WEST, EAST] = lonLats([
  [-30, 0],
  [-10, 0],
]) as [LonLat, LonLat];
const lineOf = (...places: readonly LonLat[]) => ({
  type: "LineString" as const,
  coordinates: places.map((at) => [...at]),
});
const pointAt = (at: LonLat) => ({ type: "Point" as const, coordinates: [...at] });

function afterDrawing(): Plan {
  const culvert = drawnEdit("draw-culvert", lineOf(WEST, EAST), EMPTY_PLAN);
  const drain = drawnEdit("place-drain", pointAt(EAST), EMPTY_PLAN);
  if (!culvert.ok || !drain.ok) throw new Error("refused");
  return drain.value.change(culvert.value.change(EMPTY_PLAN));
}

describe("drawing a culvert and a drain", () => {
  it("makes them open, with nothing known but the place", () => {
    const drawn = afterDrawing();
    expect(validatePlan(drawn).ok).toBe(true);
    expect(drawn.culverts).toMatchObject([
      { name: "Culvert 1", invertsM: [null, null], gate: null, plugged: false },
    ]);
    expect(drawn.drains).toMatchObject([{ name: "Drain 1", joinsOutside: null, plugged: false }]);
  });

  it("refuses a culvert of one end", () => {
    expect(drawnEdit("draw-culvert", lineOf(WEST), EMPTY_PLAN).ok).toBe(false);
  });

  it("shows on the map whether each is plugged, by another symbol", () => {
    const drawn = afterDrawing();
    const icons = (of: Plan) =>
      planShapes({ plan: of, chosenId: null, showAll: true }).features.flatMap(
        ({ properties }) => properties?.icon ?? [],
      );
    expect(icons(drawn)).toEqual(["pipe-open", "pipe-open", "drain-open"]);
    const plugged = { ...drawn, culverts: drawn.culverts!.map((c) => ({ ...c, plugged: true })) };
    expect(icons(plugged)).toEqual(["pipe-plugged", "pipe-plugged", "drain-open"]);
  });

  it("is changed through the one gate, and undone", () => {
    replacePlan(afterDrawing(), "Open a plan");
    const [culvert] = plan.peek().culverts!;
    expect(changeListed("culverts", culvert!, { plugged: true, invertsM: [99, null] }).ok).toBe(
      true,
    );
    expect(plan.peek().culverts).toMatchObject([{ plugged: true, invertsM: [99, null] }]);
    expect(changeListed("culverts", culvert!, { sizeM: 99 }).ok).toBe(false);
    changeListed("drains", plan.peek().drains![0]!, { joinsOutside: true });
    expect(plan.peek().drains).toMatchObject([{ joinsOutside: true }]);
    undo();
    undo();
    expect(plan.peek().culverts).toMatchObject([{ plugged: false }]);
    deleteListed("culverts", plan.peek().culverts![0]!);
    expect(plan.peek().culverts).toBeUndefined();
  });
});

describe("what a line's pipes ask for", () => {
  const line = ring(rectangle(20, 15));
  const whole: Plan = {
    ...planWith(100.5),
    ...afterDrawing(),
    ...{ water: planWith(100.5).water, alignments: [line] },
  };
  const sized = size(
    whole,
    line,
    groundOf(() => 100),
  );

  it("is a plug for each in the order, and nothing for a culvert that no line meets", () => {
    const rows = plugRows(whole, sized.checks, "us");
    expect(rows.map(({ name, amount }) => [name, amount])).toEqual([
      ['Culvert "Culvert 1"', "1"],
      ['Floor drain "Drain 1"', "1"],
    ]);
    expect(rows[0]!.note).toContain("Measure its inside first");
    expect(plugRows(whole, [], "us")).toEqual([]);
    expect(plugsWords(whole, sized.checks, "us")).toBe("2");
    expect(plugsWords(whole, [], "us")).toBeNull();
    const plugged = { ...whole, culverts: whole.culverts!.map((c) => ({ ...c, plugged: true })) };
    expect(plugsWords(plugged, sized.checks, "us")).toBe("1 + 1 spare");
  });

  it("is a stop of the round where the line crosses it, however many stops there are", () => {
    const stops = watchPlaces(sized, sized.holding!, null, "us");
    expect(stops.flatMap(({ reasons }) => reasons).join()).toContain('culvert "Culvert 1" is open');
    expect(stops.length).toBeLessThanOrEqual(4);
    expect(pipeStops(sized.checks).map(({ name }) => name)).toEqual(['"Drain 1"']);
  });

  it("is said in its row: open, and not known until it is measured", () => {
    const [culvert] = whole.culverts!;
    const traced = {
      ...({ id: "c", name: "Culvert 1", kind: "culvert", at: WEST, plugged: false } as const),
      ...{ invertsM: [null, 99] as const, groundM: null },
    };
    const words = (known: boolean) =>
      pipeStateWords(
        culvert!,
        { ...traced, isKnown: known, passesAboveM: known ? 99 : null },
        "metric",
      );
    expect(words(false)).toBe("Open. Its inverts are not known: measure them.");
    expect(words(true)).toBe("Open. Water passes above 99.00 m.");
  });
});
