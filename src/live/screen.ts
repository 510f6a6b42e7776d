import { computed, type ReadonlySignal, signal } from "@preact/signals";
import type { LonLat } from "../../shared/plan.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { prefersDark } from "../browser/prefers-dark.ts";
import { recall, remember } from "../browser/remember.ts";

/** What the pointer does on the map. `move` edits corners of the chosen alternative. */
export type Tool =
  | "move"
  | "draw-ring"
  | "draw-line"
  | "draw-structure"
  | "draw-no-go"
  | "draw-flow"
  | "place-gauge"
  | "place-source"
  | "draw-culvert"
  | "place-drain"
  | "draw-road"
  | "place-pile"
  | "place-pumps"
  | "draw-truck-way";

/** What the engine is doing for longer than 300 ms. */
export const busy = signal<{
  readonly doing: string;
  readonly share: number;
  readonly cancel: () => void;
} | null>(null);
export const tool = signal<Tool>("move");
/** Show every alternative on the map, or the chosen one alone. */
export const showAll = signal(true);
/** Marked station on the chosen alternative, as a chainage; kept inside the line by whoever draws it. */
export const markedM = signal<number | null>(null);
/** A check whose stretch the person points at. */
export const pointedCheck = signal<{
  readonly fromM: number;
  readonly toM: number;
  readonly at: LonLat | null;
} | null>(null);
/** Whether the pages for print are open over the working screen. */
export const pagesOpen = signal(false);

export const unitSystem = remembered<UnitSystem>("drystead.units", ["us", "metric"], "us");

const chosenTheme = remembered<"light" | "dark" | "">("drystead.theme", ["light", "dark"], "");

/** Light or dark: as the machine is set until the person chooses. */
export const theme: ReadonlySignal<"light" | "dark"> = computed(
  () => chosenTheme.value || (prefersDark.value ? "dark" : "light"),
);

/** Chooses the other theme from now on. */
export function flipTheme(): void {
  chosenTheme.value = theme.peek() === "light" ? "dark" : "light";
}

/** A choice kept on this machine; `fallback` until one is made. */
function remembered<T extends string>(key: string, allowed: readonly T[], fallback: T) {
  const kept = recall(key, fallback);
  const value = signal<T>(allowed.find((each) => each === kept) ?? fallback);
  value.subscribe((next) => {
    if (next !== recall(key, fallback)) remember(key, next);
  });
  return value;
}
