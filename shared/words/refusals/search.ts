import { compassWords } from "../compass.ts";
import type { RefusalTexts } from "./text.ts";

/** Where something lies, degrees clockwise from north. */
interface Toward {
  readonly towardDeg: number;
}

/** Of searching for a ring or a better line, and of choosing among lines. */
export const SEARCH_REFUSALS = {
  "site/no-structure": ({ ofPlan }: { ofPlan: boolean }) =>
    ofPlan
      ? [
          "A ring is looked for around a building, and the plan has none that is chosen.",
          "Draw the footprint of the building, import it, or choose another one.",
        ]
      : [
          "A ring is looked for around a building, and none is chosen.",
          "Draw the footprint of the building, or open a plan that has one.",
        ],
  "site/flat-structure": () => [
    "The outline of a building should enclose some ground; this one has fewer than three corners or no area.",
    "Draw the footprint again.",
  ],
  "site/window-misses-structure": () => [
    "The search window should include the whole building; part of it lies outside.",
    "Draw the window around the building with room for the line, or use one of the fixed widths.",
  ],
  "site/too-wide": ({ acrossM, mostM }: { acrossM: number; mostM: number }, units) => [
    `The buildings and the search window spread over ${units.distance(acrossM)}; at most ${units.distance(mostM)} can be searched at once.`,
    "Choose fewer buildings or a smaller search window.",
  ],
  "site/too-few-corners": ({ closed, corners }: { closed: boolean; corners: number }) => [
    `A ${closed ? "ring of at least three corners" : "line of at least two corners"} was expected; ${corners} came.`,
    "Draw the line first.",
  ],
  "site/out-of-time": ({ capMs, buildings }: { capMs: number; buildings: number }) => [
    `No ring was found within ${Math.max(0.1, Math.round(capMs / 100) / 10)} s around ${buildings === 1 ? "the building" : `the ${buildings} buildings`}. The search was cut short: there may be one.`,
    "Choose fewer buildings or a smaller search window, or draw the line by hand.",
  ],
  "site/no-ring": ({ buildings }: { buildings: number }) =>
    buildings === 1
      ? [
          "No closed line around the building was found in the search window, although there is room for one.",
          "Make the search window larger, or draw the ring and let it be improved.",
        ]
      : [
          `No one ring around all ${buildings} buildings was found in the search window.`,
          "Make the search window larger, or find rings around fewer of them.",
        ],
  "site/no-ground": () => [
    "There is no elevation data anywhere in the search window where a line could run: the building is in a gap of the elevation data or beyond its edge.",
    "Open elevation data that covers the building and its surroundings, or check the place of the footprint.",
  ],
  "site/edge-of-data": ({ towardDeg }: Toward) => [
    `No ring can close: to the ${compassWords(towardDeg)} of the building the elevation data is missing, from the building's surroundings to the edge of the search window.`,
    "Open elevation data that reaches further to that side, or one without the hole, or draw the ring by hand from levels taken on site.",
  ],
  "site/water-in-the-way": ({ towardDeg }: Toward) => [
    `No ring can close: to the ${compassWords(towardDeg)} permanent water comes closer to the building than the setback and half the base allow.`,
    "Reduce the setback if the site allows it, lower the top of levee, or protect the building itself.",
  ],
  "site/all-no-go": ({ towardDeg }: Toward) => [
    `No ring can close: to the ${compassWords(towardDeg)} no-go areas, or other buildings that the line keeps off, reach from the building's surroundings to the edge of the search window.`,
    "Take one of the no-go areas away or make it smaller, or make the search window larger so that the line can go around it.",
  ],
  "site/window-too-small": ({ towardDeg }: Toward) => [
    `No ring fits: to the ${compassWords(towardDeg)} the setback and half the base reach out of the search window.`,
    "Make the search window larger, or reduce the setback.",
  ],
  "plan/no-such-line": ({ id }: { id: string }) => [
    `The plan has no line with the id "${id}".`,
    "Choose one of the lines of the plan.",
  ],
  "buildings/no-water": ({ levelM }: { levelM: number }, units) => [
    `Expected water on some of the elevation data; none of its ground is under water at ${units.elevation(levelM)}.`,
    "Check the stage, the gauge zero, the datum offset and the vertical unit of the elevation data: they may not belong together.",
  ],
  "choice/bad-figure": ({ lineId, came }: { lineId: string | null; came: number }) => [
    `Expected figures of 0 or more for ${lineId === null ? "stock or people" : `the line "${lineId}"`}; came ${came}.`,
    "Correct that figure, then choose again.",
  ],
  "choice/same-id": ({ id }: { id: string }) => [
    `Expected lines with ids of their own; two have the id "${id}".`,
    "Give each line its own id, then choose again.",
  ],
} satisfies RefusalTexts;
