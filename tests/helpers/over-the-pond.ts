import { POND } from "../../sample-terrain/layout.ts";
import { placedOnSite } from "../../sample-terrain/plans.ts";
import { json, samplePlan } from "./screen.ts";

/** The demo with its first ring led over the pond, which has no elevation data; `holding` changes how it holds. */
export function overThePond(holding: Readonly<Record<string, number>> = {}) {
  const plan = samplePlan("demo.geojson");
  Object.assign(plan.drystead.holding, holding);
  const [east, north] = POND.at;
  const corners = [
    placedOnSite([east - 60, north]),
    placedOnSite([east + 60, north]),
    placedOnSite([east + 60, north + 60]),
    placedOnSite([east - 60, north + 60]),
  ];
  const ring = plan.features.find(
    (feature: { properties: { role: string } }) => feature.properties.role === "alignment",
  );
  ring.geometry.coordinates = [[...corners, corners[0]]];
  return json("over-the-pond.geojson", plan);
}
