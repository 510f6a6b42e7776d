import type { Map as MapLibreMap } from "maplibre-gl";
import type { BaseMap } from "../live/base-map.ts";
import { baseMapFrame } from "./base-map-frame.ts";
import { RELIEF_BELOW } from "./ground-layers.ts";
import { BASE_MAP_SCHEME } from "./tile-address.ts";

/** Puts the base map on the map, or takes it off. */
export function showBaseMap(map: MapLibreMap, { address, on }: BaseMap): void {
  if (map.getLayer("base")) map.removeLayer("base");
  if (map.getSource("base")) map.removeSource("base");
  if (map.getLayer("ground-tone")) {
    map.setPaintProperty("ground-tone", "color-relief-opacity", on ? 0 : 1);
  }
  map.setPaintProperty("outside", "fill-opacity", on ? 0 : 1);
  if (!on) {
    baseMapFrame.close();
    return;
  }
  map.addSource("base", {
    type: "raster",
    tiles: [`${BASE_MAP_SCHEME}://${address}`],
    tileSize: 256,
    maxzoom: 19,
  });
  const below = map.getLayer("ground-tone") ? "ground-tone" : RELIEF_BELOW;
  map.addLayer({ id: "base", type: "raster", source: "base", paint: {} }, below);
}
