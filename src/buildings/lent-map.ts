import type { ReadonlySignal } from "@preact/signals";
import type { FeatureCollection } from "geojson";
import type { LayerSpecification, Map as MapLibreMap } from "maplibre-gl";

/** Colors of the map in the theme now set, CSS color texts. */
export interface LentColors {
  readonly paper: string;
  readonly panel: string;
  readonly ink: string;
  readonly secondary: string;
  readonly hole: string;
  readonly act: string;
  readonly over: string;
  /** By height class 0..3. */
  readonly levee: readonly [string, string, string, string];
}

/** The map of the planning screen, lent to this view: ground and water stay, the plan's own layers are hidden. */
export interface LentMap {
  readonly element: () => HTMLElement;
  /** What takes the layers and every pointer; null where the browser cannot draw a map. */
  readonly upper: () => MapLibreMap | null;
  readonly colours: ReadonlySignal<LentColors>;
  /** A color of six hexadecimal digits with an opacity 0..1. */
  readonly faded: (hex: string, opacity: number) => string;
  /** Adds sources and layers that are missing, and recolors those that are there. */
  readonly install: (
    map: MapLibreMap,
    sources: readonly string[],
    layers: readonly LayerSpecification[],
  ) => void;
  /** Replaces what a source holds at the next frame. */
  readonly show: (map: MapLibreMap, source: string, data: FeatureCollection) => void;
  /** Draws now and whenever a signal that is read changes or the map has got its graphics back. @returns draws no more */
  readonly onMap: (maps: readonly MapLibreMap[], draw: () => void) => () => void;
  readonly view: ReadonlySignal<{ readonly metresPerPx: number; readonly zoom: number }>;
  /** Hides all layers but those whose names begin so. @returns shows them again */
  readonly keepAlone: (prefix: string) => () => void;
}
