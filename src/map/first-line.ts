import type { Map as MapLibreMap } from "maplibre-gl";
import { plan } from "../document/store.ts";
import { isPlanSmall, lookAtPlan } from "./camera.ts";
import { onMap } from "./drawable.ts";

/** In which the rooms under the map take their place, milliseconds. */
const ROOMS_OPEN_MS = 1000;

/** Looks at the plan now, and once more when the profile has taken its room from the map. */
function lookAgain(map: MapLibreMap): void {
  const look = () => lookAtPlan(map);
  look();
  map.once("resize", look);
  setTimeout(() => map.off("resize", look), ROOMS_OPEN_MS);
}

/** Brings the map to the first line of a plan where it would be too small to work on. */
export function keepFirstLineInSight(map: MapLibreMap): void {
  let before = plan.peek().alignments.length;
  onMap([map], () => {
    const lines = plan.value.alignments.length;
    if (before === 0 && lines === 1 && isPlanSmall(map)) lookAgain(map);
    before = lines;
  });
}
