import { afterEach, expect, it } from "vitest";
import { demoPlan } from "../../sample-terrain/plans.ts";
import type { GroundSummary } from "../../shared/messages.ts";
import type { LonLat } from "../../shared/plan.ts";
import type { Footprint } from "../../shared/plan-footprints.ts";
import { replacePlan } from "../../src/document/store.ts";
import { toSize } from "../../src/live/current.ts";
import { footprintLayer, keepsOff } from "../../src/live/footprints.ts";
import { ground } from "../../src/live/ground.ts";
import { importedByLines } from "../../src/live/imported-by-lines.ts";
import { planToSearch } from "../../src/live/search/plan-to-search.ts";

const PLAN = demoPlan(0);
const HOUSE = PLAN.structures[0]!.outline;
/** 1 m of latitude, degrees. */
const METRE = 1 / 111_195;

function footprint(corners: readonly LonLat[], northM = 0): Footprint {
  const moved = corners.map(([lon, lat]): LonLat => [lon, lat + northM * METRE]);
  return { corners: moved, middle: moved[0]!, columns: {} } as unknown as Footprint;
}

afterEach(() => {
  footprintLayer.value = null;
  keepsOff.value = true;
  ground.value = null;
});

it("a search keeps off imported buildings near by that nobody took, and changes no plan", () => {
  replacePlan(PLAN, "Start");
  const before = PLAN.noGo.length;
  expect(planToSearch(PLAN).noGo).toHaveLength(before);
  const near = footprint(HOUSE, 40);
  const footprints = [footprint(HOUSE), near, footprint(HOUSE, 900)];
  footprintLayer.value = { name: "", footprints, columns: {}, whole: {} } as never;
  expect(
    planToSearch(PLAN)
      .noGo.slice(before)
      .map(({ outline }) => outline),
  ).toEqual([near.corners]);
  expect(PLAN.noGo).toHaveLength(before);
  keepsOff.value = false;
  expect(planToSearch(PLAN).noGo).toHaveLength(before);
});

it("imported buildings by the plan's lines go with the question that sizes them, as long as nobody took them", () => {
  ground.value = { bounds: [-180, -90, 180, 90], marksAsked: [] } as unknown as GroundSummary;
  replacePlan(PLAN, "Start");
  const [lon, lat] = PLAN.alignments[0]!.corners[0]!;
  const by: LonLat[] = [
    [lon, lat],
    [lon + 9 * METRE, lat],
    [lon + 9 * METRE, lat + 9 * METRE],
  ];
  const footprints = [footprint(HOUSE), footprint(by), footprint(by, 5000)];
  footprintLayer.value = { name: "", footprints, columns: {}, whole: {} } as never;
  expect(importedByLines.value).toMatchObject([{ outline: by, isImported: true }]);
  const before = toSize.value;
  expect(before?.imported).toBe(importedByLines.value);
  replacePlan({ ...PLAN, title: "Another" }, "Rename");
  expect(toSize.value).toBe(before);
  footprintLayer.value = null;
  expect(importedByLines.value).toEqual([]);
});
