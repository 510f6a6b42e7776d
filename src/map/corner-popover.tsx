import type { Map as MapLibreMap } from "maplibre-gl";
import { pinsOf } from "../../shared/pins.ts";
import { chosenId } from "../document/chosen.ts";
import { deleteCorner, fewestCorners, pinCorner } from "../document/edits/corners.ts";
import { plan } from "../document/store.ts";
import { tool } from "../live/screen.ts";
import { reachOf } from "./draw-modes.ts";
import { dragging } from "./drawing-state.ts";
import { closePopover, openPopover } from "./popover.ts";

/** A click or tap on a corner of the chosen alternative offers to take it out, also where there is no right button. */
export function keepCornerPopover(map: MapLibreMap): void {
  map.on("click", (event) => {
    if (tool.peek() !== "move" || dragging.peek()) return;
    const alternative = plan.peek().alignments.find((each) => each.id === chosenId.peek());
    const reachPx = reachOf(pointerTypeOf(event.originalEvent));
    const index = alternative?.corners.findIndex(([lng, lat]) => {
      const at = map.project({ lng, lat });
      return Math.hypot(at.x - event.point.x, at.y - event.point.y) <= reachPx;
    });
    if (!alternative || index === undefined || index < 0) return;
    const isPinned = pinsOf(alternative).includes(index);
    const spare = alternative.corners.length > fewestCorners(alternative.kind);
    openPopover(map, {
      at: alternative.corners[index]!,
      label: `Corner ${index + 1} of ${alternative.name}`,
      content: (
        <div class="map-corner">
          <span>
            Corner {index + 1} of {alternative.name}
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
