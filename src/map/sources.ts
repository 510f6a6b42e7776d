import type { FeatureCollection } from "geojson";
import type { GeoJSONSource, LayerSpecification, Map as MapLibreMap } from "maplibre-gl";

export const NOTHING: FeatureCollection = { type: "FeatureCollection", features: [] };

/**
 * Adds the vector sources and layers that are missing, the sources empty, and sets the colours of the layers
 * that are there: it serves the first start, a lost style and a change of theme alike.
 */
export function install(
  map: MapLibreMap,
  sources: readonly string[],
  layers: readonly LayerSpecification[],
): void {
  for (const name of sources) {
    if (map.getSource(name)) continue;
    map.addSource(name, { type: "geojson", data: NOTHING, tolerance: 0.2, buffer: 64 });
  }
  for (const layer of layers) {
    if (!map.getLayer(layer.id)) map.addLayer(layer);
    else paint(map, layer);
  }
}

function paint(map: MapLibreMap, layer: LayerSpecification): void {
  for (const [name, value] of Object.entries(layer.paint ?? {})) {
    map.setPaintProperty(layer.id, name as never, value as never);
  }
}

interface Writer {
  wanted: FeatureCollection | null;
  frame: number | null;
}
const writers = new WeakMap<MapLibreMap, Map<string, Writer>>();

/**
 * Replaces what a source holds, at most once in an animation frame and the newest last: a source that is
 * written on every pointer move lags and draws out of order.
 */
export function show(map: MapLibreMap, name: string, data: FeatureCollection): void {
  const writer = writerOf(map, name);
  writer.wanted = data;
  if (writer.frame !== null) return;
  writer.frame = requestAnimationFrame(() => {
    const next = writer.wanted;
    writer.wanted = null;
    writer.frame = null;
    if (next) map.getSource<GeoJSONSource>(name)?.setData(next);
  });
}

function writerOf(map: MapLibreMap, name: string): Writer {
  const known = writers.get(map) ?? new Map<string, Writer>();
  writers.set(map, known);
  const writer = known.get(name) ?? { wanted: null, frame: null };
  known.set(name, writer);
  return writer;
}
