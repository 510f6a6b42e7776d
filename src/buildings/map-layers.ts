import type { ExpressionSpecification, LayerSpecification, Map as MapLibreMap } from "maplibre-gl";
import type { ShownState } from "../../shared/buildings/shown-states.ts";
import type { LentColors, LentMap } from "./lent-map.ts";
import { installSigns } from "./map-signs.ts";

/** All layers of this view begin so; the others are hidden while it has the map. */
export const PREFIX = "county-";
const SOURCES = [
  "county-buildings",
  "county-signs",
  "county-lines",
  "county-own",
  "county-picked",
] as const;
/** Layers whose features a click picks. */
export const PICKABLE = ["county-fill", "county-hatch", "county-inside"];

const MEDIUM = ["Medium", "Public Sans Variable"];
/** What the bar's filter leaves out is drawn this faint. */
const FAINT = 0.22;
/** From this zoom on buildings are large enough for an outline as wide as on the drawing. */
const NEAR_ZOOM = 15;

type Match = ExpressionSpecification;

/** Puts the layers of this view on the map, or recolors and filters them. */
export function installCounty(
  { install, faded }: LentMap,
  map: MapLibreMap,
  colors: LentColors,
  filter: ShownState | null,
): void {
  installSigns(map, colors);
  install(map, SOURCES, layersIn(colors, faded, filter));
}

function layersIn(
  colors: LentColors,
  faded: LentMap["faded"],
  filter: ShownState | null,
): LayerSpecification[] {
  const shown: Match | number =
    filter === null ? 1 : ["case", ["==", ["get", "state"], filter], 1, FAINT];
  const isChosenShown = filter === null || filter === "chosen";
  const lineOpacity = isChosenShown ? 1 : FAINT;
  return [
    {
      id: "county-inside",
      type: "fill",
      source: "county-lines",
      filter: kind("inside"),
      paint: { "fill-color": colors.panel, "fill-opacity": isChosenShown ? 0.72 : FAINT },
    },
    {
      id: "county-fill",
      type: "fill",
      source: "county-buildings",
      filter: kind("building"),
      paint: {
        "fill-color": [
          "match",
          ["get", "state"],
          "chosen",
          colors.ink,
          ["dry", "no-data"],
          colors.hole,
          "unchecked",
          faded(colors.paper, 0.25),
          colors.panel,
        ],
        "fill-opacity": shown as number,
      },
    },
    {
      id: "county-hatch",
      type: "fill",
      source: "county-buildings",
      filter: ["all", kind("building"), ["==", ["get", "state"], "over-limit"]],
      paint: { "fill-pattern": "county-over", "fill-opacity": shown as number },
    },
    {
      id: "county-hatch-no-data",
      type: "fill",
      source: "county-buildings",
      filter: ["all", kind("building"), ["==", ["get", "state"], "no-data"]],
      paint: { "fill-pattern": "county-no-data", "fill-opacity": shown as number },
    },
    {
      id: "county-edge",
      type: "line",
      source: "county-buildings",
      filter: ["all", kind("building"), ["!", isDashed]],
      paint: {
        "line-color": [
          "match",
          ["get", "state"],
          "over-limit",
          colors.over,
          "dry",
          faded(colors.secondary, 0.55),
          colors.ink,
        ],
        "line-width": widthOf(["match", ["get", "state"], "dry", 0.6, 1.6]),
        "line-opacity": shown as number,
      },
    },
    {
      id: "county-edge-dashed",
      type: "line",
      source: "county-buildings",
      filter: ["all", kind("building"), isDashed],
      paint: {
        "line-color": colors.secondary,
        "line-width": widthOf(1.1),
        "line-dasharray": [2, 1.6],
        "line-opacity": shown as number,
      },
    },
    {
      id: "county-cross",
      type: "line",
      source: "county-buildings",
      filter: kind("cross"),
      paint: {
        "line-color": colors.ink,
        "line-width": widthOf(1.4),
        "line-opacity": shown as number,
      },
    },
    {
      id: "county-sign",
      type: "symbol",
      source: "county-signs",
      minzoom: 13,
      layout: {
        "icon-image": ["match", ["get", "state"], "too-late", "county-clock", "county-question"],
        "icon-allow-overlap": true,
        "icon-ignore-placement": true,
        "icon-size": ["interpolate", ["linear"], ["zoom"], 14, 0.6, 17, 1],
      },
      paint: { "icon-opacity": shown as number },
    },
    ...lineLayers(colors, faded, lineOpacity),
    {
      id: "county-own",
      type: "line",
      source: "county-own",
      layout: { "line-cap": "round" },
      paint: { "line-color": colors.ink, "line-width": 1.8, "line-dasharray": [0.1, 2] },
    },
    {
      id: "county-picked",
      type: "line",
      source: "county-picked",
      paint: { "line-color": colors.act, "line-width": 2.4, "line-offset": -5 },
    },
    ...marks(colors, faded, lineOpacity),
  ];
}

function lineLayers(
  colors: LentColors,
  faded: LentMap["faded"],
  opacity: number,
): LayerSpecification[] {
  const byClass: Match = [
    "match",
    ["get", "class"],
    0,
    colors.levee[0],
    1,
    colors.levee[1],
    2,
    colors.levee[2],
    colors.levee[3],
  ];
  const layout = { "line-join": "round" } as const;
  return [
    {
      id: "county-line-edge",
      type: "line",
      source: "county-lines",
      filter: kind("line"),
      layout,
      paint: {
        "line-color": faded(colors.ink, 0.85),
        "line-width": ringWidth(2.4),
        "line-opacity": opacity,
      },
    },
    {
      id: "county-line",
      type: "line",
      source: "county-lines",
      filter: kind("line"),
      layout,
      paint: { "line-color": byClass, "line-width": ringWidth(0), "line-opacity": opacity },
    },
  ];
}

function marks(colors: LentColors, faded: LentMap["faded"], opacity: number): LayerSpecification[] {
  const lift: [number, number] = [0, -15];
  return [
    {
      id: "county-name",
      type: "symbol",
      source: "county-lines",
      filter: ["all", kind("mark"), ["!=", ["get", "name"], ""]],
      minzoom: 14,
      layout: {
        "text-field": ["get", "name"],
        "text-font": MEDIUM,
        "text-size": 13,
        "text-variable-anchor": ["left", "right"],
        "text-radial-offset": 1.2,
        "text-max-width": 14,
        "symbol-sort-key": ["get", "rank"],
      },
      paint: {
        "text-color": colors.ink,
        "text-halo-color": faded(colors.panel, 0.92),
        "text-halo-width": 1.8,
        "text-translate": lift,
        "text-opacity": opacity,
      },
    },
    {
      id: "county-mark",
      type: "circle",
      source: "county-lines",
      filter: kind("mark"),
      paint: {
        "circle-radius": 10,
        "circle-color": colors.ink,
        "circle-stroke-color": colors.panel,
        "circle-stroke-width": 1.5,
        "circle-translate": lift,
        "circle-opacity": opacity,
        "circle-stroke-opacity": opacity,
      },
    },
    {
      id: "county-number",
      type: "symbol",
      source: "county-lines",
      filter: kind("mark"),
      layout: {
        "text-field": ["get", "text"],
        "text-font": MEDIUM,
        "text-size": 12,
        "text-allow-overlap": true,
        "text-ignore-placement": true,
      },
      paint: {
        "text-color": colors.panel,
        "text-translate": lift,
        "text-opacity": opacity,
      },
    },
  ];
}

const isDashed: ExpressionSpecification = [
  "match",
  ["get", "state"],
  ["unchecked", "no-data"],
  true,
  false,
];

/** A type of its own: checking the two large unions of the style specification against each other takes half a minute. */
function kind(name: string): ["==", ["get", string], string] {
  return ["==", ["get", "kind"], name];
}

/** A width near at hand, thinner where the whole county is in sight. */
function widthOf(near: number | Match): Match {
  return [
    "interpolate",
    ["linear"],
    ["zoom"],
    NEAR_ZOOM - 3,
    ["*", 0.35, near],
    NEAR_ZOOM + 1,
    near,
  ] as Match;
}

/** Width of a ring, with so much more for its edge, CSS pixels. */
function ringWidth(more: number): Match {
  return ["interpolate", ["linear"], ["zoom"], 13, 2 + more / 2, 16, 5 + more, 19, 14 + more];
}
