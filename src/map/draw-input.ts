/** Reach of a corner for mouse and finger, CSS pixels. The library's own 40 closes small rings early. */
const MOUSE_REACH_PX = 13;
const FINGER_REACH_PX = 28;
/** What the library ends a shape by: a key that no keyboard has, so that ours alone say what Enter does. */
export const KEYS = { finish: "Finish", cancel: null } as const;

/** How near a pointer of a kind must come to take hold of a corner, CSS pixels. */
export function reachOf(pointerType: string): number {
  return pointerType === "touch" ? FINGER_REACH_PX : MOUSE_REACH_PX;
}

/** Ends the shape being drawn where it stands. */
export function finishDrawing(canvas: HTMLElement): void {
  canvas.dispatchEvent(new KeyboardEvent("keyup", { key: KEYS.finish }));
}
