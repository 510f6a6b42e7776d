import type { LayerSpecification, Map as MapLibreMap } from "maplibre-gl";
import { faded, type MapColours } from "./colours.ts";
import { install } from "./sources.ts";

/** What is shaded lies under the lines of the plan; the rest lies over the levee. */
const SHADES_BELOW = "flow";
const MARKS_BELOW = "marked-halo";

/** Puts on the map, or recolours, what a search found beside its line. */
export function installFoundLayers(map: MapLibreMap, colours: MapColours): void {
  install(map, ["difference", "found", "sideways"], [...shades(colours), ...marks(colours)]);
  for (const { id } of shades(colours)) map.moveLayer(id, SHADES_BELOW);
  for (const { id } of marks(colours)) map.moveLayer(id, MARKS_BELOW);
}

function shades(colours: MapColours): LayerSpecification[] {
  const shade = (kind: string, colour: string): LayerSpecification => ({
    id: `difference-${kind}`,
    type: "fill",
    source: "difference",
    filter: ["==", ["get", "kind"], kind],
    paint: { "fill-color": faded(colour, 0.42) },
  });
  return [shade("taken-in", colours.landside), shade("left-out", colours.levee[2])];
}

function marks(colours: MapColours): LayerSpecification[] {
  const arrow = (id: string, colour: string, width: number): LayerSpecification => ({
    id,
    type: "line",
    source: "sideways",
    filter: ["==", ["get", "kind"], "arrow"],
    layout: { "line-cap": "round", "line-join": "round" },
    paint: { "line-color": colour, "line-width": width },
  });
  return [
    {
      id: "found-free",
      type: "line",
      source: "found",
      filter: ["==", ["get", "kind"], "free"],
      paint: { "line-color": colours.ink, "line-width": 1.2, "line-dasharray": [4, 3] },
    },
    {
      id: "found-pins",
      type: "circle",
      source: "found",
      filter: ["==", ["get", "kind"], "pin"],
      paint: {
        "circle-radius": 9,
        "circle-opacity": 0,
        "circle-stroke-color": colours.act,
        "circle-stroke-width": 2,
      },
    },
    arrow("sideways-halo", faded(colours.panel, 0.85), 4),
    arrow("sideways-arrows", colours.act, 1.8),
    {
      id: "sideways-savings",
      type: "symbol",
      source: "sideways",
      filter: ["==", ["get", "kind"], "saving"],
      layout: {
        "text-field": ["get", "text"],
        "text-font": ["Medium", "Public Sans Variable"],
        "text-size": 11,
        "text-padding": 1,
        "symbol-sort-key": ["get", "rank"],
      },
      paint: {
        "text-color": colours.act,
        "text-halo-color": faded(colours.panel, 0.92),
        "text-halo-width": 2,
      },
    },
  ];
}
