import "maplibre-gl/dist/maplibre-gl.css";
import { Map as MapLibreMap, setWorkerUrl } from "maplibre-gl";
import workerUrl from "maplibre-gl/dist/maplibre-gl-worker.mjs?worker&url";
import { ground } from "../state.ts";
import { readColours } from "./colours.ts";
import { keepDrawing } from "./drawing.ts";
import { keepGround } from "./keep-ground.ts";
import { keepShapes } from "./keep-shapes.ts";
import { installLayers } from "./layers.ts";
import { markForTests } from "./map-marks.ts";
import { keepPointer } from "./pointer.ts";
import { installProtocols } from "./protocols.ts";
import { keepView } from "./view.ts";

let map: MapLibreMap | null = null;

/**
 * The one map of the page's life, made on the first call; its element is moved into whatever shows it.
 * It loads nothing from the network unless the person gives a base map.
 */
export function theMap(): MapLibreMap {
  map ??= makeMap();
  return map;
}

function makeMap(): MapLibreMap {
  setWorkerUrl(workerUrl);
  installProtocols();
  const container = document.createElement("div");
  container.className = "map-canvas";
  const bounds = ground.value?.bounds;
  const made = new MapLibreMap({
    container,
    style: { version: 8, sources: {}, layers: [] },
    center: bounds ? [(bounds[0] + bounds[2]) / 2, (bounds[1] + bounds[3]) / 2] : [0, 20],
    zoom: bounds ? 14 : 2,
    maxZoom: 23,
    maxPitch: 0,
    dragRotate: false,
    pitchWithRotate: false,
    touchPitch: false,
    renderWorldCopies: false,
    attributionControl: false,
    fadeDuration: 0,
    localIdeographFontFamily: false,
    canvasContextAttributes: { preserveDrawingBuffer: true },
    locale: { "Map.Title": "Map of the site: arrow keys move it, plus and minus zoom" },
  });
  made.touchZoomRotate.disableRotation();
  made.keyboard.disableRotation();
  keepView(made);
  markForTests(made);
  made.once("load", () => {
    installLayers(made, readColours());
    keepGround(made);
    keepShapes(made);
    keepDrawing(made);
    keepPointer(made);
  });
  return made;
}
