import { signal } from "@preact/signals";
import type { Map as MapLibreMap } from "maplibre-gl";

/** Ground covered by a CSS pixel of a mercator map of 512-pixel tiles, zoom 0, on the equator, metres. */
const WORLD_PIXEL_M = 40075016.686 / 512;

export interface View {
  readonly lon: number;
  readonly lat: number;
  readonly zoom: number;
  /** Ground covered by one CSS pixel at the middle of the map, metres. */
  readonly metresPerPx: number;
  /** Edges of what is seen, degrees. */
  readonly west: number;
  readonly south: number;
  readonly east: number;
  readonly north: number;
}

const NOWHERE: View = {
  ...{ lon: 0, lat: 0, zoom: 0, metresPerPx: WORLD_PIXEL_M },
  ...{ west: 0, south: 0, east: 0, north: 0 },
};

/** Where the map looks now. */
export const view = signal<View>(NOWHERE);
/** Where the map came to rest last: what is laid out for a zoom is laid out for this. */
export const restingView = signal<View>(view.value);

/** Keeps `view` and `restingView` in step with a map. */
export function keepView(map: MapLibreMap): void {
  const read = (): View => {
    const { lng, lat } = map.getCenter();
    const zoom = map.getZoom();
    const metresPerPx = (WORLD_PIXEL_M * Math.cos((lat * Math.PI) / 180)) / 2 ** zoom;
    const seen = map.getBounds();
    return {
      ...{ lon: lng, lat, zoom, metresPerPx },
      ...{ west: seen.getWest(), south: seen.getSouth() },
      ...{ east: seen.getEast(), north: seen.getNorth() },
    };
  };
  map.on("move", () => {
    view.value = read();
  });
  const rest = () => {
    const now = read();
    view.value = now;
    restingView.value = now;
  };
  map.on("moveend", rest);
  map.on("resize", rest);
  rest();
}
