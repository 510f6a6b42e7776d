import type { FilterSpecification, LayerSpecification, LineLayerSpecification } from "maplibre-gl";
import { STATION_LABEL } from "../drawing/line/station-marks.ts";
import { faded, type MapColours } from "./colours.ts";
import { offsetByDirection } from "./label-side.ts";

/** Type on the map is drawn by the map itself in the page's own family; a weight name in front chooses the weight. */
export const REGULAR = ["Public Sans Variable"];
export const MEDIUM = ["Medium", "Public Sans Variable"];

/** The ring is drawn no narrower than this, so that it stays in sight when the map is zoomed out, CSS pixels. */
const LEAST_PX = 5.5;
const LEAST_OVER_PX = 7;
const EDGE_PX = 1.6;

type Filter = NonNullable<FilterSpecification>;

/** The levee by height, as wide as its base, and the stretches where there is none or nothing is known. */
export function leveeLayers(colours: MapColours): LayerSpecification[] {
  const edge = { "line-color": faded(colours.ink, 0.55) };
  return [
    ...[0, 1, 2, 3, 4].map((index) =>
      lineLayer(`levee-core-edge-${index + 1}`, of("core", index), {
        ...edge,
        "line-width": (index === 4 ? LEAST_OVER_PX : LEAST_PX) + EDGE_PX,
      }),
    ),
    lineLayer("levee-edge", of("strip"), { ...edge, "line-width": EDGE_PX }),
    ...colours.levee.flatMap((colour, index): LayerSpecification[] => [
      lineLayer(`levee-core-${index + 1}`, of("core", index), {
        "line-color": colour,
        "line-width": LEAST_PX,
      }),
      {
        id: `levee-${index + 1}`,
        type: "fill",
        source: "levee",
        filter: of("strip", index),
        paint: { "fill-color": colour },
      },
    ]),
    lineLayer("levee-core-over", of("core", 4), {
      "line-pattern": "over-hatch",
      "line-width": LEAST_OVER_PX,
    }),
    {
      id: "levee-over",
      type: "fill",
      source: "levee",
      filter: of("strip", 4),
      paint: { "fill-pattern": "over-hatch" },
    },
    lineLayer("levee-over-edge", of("strip", 4), {
      "line-color": colours.over,
      "line-width": 1.2,
    }),
    lineLayer("levee-free", of("free"), {
      "line-color": colours.ink,
      "line-width": 1.2,
      "line-dasharray": [4, 3],
    }),
    lineLayer("levee-no-data-ground", of("no-data"), {
      "line-color": colours.panel,
      "line-width": 11,
    }),
    lineLayer("levee-no-data", of("no-data"), {
      "line-color": colours.ink,
      "line-width": 9,
      "line-dasharray": [0.22, 0.45],
    }),
  ];
}

function of(kind: string, heightClass?: number): Filter {
  const isKind: Filter = ["==", ["get", "kind"], kind];
  return heightClass === undefined
    ? isKind
    : ["all", isKind, ["==", ["get", "heightClass"], heightClass]];
}

function lineLayer(
  id: string,
  filter: Filter,
  paint: LineLayerSpecification["paint"] & object,
): LayerSpecification {
  const layout = { "line-join": "round", "line-cap": "butt" } as const;
  return { id, type: "line", source: "levee", filter, layout, paint };
}

/** The marked station: where the section is cut. */
export function markedLayers(colours: MapColours): LayerSpecification[] {
  return [
    {
      id: "marked-halo",
      type: "line",
      source: "marked",
      layout: { "line-cap": "round" },
      paint: { "line-color": faded(colours.panel, 0.9), "line-width": 5.5 },
    },
    {
      id: "marked-cut",
      type: "line",
      source: "marked",
      layout: { "line-cap": "round" },
      paint: {
        "line-color": ["case", ["get", "isOver"], colours.over, colours.ink],
        "line-width": 3,
      },
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
        "text-size": 12.5,
        "text-offset": offsetByDirection(STATION_LABEL),
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
