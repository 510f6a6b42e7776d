import type { RefusalTexts } from "./text.ts";

export const LINE_REFUSALS = {
  "plan/too-wide": ({ widestM, mostM }: { widestM: number; mostM: number }, units) => [
    `The lines and buildings of the plan spread over ${units.far(widestM)}; the levee of one building was expected, at most ${units.far(mostM)}.`,
    "Check for a corner typed in the wrong place, or longitude and latitude swapped.",
  ],
  "plan/no-water": () => [
    "Not known: no stage.",
    "Type the forecast stage and the gauge zero, or a water-surface elevation, in Water.",
  ],
  "plan/empty": () => [
    "The plan has no line and no building yet.",
    "Draw a ring around the building, or open a plan file.",
  ],
  "line/too-few-corners": ({
    kind,
    name,
    corners,
    least,
  }: {
    kind: "ring" | "line";
    name: string;
    corners: number;
    least: number;
  }) => [
    `Expected at least ${least} corners for a ${kind}; "${name}" has ${corners}.`,
    "Draw the line again, or add corners to it.",
  ],
  "line/no-length": ({ name }: { name: string }) => [
    `Expected a line with a length; the corners of "${name}" are all at one place.`,
    "Move its corners apart, or draw the line again.",
  ],
  "line/too-long": ({ mostM, lengthM }: { mostM: number; lengthM: number }, units) => [
    `Expected a line of at most ${units.far(mostM)} on elevation data this fine; it is ${units.far(lengthM)} long.`,
    "Draw a shorter line, or use coarser elevation data.",
  ],
  unexpected: ({ message }: { message: string }) => [
    `Something went wrong that should not have: ${message}`,
    "Your plan is saved. Try again; if it happens again, save the plan file and report it.",
  ],
  cancelled: ({ overtaken }: { overtaken: boolean }) =>
    overtaken
      ? ["Other elevation data was opened meanwhile.", "Open this again if you want it instead."]
      : ["The work was cancelled.", "Start it again when you want it."],
} satisfies RefusalTexts;
