/** What must be there before a row of the worksheet can say anything. */
export type Missing = "ground" | "building" | "line" | "answer";
/** The rows that say it. */
export type WaitingRow = "line" | "quantities" | "holding" | "time";

const GROUND = "Open the elevation data first.";

const STEPS: Readonly<Record<WaitingRow, Readonly<Partial<Record<Missing, string>>>>> = {
  line: {
    ground: "Open the elevation data first; then draw on it.",
    building:
      "Draw the building, or import its footprint. Then make a ring around it with one press.",
    line: "Draw a ring around the building, a line tied in to high ground, or make a ring at a setback.",
  },
  quantities: { ground: GROUND, line: "Draw a ring or a line to see what it takes." },
  holding: {
    ground: "Open the elevation data first; the heights come from it.",
    line: "Draw a ring or a line to calculate stability, seepage and pumps.",
    answer: "Calculating…",
  },
  time: {
    ground: GROUND,
    line: "Draw a ring or a line to see how long it takes.",
    answer: "Calculating the build sequence.",
  },
};

/** What to do next in a row that has nothing to show yet. */
export function nextStepWords(row: WaitingRow, missing: Missing): string {
  return STEPS[row][missing] ?? GROUND;
}

/** That a line cannot be counted, and what is not known for it. @param why a whole sentence */
export function uncountedWords(row: "quantities" | "time", why: string): string {
  return `${why} ${row === "time" ? "The time is not known." : "Nothing is counted."}`;
}
