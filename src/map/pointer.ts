import type { Map as MapLibreMap, MapMouseEvent } from "maplibre-gl";
import { nearestChainage } from "../drawing/line/along.ts";
import { pointAt } from "../live/pointed.ts";
import { chosenLine } from "../live/results.ts";
import { markedM, tool } from "../live/screen.ts";
import { dragging, isNearLine } from "./drawing-state.ts";
import { view } from "./view.ts";

/** How near to the line the pointer marks a station, CSS pixels. */
const NEAR_PX = 14;

/** How near it counts as at the line, to edit it, CSS pixels. */
const EDIT_PX = 26;

/** Keeps the readout and the marked station in step with the pointer. */
export function keepPointer(map: MapLibreMap): void {
  let latest: MapMouseEvent | null = null;
  let frame: number | null = null;
  const follow = (event: MapMouseEvent) => {
    latest = event;
    if (frame !== null) return;
    frame = requestAnimationFrame(() => {
      frame = null;
      if (!latest || dragging.value) return;
      const at = [latest.lngLat.lng, latest.lngLat.lat] as const;
      pointAt(at);
      mark(at);
    });
  };
  map.on("mousemove", follow);
  map.on("click", follow);
  map.on("mouseout", () => {
    latest = null;
    pointAt(null);
    isNearLine.value = false;
  });
}

function mark(at: readonly [number, number]): void {
  const line = chosenLine.value;
  if (!line || dragging.value || tool.value !== "move") {
    isNearLine.value = false;
    return;
  }
  const nearest = nearestChainage(line.walk, at);
  isNearLine.value = nearest !== null && nearest.awayM < EDIT_PX * view.value.metresPerPx;
  if (!nearest || nearest.awayM > reachM(nearest.chainageM)) return;
  markedM.value = nearest.chainageM;
}

/** The drawn strip itself counts as near, however close the map is looked at. */
function reachM(chainageM: number): number {
  const line = chosenLine.value;
  const nearM = NEAR_PX * view.value.metresPerPx;
  if (!line) return nearM;
  const at = line.walk.chainageM.findIndex((each) => each >= chainageM);
  const toeM = Math.min(line.walk.toeLeftM[at] || 0, line.walk.toeRightM[at] || 0);
  return Math.max(nearM, toeM);
}
