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

function dropped(corners: readonly (readonly number[])[], more: object = {}): Promise<void> {
  const geometry = { type: "Polygon", coordinates: [corners] };
  const features = [{ type: "Feature", properties: { SITUS: "14 River Ln" }, geometry }];
  const text = JSON.stringify({ type: "FeatureCollection", features, ...more });
  return openAny([new File([text], "county.geojson")]);
}

const told = () => notices.value.map(({ failure }) => failure.code);

beforeEach(() => {
  startFrom({ plan: EMPTY_PLAN });
  ground.value = null;
  shapesQuestions.value = [];
  notices.value = [];
});

it("footprints dropped as GeoJSON are refused as what they are: off the elevation data, or none is open", async () => {
  await dropped(NEAR);
  expect(told()).toEqual(["shapes/no-ground"]);
  notices.value = [];
  ground.value = {
    bounds: [-80, 40, -79, 41],
    crs: "EPSG:26917",
    marksAsked: [],
  } as unknown as GroundSummary;
  await dropped(NEAR);
  expect(told()).toEqual(["footprints/elsewhere"]);
});

it("are asked about where they lie on it", async () => {
  ground.value = {
    bounds: [-94, 45, -93, 46],
    crs: "EPSG:26915",
    marksAsked: [],
  } as unknown as GroundSummary;
  await dropped(NEAR);
  expect(told()).toEqual([]);
  expect(shapesQuestions.value).toMatchObject([{ about: "use", name: "county.geojson" }]);
});

it("a file without any shape to take is refused as no plan", async () => {
  await openAny([new File(['{"type":"FeatureCollection","features":[]}'], "empty.geojson")]);
  expect(told()).toEqual(["plan/foreign"]);
});

it("a plan that has lost its settings is refused as that, with what to add", async () => {
  const text = JSON.stringify({
    type: "FeatureCollection",
    features: [
      {
        type: "Feature",
        properties: { role: "structure" },
        geometry: { type: "Polygon", coordinates: [NEAR] },
      },
    ],
  });
  await openAny([new File([text], "plan.geojson")]);
  expect(notices.value).toMatchObject([
    { failure: { code: "plan/foreign", given: { how: "settings-lost" } } },
  ]);
});
