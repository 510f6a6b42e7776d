import type { FeatureCollection } from "geojson";
import type { GeoJSONSource, Map as MapLibreMap } from "maplibre-gl";

/** The map's own vector sources, one for each thing that changes at its own pace. */
export const SOURCES = [
  "contours",
  "outside",
  "plan",
  "levee",
  "stations",
  "pointed",
  "marked",
] as const;

export type SourceName = (typeof SOURCES)[number];

const NOTHING: FeatureCollection = { type: "FeatureCollection", features: [] };

/** Adds the sources that are missing, empty. */
export function installSources(map: MapLibreMap): void {
  for (const name of SOURCES) {
    if (map.getSource(name)) continue;
    map.addSource(name, { type: "geojson", data: NOTHING, tolerance: 0.2, buffer: 64 });
  }
}

interface Writer {
  wanted: FeatureCollection | null;
  frame: number | null;
}
const writers = new Map<SourceName, Writer>();

/**
 * Replaces what a source holds, at most once in an animation frame and the newest last: a source that is
 * written on every pointer move lags and draws out of order.
 */
export function show(map: MapLibreMap, name: SourceName, data: FeatureCollection): void {
  const writer = writers.get(name) ?? { wanted: null, frame: null };
  writers.set(name, writer);
  writer.wanted = data;
  writer.frame ??= requestAnimationFrame(() => {
    const next = writer.wanted;
    writer.wanted = null;
    writer.frame = null;
    if (next) map.getSource<GeoJSONSource>(name)?.setData(next);
  });
}

export { NOTHING };
