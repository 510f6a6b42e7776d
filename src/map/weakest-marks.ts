import "./weakest-marks.css";
import { computed } from "@preact/signals";
import type { Map as MapLibreMap } from "maplibre-gl";
import type { Verdict } from "../../shared/holding/types.ts";
import { mustFixWords } from "../../shared/words/must-fix.ts";
import { weakestPlaces } from "../../shared/words/weakest.ts";
import { spotAt } from "../drawing/line/along.ts";
import { chosenLine } from "../live/results.ts";
import { unitSystem } from "../live/screen.ts";
import { shownMarks } from "../live/shown-marks.ts";
import { mustFixOnChosen } from "../live/water-now.ts";
import { keepPlaceMarks, type PlaceMark } from "./place-marks.tsx";

/** The diamond of the profile. */
export const WEAKEST_SYMBOL = "M8 1.5 14.5 8 8 14.5 1.5 8z";

const TITLES: Readonly<Record<Verdict, string>> = {
  "meets-required": "Lowest factor: as required",
  doubtful: "Lowest factor: below what is required at low friction",
  "below-required": "Lowest factor: below what is required",
};

const marks = computed((): readonly PlaceMark[] => {
  const line = chosenLine.value;
  if (!line || !shownMarks.value.has("weakest")) return [];
  const mustFix = mustFixOnChosen.value;
  const fix = mustFix > 0 ? ` The line has ${mustFixWords(mustFix)}.` : "";
  return weakestPlaces(line.holding?.standing, unitSystem.value).flatMap((place) => {
    const spot = spotAt(line.walk, place.chainageM);
    if (!spot) return [];
    const { verdict } = place;
    const text = `${place.text}${fix}`;
    const mark = {
      kind: `weakest-${verdict}`,
      title: TITLES[verdict],
      text,
      symbol: WEAKEST_SYMBOL,
    };
    return [{ ...mark, at: spot.at, anchor: "above" as const }];
  });
});

/** Keeps a button, while they are shown, where the chosen line is weakest against sliding and overturning: quiet where both are as required. */
export function keepWeakestMarks(map: MapLibreMap): void {
  keepPlaceMarks(map, marks);
}
