import type { Feature, FeatureCollection } from "geojson";
import type { Map as MapLibreMap } from "maplibre-gl";
import type { LonLat } from "../../shared/plan.ts";
import type { WayIn } from "../../shared/water-types.ts";
import { faded, type MapColours } from "./colours.ts";
import { install, NOTHING } from "./sources.ts";

const BELOW = "marked-halo";

/** The path of the water to a building: a line (`way`) and arrow heads where it comes in and where it ends. */
export function wayShapes(way: WayIn | null): FeatureCollection {
  const path = way?.path ?? [];
  if (!way || path.length < 2) return NOTHING;
  const entry = nearestCorner(path, way.at);
  const features: Feature[] = [
    {
      type: "Feature",
      properties: { kind: "way" },
      geometry: { type: "LineString", coordinates: path.map(([lon, lat]) => [lon, lat]) },
    },
    head(way.at, bearing(path[Math.max(0, entry - 1)]!, path[Math.max(1, entry)]!)),
    head(path.at(-1)!, bearing(path.at(-2)!, path.at(-1)!)),
  ];
  return { type: "FeatureCollection", features };
}

function head(at: LonLat, bearingDeg: number): Feature {
  return {
    type: "Feature",
    properties: { kind: "head", bearing: bearingDeg },
    geometry: { type: "Point", coordinates: [at[0], at[1]] },
  };
}

function nearestCorner(path: readonly LonLat[], to: LonLat): number {
  const away = (at: LonLat) => Math.hypot(...eastNorth(to, at));
  return path.reduce((best, at, i) => (away(at) < away(path[best]!) ? i : best), 0);
}

/** Degrees clockwise from north. */
function bearing(from: LonLat, to: LonLat): number {
  const [east, north] = eastNorth(from, to);
  return (Math.atan2(east, north) * 180) / Math.PI;
}

/** From one place to another in degrees of latitude, east and north. */
function eastNorth(from: LonLat, to: LonLat): [number, number] {
  return [(to[0] - from[0]) * Math.cos((from[1] * Math.PI) / 180), to[1] - from[1]];
}

/** Puts the layers of the way in on the map, or recolours them. */
export function installWayLayers(map: MapLibreMap, colours: MapColours): void {
  const line = (id: string, colour: string, width: number) =>
    ({
      id,
      type: "line",
      source: "way-in",
      filter: ["==", ["get", "kind"], "way"],
      layout: { "line-cap": "round", "line-join": "round" },
      paint: { "line-color": colour, "line-width": width },
    }) as const;
  const layers = [
    line("way-halo", faded(colours.panel, 0.85), 6.5),
    line("way", colours.waterText, 3),
    {
      id: "way-heads",
      type: "symbol",
      source: "way-in",
      filter: ["==", ["get", "kind"], "head"],
      layout: {
        "icon-image": "way-head",
        "icon-rotate": ["get", "bearing"],
        "icon-rotation-alignment": "map",
        "icon-allow-overlap": true,
        "icon-ignore-placement": true,
      },
      paint: {},
    },
  ] as const;
  install(map, ["way-in"], layers as never);
  for (const { id } of layers) map.moveLayer(id, BELOW);
}
