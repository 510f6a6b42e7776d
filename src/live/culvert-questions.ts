import { computed, type ReadonlySignal, signal } from "@preact/signals";
import { pointedCheck } from "./screen.ts";
import { shownMarks } from "./shown-marks.ts";
import { waterNow } from "./water-now.ts";

/** True while the list of places where there may be a culvert is on the screen. */
export const culvertsListed = signal(false);

/**
 * Whether the map marks all those places: while they are listed, while checks or water paths are shown, and as long as
 * a building is dry only if there is no culvert.
 */
export const culvertsShown: ReadonlySignal<boolean> = computed(
  () =>
    culvertsListed.value ||
    shownMarks.value.has("checks") ||
    shownMarks.value.has("water") ||
    (waterNow.value?.structures.some(({ wetIfCulvert }) => wetIfCulvert) ?? false),
);

/** Whether a place is the one that a check or a list points at. */
export function isPointed([lon, lat]: readonly [number, number]): boolean {
  const at = pointedCheck.value?.at;
  return at?.[0] === lon && at[1] === lat;
}
