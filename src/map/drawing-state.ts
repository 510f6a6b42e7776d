import { signal } from "@preact/signals";

/** True while a corner is being dragged. */
export const dragging = signal(false);
/** How many corners the shape being drawn has so far; null when nothing is being drawn. */
export const drawnCorners = signal<number | null>(null);
