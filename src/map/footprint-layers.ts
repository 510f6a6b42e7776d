import type { FeatureCollection } from "geojson";
import type { LayerSpecification, Map as MapLibreMap } from "maplibre-gl";
import { footprintLayer, isPicking, pick, placeMarked } from "../live/footprints.ts";
import { lookedAt } from "../live/looked-at.ts";
import { faded, type MapColours } from "./colours.ts";
import { colours } from "./colours-now.ts";
import { onMap } from "./drawable.ts";
import { install, NOTHING, show } from "./sources.ts";
import { restingView } from "./view.ts";

const FILL = "footprints-fill";
/** The plan's own drawing lies over the footprints. */
const BELOW = "no-go";
/** How near the map comes to a place that was typed. */
const PLACE_ZOOM = 17;
/** Reach of a click round a footprint, CSS pixels. */
const REACH_PX = 6;

/** Keeps imported footprints and a typed place on the map, and takes what is clicked while picking. */
export function keepFootprints(map: MapLibreMap): void {
  onMap([map], () => installFootprints(map, colours.value, isPicking.value));
  onMap([map], () => {
    const layer = footprintLayer.value;
    show(map, "footprints", layer ? shapesOf(layer.footprints) : NOTHING);
  });
  onMap([map], () => {
    const at = placeMarked.value;
    show(map, "typed-place", at ? pointAt(at) : NOTHING);
    if (at) map.jumpTo({ center: [at[0], at[1]], zoom: Math.max(map.getZoom(), PLACE_ZOOM) });
  });
  onMap([map], () => {
    const { lon, lat } = restingView.value;
    lookedAt.value = [lon, lat];
  });
  map.on("click", ({ point: { x, y } }) => {
    if (!isPicking.peek()) return;
    const hit =
      map.queryRenderedFeatures([x, y], { layers: [FILL] })[0] ??
      map.queryRenderedFeatures(
        [
          [x - REACH_PX, y - REACH_PX],
          [x + REACH_PX, y + REACH_PX],
        ],
        { layers: [FILL] },
      )[0];
    const footprint = hit && footprintLayer.peek()?.footprints[Number(hit.properties.index)];
    if (footprint) pick(footprint);
  });
}

function installFootprints(map: MapLibreMap, now: MapColours, picking: boolean): void {
  const layers: LayerSpecification[] = [
    {
      id: FILL,
      type: "fill",
      source: "footprints",
      paint: { "fill-color": faded(now.ink, picking ? 0.28 : 0.12) },
    },
    {
      id: "footprints-edge",
      type: "line",
      source: "footprints",
      paint: { "line-color": now.ink, "line-width": picking ? 1.4 : 0.7, "line-opacity": 0.8 },
    },
    {
      id: "typed-place",
      type: "circle",
      source: "typed-place",
      paint: {
        "circle-radius": 9,
        "circle-color": faded(now.panel, 0.5),
        "circle-stroke-color": now.act,
        "circle-stroke-width": 3,
      },
    },
  ];
  install(map, ["footprints", "typed-place"], layers);
  for (const { id } of layers) if (map.getLayer(BELOW)) map.moveLayer(id, BELOW);
}

function shapesOf(
  footprints: NonNullable<typeof footprintLayer.value>["footprints"],
): FeatureCollection {
  return {
    type: "FeatureCollection",
    features: footprints.map(({ corners }, index) => ({
      type: "Feature",
      properties: { index },
      geometry: {
        type: "Polygon",
        coordinates: [[...corners, corners[0]!].map(([lon, lat]) => [lon, lat])],
      },
    })),
  };
}

function pointAt([lon, lat]: readonly [number, number]): FeatureCollection {
  return {
    type: "FeatureCollection",
    features: [
      { type: "Feature", properties: {}, geometry: { type: "Point", coordinates: [lon, lat] } },
    ],
  };
}
