import "maplibre-gl/dist/maplibre-gl.css";
import { Map as MapLibreMap, type MapOptions, setWorkerUrl } from "maplibre-gl";
import workerUrl from "maplibre-gl/dist/maplibre-gl-worker.mjs?worker&url";
import { NO_GRAPHICS } from "../../shared/words/no-graphics.ts";
import { underPagePolicy } from "../browser/page-policy.ts";
import { colours } from "./colours-now.ts";
import { isDrawable, isWithoutGraphics, keepDrawable, NO_STYLE, onMap } from "./drawable.ts";
import { keepFirstLineInSight } from "./first-line.ts";
import { keepFootprints } from "./footprint-layers.ts";
import { keepFound } from "./keep-found.ts";
import { keepGround } from "./keep-ground.ts";
import { keepShapes } from "./keep-shapes.ts";
import { keepWater } from "./keep-water.ts";
import { keepDrawingLater } from "./later-drawing.ts";
import { installLayers } from "./layers.ts";
import { markForTests } from "./map-marks.ts";
import { keepPlaceTips } from "./place-tips.tsx";
import { keepPointer } from "./pointer.ts";
import { installProtocols } from "./protocols.ts";
import { keepView } from "./view.ts";

/** What both maps must agree in, so that they look at the same place. */
const SHARED: Partial<MapOptions> = {
  style: NO_STYLE,
  center: [0, 20],
  zoom: 2,
  maxZoom: 23,
  maxPitch: 0,
  renderWorldCopies: false,
  attributionControl: false,
  fadeDuration: 0,
};

interface Made {
  /** Null where the browser has no graphics to draw it with; the element says so then. */
  readonly maps: { readonly map: MapLibreMap; readonly ground: MapLibreMap } | null;
  readonly element: HTMLElement;
}

let made: Made | null = null;

/**
 * The map of the page's life, made on the first call: two pictures that move as one. The lower holds ground
 * and water and is painted anew only when the view, the stage or the theme changes; the upper holds the plan
 * and takes every pointer. So a corner being dragged does not cost the shading of the whole valley again,
 * which without a graphics card is the greater part of a frame. Nothing is loaded from the network unless
 * the person gives a base map.
 * @returns the upper map, or null where the browser cannot draw one
 */
export function theMap(): MapLibreMap | null {
  made ??= make();
  return made.maps?.map ?? null;
}

/** Both maps, the lower one first: what a picture of the whole is put together from. Null as in {@link theMap}. */
export function bothMaps(): readonly [ground: MapLibreMap, plan: MapLibreMap] | null {
  made ??= make();
  return made.maps && [made.maps.ground, made.maps.map];
}

/** The element that holds both pictures, to be put into whatever shows the map. */
export function mapElement(): HTMLElement {
  made ??= make();
  return made.element;
}

function make(): Made {
  const element = document.createElement("div");
  element.className = "map-stack";
  try {
    return { maps: makeMaps(element), element };
  } catch (thrown) {
    if (document.createElement("canvas").getContext("webgl2")) throw thrown;
    isWithoutGraphics.value = true;
    element.replaceChildren(withoutGraphics());
    return { maps: null, element };
  }
}

/** Stands in the place of the map, in each view that it is lent to. */
function withoutGraphics(): HTMLElement {
  const note = addPart(document.createElement("div"), "map-lost");
  note.setAttribute("role", "alert");
  for (const [tag, words] of [
    ["strong", NO_GRAPHICS.title],
    ["p", NO_GRAPHICS.goesOn],
    ["p", NO_GRAPHICS.whatToDo],
  ] as const) {
    const part = document.createElement(tag);
    part.textContent = words;
    note.append(part);
  }
  if ("drysteadMarks" in globalThis) note.dataset.state = "none";
  return note;
}

function makeMaps(element: HTMLElement) {
  setWorkerUrl(underPagePolicy(workerUrl));
  installProtocols();
  const lower = addPart(element, "map-ground");
  lower.setAttribute("aria-hidden", "true");
  const ground = new MapLibreMap({ ...SHARED, container: lower, interactive: false });
  const map = new MapLibreMap({
    ...SHARED,
    container: addPart(element, "map-canvas"),
    dragRotate: false,
    pitchWithRotate: false,
    touchPitch: false,
    locale: { "Map.Title": "Map of the site: arrow keys move it, plus and minus zoom" },
  });
  map.touchZoomRotate.disableRotation();
  map.keyboard.disableRotation();
  follow(ground, map);
  keepView(map);
  markForTests(map, ground);
  for (const each of [map, ground]) keepDrawable(each);
  void Promise.all([map.once("load"), ground.once("load")]).then(() => {
    for (const each of [map, ground]) isDrawable(each).value = true;
    onMap([map], () => installLayers(map, colours.value));
    keepGround(ground, map);
    keepShapes(map);
    keepFirstLineInSight(map);
    keepFound(map);
    keepFootprints(map);
    keepWater(ground, map);
    keepDrawingLater(map);
    keepPointer(map);
    keepPlaceTips(map);
  });
  return { map, ground };
}

function addPart(element: HTMLElement, className: string): HTMLElement {
  const part = document.createElement("div");
  part.className = className;
  element.append(part);
  return part;
}

/** The lower map looks where the upper looks, and is painted in the same frame so that the two never swim. */
function follow(lower: MapLibreMap, upper: MapLibreMap): void {
  let moved = false;
  upper.on("move", () => {
    moved = true;
    lower.jumpTo({ center: upper.getCenter(), zoom: upper.getZoom() });
  });
  upper.on("render", () => {
    if (moved && lower.isStyleLoaded() !== undefined) lower.redraw();
    moved = false;
  });
}
