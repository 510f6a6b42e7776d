import { beforeEach, expect, it, vi } from "vitest";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import type { GroundSummary } from "../../shared/messages.ts";
import { notices } from "../../src/document/notices.ts";
import { startFrom } from "../../src/document/store.ts";
import { openAny } from "../../src/live/actions.ts";
import { ground } from "../../src/live/ground.ts";
import { shapesQuestions } from "../../src/live/import-shapes.ts";

vi.mock("../../src/engine.ts", () => ({ engine: {} }));

const NEAR = [
  [-93.5, 45.5],
  [-93.4999, 45.5],
  [-93.4999, 45.5001],
  [-93.5, 45.5],
];

function dropped(properties: object): Promise<void> {
  const geometry = { type: "Polygon", coordinates: [NEAR] };
  const features = [{ type: "Feature", properties, geometry }];
  const text = JSON.stringify({ type: "FeatureCollection", features });
  return openAny([new File([text], "county.geojson")]);
}

/** @param bounds west, south, east, north, degrees */
function openGround(bounds: readonly number[]): void {
  ground.value = { bounds, crs: "EPSG:26915", marksAsked: [] } as unknown as GroundSummary;
}

const told = () => notices.value.map(({ failure }) => failure.code);

beforeEach(() => {
  startFrom({ plan: EMPTY_PLAN });
  ground.value = null;
  shapesQuestions.value = [];
  notices.value = [];
});

it("footprints dropped as GeoJSON are refused as what they are: off the elevation data, or none is open", async () => {
  await dropped({ SITUS: "14 River Ln" });
  expect(told()).toEqual(["shapes/no-ground"]);
  notices.value = [];
  openGround([-80, 40, -79, 41]);
  await dropped({ SITUS: "14 River Ln" });
  expect(told()).toEqual(["footprints/elsewhere"]);
});

it("are asked about where they lie on it", async () => {
  openGround([-94, 45, -93, 46]);
  await dropped({ SITUS: "14 River Ln" });
  expect(told()).toEqual([]);
  expect(shapesQuestions.value).toMatchObject([{ about: "use", name: "county.geojson" }]);
});

it("a file without any shape to take is refused as no plan", async () => {
  await openAny([new File(['{"type":"FeatureCollection","features":[]}'], "empty.geojson")]);
  expect(told()).toEqual(["plan/foreign"]);
});

it("a plan that has lost its settings is refused as that, with what to add", async () => {
  await dropped({ role: "structure" });
  expect(notices.value).toMatchObject([
    { failure: { code: "plan/foreign", given: { how: "settings-lost" } } },
  ]);
});
