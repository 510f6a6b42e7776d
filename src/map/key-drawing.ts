import { effect, untracked } from "@preact/signals";
import type { Map as MapLibreMap } from "maplibre-gl";
import { tool } from "../live/screen.ts";
import { finishDrawing } from "./draw-input.ts";
import { drawingByKeys } from "./drawing-state.ts";

/** How far an arrow key moves the map under the cross, and with Shift, CSS pixels. */
const STEP_PX = 40;
const FINE_PX = 4;

const ARROWS: Readonly<Record<string, readonly [right: number, down: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/**
 * Draws without a pointer. A tool taken by the keyboard brings the focus to the map and a cross to its middle: arrow
 * keys move the map under it, Enter sets a corner there, Backspace takes back the last, Shift+Enter ends the shape.
 * Escape, the screen's own key, leaves; the focus goes back to where the tool was taken.
 */
export function keepKeyDrawing(map: MapLibreMap, takeBack: () => void): void {
  const canvas = map.getCanvas();
  let from: Element | null = null;
  effect(() => {
    const isDrawing = tool.value !== "move";
    untracked(() => {
      const wasByKeys = drawingByKeys.peek();
      if (isDrawing && !wasByKeys) {
        from = document.activeElement;
        drawingByKeys.value = from?.matches(":focus-visible") ?? false;
      } else if (!isDrawing) drawingByKeys.value = false;
      if (drawingByKeys.peek()) canvas.focus();
      else if (wasByKeys && from instanceof HTMLElement) from.focus();
    });
  });
  const point = (type: string) => canvas.dispatchEvent(pointerAtMiddle(canvas, type));
  const run = (event: KeyboardEvent): boolean => {
    const by = ARROWS[event.key];
    if (by) {
      const px = event.shiftKey ? FINE_PX : STEP_PX;
      drawingByKeys.value = true;
      map.panBy([by[0] * px, by[1] * px], { duration: 0 });
      point("pointermove");
    } else if (!drawingByKeys.peek()) return false;
    else if (event.key === "Enter" && event.shiftKey) finishDrawing(canvas);
    else if (event.key === "Enter") for (const type of ["pointerdown", "pointerup"]) point(type);
    else if (event.key === "Backspace") takeBack();
    else return false;
    return true;
  };
  canvas.addEventListener(
    "keydown",
    (event) => {
      if (tool.peek() === "move" || event.ctrlKey || event.metaKey || event.altKey) return;
      if (!run(event)) return;
      event.preventDefault();
      event.stopPropagation();
    },
    { capture: true },
  );
  canvas.addEventListener("pointerdown", ({ isTrusted }) => {
    if (isTrusted) drawingByKeys.value = false;
  });
}

/** What a pointer in the middle of the map would send: the drawing library listens to nothing else. */
function pointerAtMiddle(canvas: HTMLElement, type: string): PointerEvent {
  const { left, top, width, height } = canvas.getBoundingClientRect();
  return new PointerEvent(type, {
    ...{ isPrimary: true, bubbles: true, cancelable: true },
    ...{ clientX: left + width / 2, clientY: top + height / 2 },
  });
}
