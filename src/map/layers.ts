import type { LayerSpecification, Map as MapLibreMap } from "maplibre-gl";
import { faded, type MapColours } from "./colours.ts";
import { installImages } from "./hatch.ts";
import { install } from "./sources.ts";

/** What is drawn over this layer: corner handles and lines being drawn lie under it. */
export const EDIT_BELOW = "marked-cut";

/** The map's own vector sources, one for each thing that changes at its own pace. */
const SOURCES = ["contours", "plan", "levee", "stations", "pointed", "marked"];

/** Weight names choose the weight; the family is the page's own, drawn by the map itself. */
const REGULAR = ["Public Sans Variable"];
const MEDIUM = ["Medium", "Public Sans Variable"];

/** Puts everything that lies on the ground on the map, or recolours it; see {@link install}. */
export function installLayers(map: MapLibreMap, colours: MapColours): void {
  installImages(map, colours);
  install(map, SOURCES, layersIn(colours));
}

function layersIn(colours: MapColours): LayerSpecification[] {
  return [
    ...contourLabels(colours),
    ...noGo(colours),
    ...alternatives(colours),
    ...levee(colours),
    ...structures(colours),
    ...marked(colours),
    ...stations(colours),
    ...names(colours),
  ];
}

function contourLabels(colours: MapColours): LayerSpecification[] {
  return [
    {
      id: "contour-labels",
      type: "symbol",
      source: "contours",
      layout: {
        "symbol-placement": "line",
        "symbol-spacing": 420,
        "symbol-sort-key": ["case", ["get", "index"], 0, 1],
        "text-field": ["get", "text"],
        "text-font": REGULAR,
        "text-size": 10.5,
        "text-max-angle": 25,
        "text-padding": 12,
      },
      paint: {
        "text-color": colours.contourText,
        "text-halo-color": faded(colours.groundHigh, 0.75),
        "text-halo-width": 1.4,
      },
    },
  ];
}

function noGo(colours: MapColours): LayerSpecification[] {
  return [
    {
      id: "no-go",
      type: "fill",
      source: "plan",
      filter: ["==", ["get", "kind"], "no-go"],
      paint: { "fill-pattern": "no-go-hatch" },
    },
    {
      id: "no-go-edge",
      type: "line",
      source: "plan",
      filter: ["==", ["get", "kind"], "no-go"],
      paint: { "line-color": colours.ink, "line-width": 1.2, "line-dasharray": [5, 3] },
    },
  ];
}

function alternatives(colours: MapColours): LayerSpecification[] {
  return [
    {
      id: "flow",
      type: "line",
      source: "plan",
      filter: ["==", ["get", "kind"], "flow"],
      paint: { "line-color": colours.waterText, "line-width": 1.6 },
    },
    {
      id: "other-halo",
      type: "line",
      source: "plan",
      filter: ["==", ["get", "kind"], "other"],
      paint: { "line-color": colours.paper, "line-width": 4, "line-opacity": 0.35 },
    },
    {
      id: "other",
      type: "line",
      source: "plan",
      filter: ["==", ["get", "kind"], "other"],
      layout: { "line-cap": "round" },
      paint: { "line-color": colours.ink, "line-width": 1.8, "line-dasharray": [0.1, 2.2] },
    },
    {
      id: "pointed",
      type: "line",
      source: "pointed",
      layout: { "line-cap": "round", "line-join": "round" },
      paint: {
        "line-color": colours.act,
        "line-width": 30,
        "line-opacity": 0.38,
        "line-blur": 5,
      },
    },
  ];
}

function levee(colours: MapColours): LayerSpecification[] {
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

function structures(colours: MapColours): LayerSpecification[] {
  return [
    {
      id: "structure",
      type: "fill",
      source: "plan",
      filter: ["==", ["get", "kind"], "structure"],
      paint: { "fill-color": colours.ink, "fill-opacity": 0.88 },
    },
    {
      id: "structure-edge",
      type: "line",
      source: "plan",
      filter: ["==", ["get", "kind"], "structure"],
      paint: { "line-color": colours.panel, "line-width": 1 },
    },
  ];
}

function marked(colours: MapColours): LayerSpecification[] {
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

function stations(colours: MapColours): LayerSpecification[] {
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

function names(colours: MapColours): LayerSpecification[] {
  const halo = { "text-halo-color": faded(colours.panel, 0.85), "text-halo-width": 1.8 };
  return [
    {
      id: "flow-head",
      type: "symbol",
      source: "plan",
      filter: ["==", ["get", "kind"], "flow-head"],
      layout: {
        "icon-image": "flow-head",
        "icon-rotate": ["get", "bearing"],
        "icon-rotation-alignment": "map",
        "icon-allow-overlap": true,
      },
      paint: {},
    },
    {
      id: "gauge",
      type: "symbol",
      source: "plan",
      filter: ["==", ["get", "kind"], "gauge"],
      layout: {
        "icon-image": "gauge",
        "icon-allow-overlap": true,
        "text-field": ["get", "text"],
        "text-font": REGULAR,
        "text-size": 12,
        "text-anchor": "left",
        "text-offset": [0.9, 0],
        "text-optional": true,
      },
      paint: { "text-color": colours.waterText, ...halo },
    },
    {
      id: "structure-names",
      type: "symbol",
      minzoom: 16,
      source: "plan",
      filter: ["==", ["get", "kind"], "label-structure"],
      layout: {
        "text-field": ["get", "text"],
        "text-font": MEDIUM,
        "text-size": 12,
        "text-max-width": 6,
        "text-line-height": 1.15,
      },
      paint: {
        "text-color": colours.panel,
        "text-halo-color": faded(colours.ink, 0.9),
        "text-halo-width": 1.6,
      },
    },
    {
      id: "names",
      type: "symbol",
      source: "plan",
      filter: ["==", ["get", "kind"], "label-no-go"],
      layout: { "text-field": ["get", "text"], "text-font": MEDIUM, "text-size": 12 },
      paint: { "text-color": colours.ink, ...halo },
    },
    {
      id: "other-names",
      type: "symbol",
      source: "plan",
      filter: ["==", ["get", "kind"], "label-other"],
      layout: {
        "text-field": ["get", "text"],
        "text-font": MEDIUM,
        "text-size": 13,
        "text-variable-anchor": ["bottom-right", "bottom-left", "top-right", "top-left"],
        "text-radial-offset": 0.5,
        "text-allow-overlap": true,
        "text-ignore-placement": true,
      },
      paint: { "text-color": colours.ink, ...halo },
    },
  ];
}
