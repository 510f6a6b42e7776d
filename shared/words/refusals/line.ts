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
  unexpected: ({ message }: { message: string }) => [
    `Something went wrong that should not have: ${message}`,
    "Your plan is saved. Try again; if it happens again, save the plan file and report it.",
  ],
  cancelled: ({ overtaken }: { overtaken: boolean }) =>
    overtaken
      ? ["Other elevation data was opened meanwhile.", "Open this again if you want it instead."]
      : ["The work was cancelled.", "Start it again when you want it."],
} satisfies RefusalTexts;
