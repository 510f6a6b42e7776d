import type { LayerSpecification } from "maplibre-gl";
import { EDGE_DASHES, EDGE_PATTERNS, REACH_LABEL } from "../drawing/line/reach-shapes.ts";
import { faded, type MapColours } from "./colours.ts";
import { offsetByDirection } from "./label-side.ts";
import { MEDIUM } from "./line-layers.ts";

const EDGE_PX = 2.4;
const CASING_PX = 4.4;
/** How far an edge lies outside its toe, so that a narrow wall shows its height between the two, pixels. */
const OUT_PX = 2;

/** The toes of reaches that are built otherwise, each section by its own dashes, and where reaches meet. */
export function reachLayers(colours: MapColours): LayerSpecification[] {
  return [
    {
      id: "reach-casing",
      type: "line",
      source: "reaches",
      filter: ["in", ["get", "kind"], ["literal", ["edge", "end"]]],
      layout: { "line-join": "round" },
      paint: {
        "line-color": faded(colours.panel, 0.9),
        "line-width": CASING_PX,
        "line-offset": ["match", ["get", "kind"], "edge", -OUT_PX, 0],
      },
    },
    ...Array.from({ length: EDGE_PATTERNS }, (_, pattern) => edge(pattern, colours)),
    {
      id: "reach-ends",
      type: "line",
      source: "reaches",
      filter: ["==", ["get", "kind"], "end"],
      paint: { "line-color": colours.ink, "line-width": 1.8 },
    },
  ];
}

function edge(pattern: number, colours: MapColours): LayerSpecification {
  const dashes = EDGE_DASHES[pattern];
  return {
    id: `reach-edge-${pattern}`,
    type: "line",
    source: "reaches",
    filter: ["all", ["==", ["get", "kind"], "edge"], ["==", ["get", "pattern"], pattern]],
    layout: { "line-join": "round" },
    paint: {
      "line-color": colours.ink,
      "line-width": EDGE_PX,
      "line-offset": -OUT_PX,
      ...(dashes ? { "line-dasharray": [...dashes] } : {}),
    },
  };
}

/** The name of each reach that is built otherwise, beside its middle. */
export function reachLabels(colours: MapColours): LayerSpecification[] {
  return [
    {
      id: "reach-labels",
      type: "symbol",
      source: "reaches",
      filter: ["==", ["get", "kind"], "label"],
      layout: {
        "text-field": ["get", "text"],
        "text-font": MEDIUM,
        "text-size": 12,
        "text-anchor": ["get", "anchor"],
        "text-offset": offsetByDirection(REACH_LABEL),
        "text-justify": "auto",
        "text-max-width": 9,
        "text-line-height": 1.15,
        "text-padding": 2,
        "text-allow-overlap": true,
      },
      paint: {
        "text-color": colours.ink,
        "text-halo-color": faded(colours.panel, 0.94),
        "text-halo-width": 2.2,
      },
    },
  ];
}
