import { signal } from "@preact/signals";
import type { Map as MapLibreMap, MapMouseEvent } from "maplibre-gl";
import { nearestChainage } from "../drawing/line/along.ts";
import { engine } from "../engine.ts";
import { chosenLine, ground, markedM, tool } from "../live/state.ts";
import { dragging } from "./drawing-state.ts";
import { view } from "./view.ts";

/** How near to the line the pointer marks a station, CSS pixels. */
const NEAR_PX = 14;

export interface Pointed {
  readonly at: readonly [number, number];
  /** Null where there is no ground data; undefined until the engine has answered. */
  readonly groundM: number | null | undefined;
}

/** The place under the pointer, or tapped last; null when the pointer is not over the map. */
export const pointed = signal<Pointed | null>(null);

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
      ask(at);
      mark(at);
    });
  };
  map.on("mousemove", follow);
  map.on("click", follow);
  map.on("mouseout", () => {
    latest = null;
    pointed.value = null;
  });
}

function mark(at: readonly [number, number]): void {
  const line = chosenLine.value;
  if (!line || dragging.value || tool.value !== "move") return;
  const nearest = nearestChainage(line.walk, at);
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

let wanted: readonly [number, number] | null = null;
let asking = false;

/** One question at a time, the newest place next. */
async function ask(at: readonly [number, number]): Promise<void> {
  wanted = at;
  pointed.value = { at, groundM: pointed.value?.groundM };
  if (asking || !ground.value) return;
  asking = true;
  while (wanted) {
    const place: readonly [number, number] = wanted;
    wanted = null;
    const groundM = await engine
      .probe({ at: place })
      .then((answer) => answer.groundM)
      .catch(() => undefined);
    if (pointed.value) pointed.value = { at: pointed.value.at, groundM };
  }
  asking = false;
}
