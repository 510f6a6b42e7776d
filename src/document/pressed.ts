/** Whether a pointer is held down on the page: what changes meanwhile is still being dragged. */
export interface Pressed {
  isDown(): boolean;
  stop(): void;
}

/**
 * @param onLift called after everything else has heard that the last pointer was lifted, lost or let go outside the
 * window
 */
export function whilePressed(onLift: () => void): Pressed {
  const down = new Set<number>();
  const lift = ({ pointerId }: PointerEvent) => {
    if (down.delete(pointerId) && down.size === 0) setTimeout(onLift);
  };
  const listening = new AbortController();
  const options = { capture: true, signal: listening.signal };
  window.addEventListener("pointerdown", ({ pointerId }) => down.add(pointerId), options);
  window.addEventListener("pointerup", lift, options);
  window.addEventListener("pointercancel", lift, options);
  window.addEventListener("pointermove", (event) => event.buttons === 0 && lift(event), options);
  return { isDown: () => down.size > 0, stop: () => listening.abort() };
}
