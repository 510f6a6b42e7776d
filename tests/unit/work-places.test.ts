import { describe, expect, it } from "vitest";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import type { Exported } from "../../shared/exports/exported.ts";
import type { LonLat, Plan } from "../../shared/plan.ts";
import { validatePlan } from "../../shared/plan-check.ts";
import { readPlanFile } from "../../shared/plan-file.ts";
import { writePlanFile } from "../../shared/plan-write.ts";
import { notPlacedWords } from "../../shared/words/work-places.ts";
import { deleteListed, renameListed } from "../../src/document/edits/listed.ts";
import { plan, replacePlan, undo } from "../../src/document/store.ts";
import type { Tool } from "../../src/live/screen.ts";
import { drawnEdit } from "../../src/map/finish-shape.ts";
import { planShapes } from "../../src/map/plan-shapes.ts";
import { planFrames } from "../../src/pages/plan-frame.ts";
import { workPlaceLabels } from "../../src/pages/plan-work-places.tsx";
import { flat, lonLats, planWith, rectangle, ring, size } from "../helpers/grounds.ts";
import { said } from "../helpers/said.ts";

const [LANE, GATE, YARD] = lonLats([
  [-60, 0],
  [-10, 0],
  [5, 5],
]) as [LonLat, LonLat, LonLat];

const at = (place: LonLat) => ({ type: "Point" as const, coordinates: [...place] });
const along = (...places: readonly LonLat[]) => ({
  type: "LineString" as const,
  coordinates: places.map((each) => [...each]),
});

function drawn(tool: Tool, geometry: Parameters<typeof drawnEdit>[1], before: Plan): Plan {
  const edit = drawnEdit(tool, geometry, before);
  if (!edit.ok) throw new Error(said(edit.failure).message);
  return edit.value.change(before);
}

const PLACED = [
  ["place-pile", at(YARD)],
  ["place-pumps", at(YARD)],
  ["draw-truck-way", along(LANE, GATE)],
] as const;
const withPlaces = (before: Plan) =>
  PLACED.reduce((now, [tool, geometry]) => drawn(tool, geometry, now), before);

describe("work places", () => {
  it("are drawn, named, and written into the plan file and read from it as they were", () => {
    const made = withPlaces(EMPTY_PLAN);
    expect(validatePlan(made).ok).toBe(true);
    expect(made.workPlaces!.map(({ name }) => name)).toEqual([
      "Bag pile 1",
      "Pumps 1",
      "Truck way 1",
    ]);
    const read = readPlanFile(writePlanFile(made));
    expect(read.ok && read.value.plan.workPlaces).toEqual(made.workPlaces);
    expect(drawnEdit("draw-truck-way", along(LANE), EMPTY_PLAN).ok).toBe(false);
  });

  it("are refused where kind and shape do not fit", () => {
    const [pile, , way] = withPlaces(EMPTY_PLAN).workPlaces!;
    const wrong = (place: object) => {
      const found = validatePlan({ ...EMPTY_PLAN, workPlaces: [place] });
      return found.ok ? "" : said(found.failure).message;
    };
    expect(wrong({ ...pile, path: way!.path })).toMatch(
      /Expected one point for the kind pile; came 2/,
    );
    expect(wrong({ ...way, path: pile!.path })).toMatch(/a line of at least 2 points .* came 1/);
    expect(wrong({ ...pile, kind: "crane" })).toMatch(/kind of work place/);
  });

  it("are renamed, deleted and undone through the one gate", () => {
    replacePlan(withPlaces(EMPTY_PLAN), "Open a plan");
    const [pile] = plan.peek().workPlaces!;
    renameListed("workPlaces", pile!, "Sand at the barn");
    expect(plan.peek().workPlaces![0]!.name).toBe("Sand at the barn");
    for (const each of plan.peek().workPlaces!) deleteListed("workPlaces", each);
    expect(plan.peek().workPlaces).toBeUndefined();
    undo();
    expect(plan.peek().workPlaces).toHaveLength(1);
  });

  it("have a symbol on the map, a truck way an arrow head that points where it leads", () => {
    const { features } = planShapes({
      plan: withPlaces(EMPTY_PLAN),
      chosenId: null,
      showAll: true,
    });
    const marks = features.filter(({ properties }) => properties?.kind === "work-place");
    expect(marks.map(({ properties }) => properties?.icon)).toEqual([
      "pile",
      "pumps",
      "truck-head",
    ]);
    expect(marks[2]!.properties!.bearing).toBeCloseTo(90, 1);
    expect(features.filter(({ properties }) => properties?.kind === "truck-way")).toHaveLength(1);
  });

  it("are named on the Build page, and what is not placed is said to be marked by hand", () => {
    const line = ring(rectangle(30, 20));
    const made = withPlaces(planWith(100.5, { alignments: [line] }));
    const sized = size(made, line, flat(100));
    const of: Exported = {
      ...{ plan: made, line: sized, alternative: line, system: "us", checks: sized.checks },
      ...{ isTraced: false, verticalDatum: "" },
    };
    const [frame] = planFrames(made, sized, { widthMm: 180, heightMm: 150 }, "us");
    const texts = workPlaceLabels(of, frame!).map(({ words }) => words.map(({ text }) => text));
    expect(texts[0]).toEqual(["Bag pile 1", expect.stringMatching(/^[\d,]+ bags to order$/)]);
    expect(texts[1]![0]).toBe("Pumps 1");
    expect(texts[1]!.at(-1)).toMatch(/^hose out near \d\+\d\d$/);
    expect(texts[2]).toEqual(["Truck way 1"]);
    expect(notPlacedWords(made.workPlaces!, true)).toBeNull();
    expect(notPlacedWords(made.workPlaces!.slice(1), true)).toMatch(
      /: sand and bag pile\. Mark it by/,
    );
    expect(notPlacedWords([], false)).toMatch(
      /: benchmark, sand and bag pile, truck way in, pumps/,
    );
  });
});
