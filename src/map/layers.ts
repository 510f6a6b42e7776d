import type {
  LayerSpecification,
  LineLayerSpecification,
  Map as MapLibreMap,
  SymbolLayerSpecification,
} from "maplibre-gl";
import { faded, type MapColours } from "./colours.ts";
import { installImages } from "./hatch.ts";
import { offsetByDirection } from "./label-side.ts";
import { leveeLayers, MEDIUM, markedLayers, REGULAR, stationLayers } from "./line-layers.ts";
import { LETTER } from "./plan-shapes.ts";
import { reachLabels, reachLayers } from "./reach-layers.ts";
import { install } from "./sources.ts";

/** What is drawn over this layer: corner handles and lines being drawn lie under it. */
export const EDIT_BELOW = "marked-halo";

/** The map's own vector sources, one for each thing that changes at its own pace. */
const SOURCES = ["contours", "plan", "levee", "reaches", "stations", "pointed", "marked"];

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
    ...leveeLayers(colours),
    ...reachLayers(colours),
    ...structures(colours),
    ...markedLayers(colours),
    ...stationLayers(colours),
    ...reachLabels(colours),
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
        "text-size": 12,
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

/** A line of the plan's shapes of a kind, which its id names where nothing else does. */
function ofPlan(
  id: string,
  paint: NonNullable<LineLayerSpecification["paint"]>,
  kind = id,
): LineLayerSpecification {
  return { id, type: "line", source: "plan", filter: ["==", ["get", "kind"], kind], paint };
}

/** A symbol at the plan's points of a kind. */
function symbolsOf(
  id: string,
  layout: NonNullable<SymbolLayerSpecification["layout"]>,
  kind = id,
): SymbolLayerSpecification {
  return {
    ...{ id, type: "symbol", source: "plan", filter: ["==", ["get", "kind"], kind] },
    layout: { "icon-allow-overlap": true, ...layout },
    paint: {},
  };
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
    ofPlan(
      "no-go-edge",
      { "line-color": colours.ink, "line-width": 1.2, "line-dasharray": [5, 3] },
      "no-go",
    ),
  ];
}

function alternatives(colours: MapColours): LayerSpecification[] {
  const { ink, panel, paper, waterText } = colours;
  return [
    ofPlan("flow", { "line-color": waterText, "line-width": 1.6 }),
    ofPlan("road-casing", { "line-color": ink, "line-width": 6, "line-opacity": 0.7 }, "road"),
    ofPlan("road", { "line-color": panel, "line-width": 4 }),
    ofPlan(
      "truck-way-casing",
      { "line-color": panel, "line-width": 6, "line-opacity": 0.85 },
      "truck-way",
    ),
    ofPlan("truck-way", { "line-color": ink, "line-width": 2.6 }),
    ofPlan("culvert-casing", { "line-color": ink, "line-width": 5 }, "culvert"),
    ofPlan("culvert", { "line-color": panel, "line-width": 2.4, "line-dasharray": [2, 1] }),
    ofPlan("other-halo", { "line-color": paper, "line-width": 4, "line-opacity": 0.35 }, "other"),
    {
      ...ofPlan("other", { "line-color": ink, "line-width": 1.8, "line-dasharray": [0.1, 2.2] }),
      layout: { "line-cap": "round" },
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

function structures(colours: MapColours): LayerSpecification[] {
  return [
    {
      id: "structure",
      type: "fill",
      source: "plan",
      filter: ["==", ["get", "kind"], "structure"],
      paint: { "fill-color": colours.ink, "fill-opacity": 0.88 },
    },
    ofPlan("structure-edge", { "line-color": colours.panel, "line-width": 1 }, "structure"),
  ];
}

function names(colours: MapColours): LayerSpecification[] {
  const halo = { "text-halo-color": faded(colours.panel, 0.85), "text-halo-width": 1.8 };
  return [
    symbolsOf("flow-head", {
      "icon-image": "flow-head",
      "icon-rotate": ["get", "bearing"],
      "icon-rotation-alignment": "map",
    }),
    symbolsOf("gauge", { "icon-image": "gauge" }),
    symbolsOf("sources", { "icon-image": "source" }, "source"),
    symbolsOf(
      "work-places",
      {
        "icon-image": ["get", "icon"],
        "icon-rotate": ["coalesce", ["get", "bearing"], 0],
        "icon-rotation-alignment": ["case", ["has", "bearing"], "map", "viewport"],
      },
      "work-place",
    ),
    {
      id: "structure-names",
      type: "symbol",
      minzoom: 16,
      source: "plan",
      filter: ["==", ["get", "kind"], "label-structure"],
      layout: {
        "text-field": ["get", "text"],
        "text-font": MEDIUM,
        "text-size": 13,
        "text-max-width": 7,
        "text-line-height": 1.15,
        "text-variable-anchor": ["center", "top", "bottom", "left", "right"],
        "text-radial-offset": 0.9,
      },
      paint: {
        "text-color": colours.panel,
        "text-halo-color": faded(colours.ink, 0.9),
        "text-halo-width": 1.6,
      },
    },
    // Above the names of buildings: these give way to the mark of a drain.
    {
      id: "pipes",
      type: "symbol",
      source: "plan",
      filter: ["in", ["get", "kind"], ["literal", ["culvert-end", "drain"]]],
      layout: { "icon-image": ["get", "icon"], "icon-allow-overlap": true },
      paint: {},
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
        "text-size": 14,
        "text-offset": offsetByDirection(LETTER),
        "text-allow-overlap": true,
        "text-ignore-placement": true,
      },
      paint: { "text-color": colours.ink, ...halo },
    },
  ];
}
