import type { LayerSpecification } from "maplibre-gl";
import { faded, type MapColours } from "./colours.ts";

/** Type on the map is drawn by the map itself in the page's own family; a weight name in front chooses the weight. */
export const REGULAR = ["Public Sans Variable"];
export const MEDIUM = ["Medium", "Public Sans Variable"];

/** The levee by height, and the stretches where there is none or nothing is known. */
export function leveeLayers(colours: MapColours): LayerSpecification[] {
  const strip = (index: number): LayerSpecification["filter" & keyof LayerSpecification] =>
    ["==", ["get", "heightClass"], index] as never;
  return [
    {
      id: "levee-edge",
      type: "line",
      source: "levee",
      filter: ["==", ["get", "kind"], "strip"],
      layout: { "line-join": "round" },
      paint: { "line-color": faded(colours.ink, 0.55), "line-width": 1.6 },
    },
    ...colours.levee.map(
      (colour, index): LayerSpecification => ({
        id: `levee-${index + 1}`,
        type: "fill",
        source: "levee",
        filter: strip(index),
        paint: { "fill-color": colour },
      }),
    ),
    {
      id: "levee-over",
      type: "fill",
      source: "levee",
      filter: strip(4),
      paint: { "fill-pattern": "over-hatch" },
    },
    {
      id: "levee-over-edge",
      type: "line",
      source: "levee",
      filter: strip(4),
      paint: { "line-color": colours.over, "line-width": 1.2 },
    },
    {
      id: "levee-free",
      type: "line",
      source: "levee",
      filter: ["==", ["get", "kind"], "free"],
      paint: { "line-color": colours.ink, "line-width": 1.2, "line-dasharray": [4, 3] },
    },
    {
      id: "levee-no-data-ground",
      type: "line",
      source: "levee",
      filter: ["==", ["get", "kind"], "no-data"],
      paint: { "line-color": colours.panel, "line-width": 11 },
    },
    {
      id: "levee-no-data",
      type: "line",
      source: "levee",
      filter: ["==", ["get", "kind"], "no-data"],
      paint: { "line-color": colours.over, "line-width": 9, "line-dasharray": [0.22, 0.45] },
    },
  ];
}

/** The marked station: where the section is cut. */
export function markedLayers(colours: MapColours): LayerSpecification[] {
  return [
    {
      id: "marked-cut",
      type: "line",
      source: "marked",
      filter: ["==", ["get", "kind"], "cut"],
      layout: { "line-cap": "round" },
      paint: { "line-color": colours.act, "line-width": 2.4 },
    },
    {
      id: "marked",
      type: "symbol",
      source: "marked",
      filter: ["==", ["get", "kind"], "crosshair"],
      layout: { "icon-image": "crosshair", "icon-allow-overlap": true },
      paint: {},
    },
  ];
}

/** Ticks and labels of stations. */
export function stationLayers(colours: MapColours): LayerSpecification[] {
  return [
    {
      id: "station-ticks",
      type: "symbol",
      source: "stations",
      layout: {
        "icon-image": "tick",
        "icon-rotate": ["get", "bearing"],
        "icon-rotation-alignment": "map",
        "icon-allow-overlap": true,
        "icon-ignore-placement": true,
      },
      paint: {},
    },
    {
      id: "station-labels",
      type: "symbol",
      source: "stations",
      layout: {
        "text-field": ["get", "text"],
        "text-font": MEDIUM,
        "text-size": 11.5,
        "text-offset": ["get", "offset"],
        "text-padding": 3,
        "symbol-sort-key": ["get", "rank"],
      },
      paint: {
        "text-color": colours.ink,
        "text-halo-color": faded(colours.panel, 0.92),
        "text-halo-width": 2,
      },
    },
  ];
}
