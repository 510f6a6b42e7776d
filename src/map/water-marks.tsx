import { computed } from "@preact/signals";
import type { Map as MapLibreMap } from "maplibre-gl";
import { firstOverText, sillText, wayInText } from "../../shared/words/water-marks.ts";
import { plan } from "../document/store.ts";
import { unitSystem } from "../live/screen.ts";
import { shownMarks } from "../live/shown-marks.ts";
import { tracedLine, waterNow } from "../live/water-now.ts";
import { keepPlaceMarks, type PlaceMark } from "./place-marks.tsx";

/** Water that breaks in, water over a crest, water over a low place; 16 units square. */
export const WATER_SYMBOLS = {
  "way-in": "M2 8h10M8.5 4 12.5 8l-4 4",
  "first-over": "M1.5 13.5 6 8h4l4.5 5.5M2 5.5c2.5-3 4.5 1.5 7-.5s3-.5 5 .5",
  sill: "M1.5 7.5c3.5 0 3.5 5 6.5 5s3-5 6.5-5M2 4c2-2 4 1.5 6 0s4-1.5 6 0",
} as const;

const marks = computed((): readonly PlaceMark[] => {
  if (!shownMarks.value.has("water")) return [];
  const found = [wayInMark(), firstOverMark(), sillMark()];
  return found.filter((mark) => mark !== null);
});

/** Keeps buttons, while water paths are shown, where water comes in, where it comes first if the river rises, and where it comes without a levee. */
export function keepWaterMarks(map: MapLibreMap): void {
  keepPlaceMarks(map, marks);
}

function wayInMark(): PlaceMark | null {
  const line = tracedLine.value;
  const way = line?.wayIn;
  if (!line || !way) return null;
  return {
    kind: "way-in",
    symbol: WATER_SYMBOLS["way-in"],
    at: way.at,
    title: "The water comes in here",
    text: wayInText(way, line.structures, unitSystem.value),
  };
}

function firstOverMark(): PlaceMark | null {
  const line = tracedLine.value;
  const first = line?.firstOver;
  if (!line?.dry || !first) return null;
  return {
    kind: "first-over",
    symbol: WATER_SYMBOLS["first-over"],
    at: first.at,
    title: "First to let water in if the river rises further",
    text: firstOverText(line, plan.value, unitSystem.value)!,
  };
}

/** Of the structures that the chosen line is for, the one that water reaches first without a levee. */
function sillMark(): PlaceMark | null {
  const kept = new Set(tracedLine.value?.structures.map(({ id }) => id));
  const structures = waterNow.value?.structures ?? [];
  const reached = structures.filter(({ id, sillAt }) => kept.has(id) && sillAt !== null);
  if (reached.length === 0) return null;
  const first = reached.reduce((a, b) => (b.marginM! < a.marginM! ? b : a));
  return {
    kind: "sill",
    symbol: WATER_SYMBOLS.sill,
    at: first.sillAt!,
    title: "Where water comes without a levee",
    text: sillText(first, plan.value, unitSystem.value),
  };
}
