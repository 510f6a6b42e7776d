import { effect } from "@preact/signals";
import type { MapLibreEvent, Map as MapLibreMap } from "maplibre-gl";
import { plan } from "../document/store.ts";
import { chosenLine } from "../live/results.ts";
import { isPlanSmall, lookAtPlan } from "./camera.ts";
import { onMap } from "./drawable.ts";

/**
 * Looks at the plan now, and again whenever the map gets another size, until its line is sized and drawn: the profile
 * takes its room from the map only then, which may be seconds later. Ends too when a person moves the map.
 */
function lookAgain(map: MapLibreMap): void {
  const look = () => lookAtPlan(map);
  const moved = ({ originalEvent }: MapLibreEvent) => originalEvent && end();
  const stopWaiting = effect(() => {
    if (chosenLine.value) setTimeout(() => map.once("idle", end));
  });
  function end(): void {
    stopWaiting();
    map.off("resize", look);
    map.off("movestart", moved);
  }
  map.on("resize", look);
  map.on("movestart", moved);
  look();
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
