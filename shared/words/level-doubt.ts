import type { LevelCause, LevelDoubt } from "../level-doubt.ts";
import { listed } from "./list.ts";
import type { Units } from "./units.ts";

/** `no ground below the water`: in the place of a figure. */
export function levelDoubtShort({ kind }: LevelDoubt): string {
  return kind === "far-above" ? "water far above the ground" : "no ground below the water";
}

/** What does not belong together, in figures. */
export function levelDoubtWords(doubt: LevelDoubt, { elevation, distance }: Units): string {
  const { kind, waterM, apartM, lowestGroundM, highestGroundM } = doubt;
  const ground = `the ground on it is ${elevation(lowestGroundM)} to ${elevation(highestGroundM)}`;
  const water = `the water ${elevation(waterM)}`;
  if (kind === "far-above") {
    return `The sized-for water is at least ${distance(apartM)} above all ground on this line: ${ground}, ${water}. Its bags and hours are no answer.`;
  }
  const far = kind === "far-below" ? ` by at least ${distance(apartM)}` : "";
  const counts = doubt.countsUnknown
    ? "Its bags and hours are no answer."
    : "What is counted is freeboard alone, and whether there is time is not known.";
  return `No ground on this line is below the sized-for water${far}: ${ground}, ${water}. ${counts}`;
}

/** What is most likely wrong. */
export function levelDoubtRemedy({ causes }: LevelDoubt): string {
  const [first, ...others] = causes.map((cause) => CAUSES[cause]);
  const rest = others.length > 0 ? ` Then check ${listed(others)}.` : "";
  return `Check first ${first}.${rest}`;
}

const CAUSES: Readonly<Record<LevelCause, string>> = {
  unit: "the unit: feet and meters look mixed up, in the elevation data or in the water",
  "stage-as-elevation": "whether a stage was typed as the water-surface elevation",
  "no-gauge-zero": "the gauge zero: it is 0, so the stage alone is taken as the elevation",
  "gauge-zero": "stage and gauge zero",
  datum: "the vertical datum of water and elevation data",
  elevation: "the water-surface elevation",
  place: "the place of the line",
};
