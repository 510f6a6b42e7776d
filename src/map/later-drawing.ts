import { effect } from "@preact/signals";
import type { Map as MapLibreMap } from "maplibre-gl";
import { asFailure } from "../../shared/failure.ts";
import { loadPart } from "../../shared/load-part.ts";
import { tell } from "../document/notices.ts";
import { tool } from "../live/screen.ts";
import { isEditable } from "./drawing-state.ts";

const DRAWING = () => import("./drawing.ts");

/**
 * Fetches what draws shapes and moves corners once the map has its first picture, or as soon as a pointer comes to
 * the map or a tool is taken. Where that fails it is said, and tried again at the next of these.
 */
export function keepDrawingLater(map: MapLibreMap): void {
  const place = map.getCanvasContainer();
  const fetched = new AbortController();
  let isFetching = false;
  const fetch = () => {
    if (isFetching) return;
    isFetching = true;
    loadPart("drawing on the map", DRAWING).then(
      ({ keepDrawing }) => {
        fetched.abort();
        stop();
        keepDrawing(map);
        isEditable.value = true;
        map.triggerRepaint();
      },
      (thrown) => {
        isFetching = false;
        tell("error", asFailure(thrown));
      },
    );
  };
  const stop = effect(() => {
    if (tool.value !== "move") fetch();
  });
  for (const type of ["pointerenter", "pointerdown"]) {
    place.addEventListener(type, fetch, { signal: fetched.signal });
  }
  map.once("idle", fetch);
}
