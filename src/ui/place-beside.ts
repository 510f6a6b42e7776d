const GAP_PX = 6;
const EDGE_PX = 8;

/** Puts a fixed box under its anchor, or over it where there is more room, inside the window and no higher than it. */
export function placeBeside(box: HTMLElement, anchor: HTMLElement): void {
  box.style.maxHeight = "";
  const at = anchor.getBoundingClientRect();
  const size = box.getBoundingClientRect();
  const roomBelow = window.innerHeight - at.bottom;
  const below = roomBelow >= size.height + GAP_PX + EDGE_PX || roomBelow >= at.top;
  const top = below ? at.bottom + GAP_PX : at.top - GAP_PX - size.height;
  const left = Math.min(at.left, window.innerWidth - size.width - EDGE_PX);
  box.style.left = `${Math.max(EDGE_PX, left)}px`;
  const heldTop = Math.max(EDGE_PX, top);
  box.style.top = `${heldTop}px`;
  box.style.maxHeight = `${window.innerHeight - heldTop - EDGE_PX}px`;
}
