import { signal } from "@preact/signals";

/** Whether the ground between the found line and the one chosen before is shaded on the map. */
export const differenceShown = signal(true);
