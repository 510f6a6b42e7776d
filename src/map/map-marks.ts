import { effect } from "@preact/signals";
import type { Map as MapLibreMap } from "maplibre-gl";
import { chosenId } from "../document/chosen.ts";
import { plan } from "../document/store.ts";
import { isEditable } from "./drawing-state.ts";

/**
 * Where a test has set `drysteadMarks` on the page before it starts, writes on the map's element what the test needs
 * to act on it: `data-state` (`busy`, or `idle` once it can be edited), and at each frame `data-lon`, `data-lat` and `data-zoom` of its middle and `data-corners`, the corners of the chosen line in
 * CSS pixels from the element's upper left corner ("x,y;x,y"). `data-names` has what the map itself has written, a
 * label on a line. Elsewhere it does nothing.
 */
export function markForTests(map: MapLibreMap, ground: MapLibreMap): void {
  if (!("drysteadMarks" in globalThis)) return;
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
      if (idle.size < both.length || !isEditable.peek()) return;
      dataset.names = both.flatMap(namesOn).join("\n");
      dataset.state = "idle";
    });
  }
  const mark = () => {
    const { lng, lat } = map.getCenter();
    Object.assign(dataset, { lon: String(lng), lat: String(lat), zoom: String(map.getZoom()) });
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

/** Texts of the labels that a map shows. */
function namesOn(map: MapLibreMap): string[] {
  const layers = map
    .getStyle()
    .layers.filter(({ type }) => type === "symbol")
    .map(({ id }) => id);
  const texts = map
    .queryRenderedFeatures({ layers })
    .map(({ properties }) => String(properties.text ?? ""));
  return [...new Set(texts)].filter((text) => text !== "");
}

function chosenCorners() {
  const id = chosenId.peek();
  return plan.peek().alignments.find((each) => each.id === id)?.corners ?? [];
}
