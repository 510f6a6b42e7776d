import { effect } from "@preact/signals";
import type { Map as MapLibreMap } from "maplibre-gl";
import { chosenId } from "../document/chosen.ts";
import { plan } from "../document/store.ts";
import { tool } from "../live/screen.ts";

/**
 * Writes on the map's element what a browser test needs to act on it: `data-state` (`busy` or `idle`),
 * `data-lon`, `data-lat`, `data-zoom` of its middle, `data-tool`, and `data-corners`, the corners of the
 * chosen alternative in CSS pixels from the element's upper left corner ("x,y;x,y").
 */
export function markForTests(map: MapLibreMap, ground: MapLibreMap): void {
  const { dataset } = map.getContainer();
  dataset.state = "busy";
  const idle = new Set<MapLibreMap>();
  const both = [map, ground];
  for (const each of both) {
    const busy = () => {
      idle.delete(each);
      dataset.state = "busy";
    };
    each.on("movestart", busy);
    each.on("dataloading", busy);
    each.on("idle", () => {
      idle.add(each);
      if (idle.size === both.length) dataset.state = "idle";
    });
  }
  const mark = () => {
    const { lng, lat } = map.getCenter();
    dataset.lon = lng.toFixed(7);
    dataset.lat = lat.toFixed(7);
    dataset.zoom = map.getZoom().toFixed(3);
    dataset.tool = tool.peek();
    dataset.corners = chosenCorners()
      .map(([lon, latitude]) => map.project({ lng: lon, lat: latitude }))
      .map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`)
      .join(";");
  };
  map.on("render", mark);
  effect(() => {
    plan.value;
    chosenId.value;
    mark();
  });
}

function chosenCorners() {
  const id = chosenId.peek();
  return plan.peek().alignments.find((each) => each.id === id)?.corners ?? [];
}
