/** The steps from nothing to a timed line, in their order. */
export type StepKey = "ground" | "water" | "building" | "line" | "crew";

/** What a step is called in the strip, and before any ground is open. */
export interface StepWords {
  readonly short: string;
  readonly title: string;
  readonly hint: string;
}

export const STEP_WORDS: Readonly<Record<StepKey, StepWords>> = {
  ground: {
    short: "Ground",
    title: "Open elevation data",
    hint: "The lidar file your county or state GIS office has: GeoTIFF or ASCII grid. Choose the file, or drop it anywhere on this page.",
  },
  water: {
    short: "Water",
    title: "Type the forecast stage",
    hint: "And the gauge zero, from the river forecast page. A water elevation works too.",
  },
  building: {
    short: "Building",
    title: "Draw or import the building",
    hint: "Trace its outline on the map, or open a footprint file.",
  },
  line: {
    short: "Line",
    title: "Find or draw a line",
    hint: "The ring that needs the fewest bags, or one you draw.",
  },
  crew: {
    short: "Crew and time",
    title: "Type crew and time",
    hint: "People at work, start of work and shifts.",
  },
};

/** The steps that are shown before any ground is open. */
export const FIRST_STEPS = ["ground", "water", "building"] as const satisfies readonly StepKey[];

/** Files of a plan whose elevation data is not open, as they are asked for. */
export function drawnOnWords(title: string, files: readonly string[]): string {
  if (files.length === 0) return `"${title}" does not say on which elevation data it was drawn.`;
  return `"${title}" was drawn on ${files.join(", ")}. It is sized once that is open.`;
}
