import type { RefObject } from "preact";
import { useEffect, useRef } from "preact/hooks";

/** What hands can do to a long profile; pixels from the left edge of its picture. */
export interface ProfileGestures {
  /** The pointer is over this place without holding anything. */
  hover(xPx: number): void;
  /** One finger or the held mouse moves the mark here, whether it is pinned or not. */
  scrub(xPx: number): void;
  /** Pressed and let go without moving. */
  press(xPx: number): void;
  /** The picture was dragged to the right by this much. Returns false when there is nothing to pan. */
  pan(byPx: number): boolean;
  /** Lengths shrink (below 1: zoom in) by `factor` about a place. */
  zoom(aboutPx: number, factor: number): void;
  /** Pressed twice at this place. */
  reset(xPx: number): void;
}

const STILL_PX = 4;
const WHEEL_RATE = 0.0016;

/** Listens for mouse, touch and wheel on an element. The gestures may be new on every drawing; listeners are set once. */
export function useProfilePointer(
  ref: RefObject<HTMLElement | null>,
  gestures: ProfileGestures,
): void {
  const latest = useRef(gestures);
  latest.current = gestures;
  useEffect(() => {
    const element = ref.current;
    if (!element) return;
    const stop = new AbortController();
    listen(element, () => latest.current, stop.signal);
    return () => stop.abort();
  }, [ref]);
}

function listen(element: HTMLElement, gestures: () => ProfileGestures, signal: AbortSignal): void {
  const held = new Map<number, number>();
  let startPx = 0;
  let hasMoved = false;
  const placeOf = (event: MouseEvent) => event.clientX - element.getBoundingClientRect().left;

  const down = (event: PointerEvent) => {
    if (event.button !== 0) return;
    if (isOnControl(event)) return;
    element.setPointerCapture(event.pointerId);
    held.set(event.pointerId, placeOf(event));
    startPx = placeOf(event);
    hasMoved = held.size > 1;
  };

  const move = (event: PointerEvent) => {
    const xPx = placeOf(event);
    const was = held.get(event.pointerId);
    if (was === undefined) {
      if (event.pointerType === "mouse" || event.pointerType === "pen") gestures().hover(xPx);
      return;
    }
    if (held.size > 1) {
      pinch(held, event.pointerId, xPx, gestures());
      return;
    }
    hasMoved ||= Math.abs(xPx - startPx) > STILL_PX;
    if (!hasMoved) return;
    held.set(event.pointerId, xPx);
    const isPanned = event.pointerType === "mouse" && gestures().pan(xPx - was);
    if (!isPanned) gestures().scrub(xPx);
  };

  const up = (event: PointerEvent) => {
    if (!held.delete(event.pointerId)) return;
    if (!hasMoved && event.type === "pointerup") gestures().press(placeOf(event));
  };

  const wheel = (event: WheelEvent) => {
    event.preventDefault();
    const pageFactor = event.deltaMode === 1 ? 16 : 1;
    const sideways = event.shiftKey ? event.deltaX + event.deltaY : event.deltaX;
    const isSideways = event.shiftKey || Math.abs(event.deltaX) > Math.abs(event.deltaY);
    if (isSideways) gestures().pan(-sideways * pageFactor);
    else {
      const rate = event.ctrlKey ? WHEEL_RATE * 5 : WHEEL_RATE;
      gestures().zoom(placeOf(event), Math.exp(event.deltaY * pageFactor * rate));
    }
  };

  element.addEventListener("pointerdown", down, { signal });
  element.addEventListener("pointermove", move, { signal });
  element.addEventListener("pointerup", up, { signal });
  element.addEventListener("pointercancel", up, { signal });
  element.addEventListener("wheel", wheel, { signal, passive: false });
  element.addEventListener("dblclick", (event) => gestures().reset(placeOf(event)), { signal });
}

function isOnControl(event: Event): boolean {
  return event.target instanceof Element && event.target.closest("button") !== null;
}

function pinch(
  held: Map<number, number>,
  movedId: number,
  xPx: number,
  gestures: ProfileGestures,
): void {
  const [a, b] = [...held.values()] as [number, number];
  held.set(movedId, xPx);
  const [c, d] = [...held.values()] as [number, number];
  const before = Math.max(8, Math.abs(a - b));
  const after = Math.max(8, Math.abs(c - d));
  const middle = (c + d) / 2;
  gestures.pan(middle - (a + b) / 2);
  gestures.zoom(middle, before / after);
}
