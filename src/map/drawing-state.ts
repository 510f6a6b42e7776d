import { signal } from "@preact/signals";

/** True once shapes can be drawn and corners moved: what does it is fetched after the first picture. */
export const isEditable = signal(false);
/** True while a corner is being dragged. */
export const dragging = signal(false);
/** How many corners the shape being drawn has so far; null when nothing is being drawn. */
export const drawnCorners = signal<number | null>(null);
/** True while the keyboard draws: corners are set at the cross in the middle of the map. */
export const drawingByKeys = signal(false);
/** The corner of the chosen line that a finger may drag: chosen by a tap, by index. */
export const tappedCorner = signal<number | null>(null);
/** True while the pointer is near the chosen line, where a corner can be put in. */
export const isNearLine = signal(false);
