import { effect } from "@preact/signals";
import type { Map as MapLibreMap } from "maplibre-gl";
import { pinsOf } from "../../shared/pins.ts";
import type { Alignment } from "../../shared/plan.ts";
import { chosenId } from "../document/chosen.ts";
import { deleteCorner, fewestCorners, pinCorner } from "../document/edits/corners.ts";
import { plan } from "../document/store.ts";
import { mapIsLent } from "../live/buildings/open.ts";
import { tool } from "../live/screen.ts";
import { reachOf } from "./draw-input.ts";
import { dragging, tappedCorner } from "./drawing-state.ts";
import { closePopover, openPopover } from "./popover.ts";

/** A place on the map as the drawing library gives it, CSS pixels from the upper left. */
export interface MapPlace {
  readonly containerX: number;
  readonly containerY: number;
}

/** The corner of the chosen line that is nearest to a place on the map, if one is in reach; CSS pixels. */
export function cornerNear(
  map: MapLibreMap,
  { containerX, containerY }: MapPlace,
  reachPx: number,
): { readonly line: Alignment; readonly index: number } | null {
  const line = plan.peek().alignments.find((each) => each.id === chosenId.peek());
  if (!line) return null;
  const awayPx = line.corners.map(([lng, lat]) => {
    const { x, y } = map.project({ lng, lat });
    return Math.hypot(x - containerX, y - containerY);
  });
  const nearestPx = Math.min(...awayPx);
  return nearestPx <= reachPx ? { line, index: awayPx.indexOf(nearestPx) } : null;
}

/**
 * A click or tap on a corner of the chosen alternative offers to take it out, also where there is no right button.
 * A tap also lets the next touch drag it.
 */
export function keepCornerPopover(map: MapLibreMap): void {
  effect(() => {
    chosenId.value;
    tool.value;
    tappedCorner.value = null;
  });
  effect(() => {
    if (dragging.value) closePopover();
  });
  map.on("click", (event) => {
    if (tool.peek() !== "move" || dragging.peek() || mapIsLent.peek()) return;
    const pointerType = pointerTypeOf(event.originalEvent);
    const isTouch = pointerType === "touch";
    const { x, y } = event.point;
    const near = cornerNear(map, { containerX: x, containerY: y }, reachOf(pointerType));
    tappedCorner.value = near && isTouch ? near.index : null;
    if (!near) return;
    const { line: alternative, index } = near;
    const isPinned = pinsOf(alternative).includes(index);
    const spare = alternative.corners.length > fewestCorners(alternative.kind);
    openPopover(map, {
      at: alternative.corners[index]!,
      label: `Corner ${index + 1} of ${alternative.name}`,
      content: (
        <div class="map-corner">
          <span>
            Corner {index + 1} of {alternative.name}
            {isTouch && ". Drag it to move it."}
          </span>
          <button
            type="button"
            class="text-button"
            title="A pinned corner stays where it is when the line is improved"
            onClick={() => {
              closePopover();
              pinCorner(alternative, index, !isPinned);
            }}
          >
            {isPinned ? "Unpin" : "Pin"}
          </button>
          <button
            type="button"
            class="text-button"
            disabled={!spare}
            onClick={() => {
              closePopover();
              deleteCorner(alternative, index);
            }}
          >
            Remove
          </button>
        </div>
      ),
    });
  });
}

/** Newer browsers send clicks as pointer events; where they do not, a mouse is taken for granted. */
function pointerTypeOf(event: MouseEvent): string {
  return event instanceof PointerEvent ? event.pointerType : "mouse";
}
