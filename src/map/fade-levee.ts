import type { Map as MapLibreMap } from "maplibre-gl";

const FILLS = ["levee-1", "levee-2", "levee-3", "levee-4", "levee-over"];
const TEXTS = ["station-labels", "reach-labels"];
const FADED = 0.3;

/** Makes the levee's tones pale where they are heights of a former plan, and its labels. */
export function fadeLevee(map: MapLibreMap, isFormer: boolean): void {
  const opacity = isFormer ? FADED : 1;
  for (const id of FILLS) map.setPaintProperty(id, "fill-opacity", opacity);
  for (const id of TEXTS) map.setPaintProperty(id, "text-opacity", opacity);
}
