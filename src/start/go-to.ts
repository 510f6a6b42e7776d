import type { StepKey } from "../../shared/words/steps.ts";
import { openDisclosure } from "../ui/disclosure.tsx";

/** Where the worksheet takes what a step needs: the row to open, and the field. */
const FIELDS: Readonly<Record<StepKey | "place", { row?: string; field: string }>> = {
  ground: { row: "ground", field: '[data-block="ground"] button' },
  water: {
    field: ':is([data-setting="water.stageM"], [data-setting="water.elevationM"]) input',
  },
  building: { row: "line", field: '[data-block="line"] [aria-label="Buildings"]' },
  place: { row: "line", field: ".typed-place input" },
  line: { row: "line", field: '[data-block="line"] button' },
  crew: { row: "time", field: '[data-block="time"] [data-setting="practice.people"] input' },
};

/** Frames of the screen within which a row that was opened is fetched and laid out. */
const MOST_FRAMES = 300;

/** Opens the row of the worksheet that a step belongs to, and puts the focus into its field. */
export function goTo(step: StepKey | "place"): void {
  const place = FIELDS[step];
  if (place.row) openDisclosure(place.row);
  focusOnce(place.field, MOST_FRAMES);
}

function focusOnce(field: string, frames: number): void {
  requestAnimationFrame(() => {
    const found = document.querySelector<HTMLElement>(field);
    if (found?.checkVisibility({ visibilityProperty: true })) {
      found.scrollIntoView({ block: "nearest" });
      found.focus();
    } else if (frames > 0) focusOnce(field, frames - 1);
  });
}
