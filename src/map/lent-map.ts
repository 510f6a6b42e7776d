import type { Map as MapLibreMap } from "maplibre-gl";
import { faded } from "./colours.ts";
import { colours } from "./colours-now.ts";
import { onMap } from "./drawable.ts";
import { install, show } from "./sources.ts";
import { bothMaps, mapElement, theMap } from "./the-map.ts";
import { view } from "./view.ts";

/** The map for a view that draws layers of its own on it in place of the plan's. */
export const lentMap = {
  element: mapElement,
  /** What takes the layers and every pointer, null where the browser cannot draw one; ground and water lie under it. */
  upper: theMap,
  colours,
  faded,
  install,
  show,
  onMap,
  view,
  keepAlone,
};

/** Lines of the ground that are too many where a whole town is looked at. */
const LOWER_HIDDEN = ["contour-lines"];

/**
 * Hides every layer of the plan, but for those whose name begins with `prefix`, for as long as the map is lent.
 * @returns shows them again
 */
function keepAlone(prefix: string): () => void {
  const maps = bothMaps();
  if (!maps) return () => {};
  const [ground, upper] = maps;
  const hidden = new Map<MapLibreMap, readonly string[]>();
  const setVisible = (visibility: "none" | "visible") => {
    for (const [map, ids] of hidden) {
      for (const id of ids) {
        if (map.getLayer(id)) map.setLayoutProperty(id, "visibility", visibility);
      }
    }
  };
  const stop = onMap([ground, upper], () => {
    colours.value;
    hidden.set(ground, LOWER_HIDDEN);
    hidden.set(
      upper,
      upper.getLayersOrder().filter((id) => !id.startsWith(prefix)),
    );
    setVisible("none");
  });
  return () => {
    stop();
    setVisible("visible");
  };
}
