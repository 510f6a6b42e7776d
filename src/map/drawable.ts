import { computed, effect, type ReadonlySignal, type Signal, signal } from "@preact/signals";
import type { Map as MapLibreMap, StyleSpecification } from "maplibre-gl";

/** The style that both maps start from, and start from again. */
export const NO_STYLE: StyleSpecification = { version: 8, sources: {}, layers: [] };

const drawable = new Map<MapLibreMap, Signal<boolean>>();
const lostMaps = signal<ReadonlySet<MapLibreMap>>(new Set());

/** Set once where the browser has no graphics to draw any map with: all but the map works there. */
export const isWithoutGraphics = signal(false);

/** True while there is no picture: what is on the screen then is no map of anything. */
export const isPictureLost: ReadonlySignal<boolean> = computed(
  () => isWithoutGraphics.value || lostMaps.value.size > 0,
);

/** Whether sources and layers can be put on a map now: not before its first style, nor while the graphics are lost. */
export function isDrawable(map: MapLibreMap): Signal<boolean> {
  const known = drawable.get(map) ?? signal(false);
  drawable.set(map, known);
  return known;
}

/**
 * Draws now, and again whenever a signal changes that it reads or a map has got its graphics back, on which it then
 * finds nothing of what it drew. Nothing is drawn while a map cannot be: the newest is drawn afterwards.
 * @returns draws no more
 */
export function onMap(maps: readonly MapLibreMap[], draw: () => void): () => void {
  return effect(() => {
    if (maps.every((map) => isDrawable(map).value)) draw();
  });
}

/**
 * Keeps {@link isDrawable} through a loss of the graphics context. It is told before the map's own listener takes
 * the style away; afterwards the map starts from an empty style, so that nothing of before the loss comes back.
 */
export function keepDrawable(map: MapLibreMap): void {
  const state = isDrawable(map);
  const lose = () => {
    if (!state.peek()) return;
    state.value = false;
    lostMaps.value = new Set([...lostMaps.peek(), map]);
  };
  map.getContainer().addEventListener("webglcontextlost", lose, { capture: true });
  map.on("webglcontextlost", lose);
  map.on("webglcontextrestored", () => {
    map.once("style.load", () => {
      lostMaps.value = new Set([...lostMaps.peek()].filter((each) => each !== map));
      state.value = true;
    });
    map.setStyle(NO_STYLE, { diff: false });
  });
}
