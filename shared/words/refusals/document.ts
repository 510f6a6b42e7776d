import type { Failure } from "../../failure.ts";
import { bytesWords } from "../storage-room.ts";
import type { RefusalTexts } from "./text.ts";

const GO_ON = "You can go on. Save the plan as a file before you close this page.";

const SHAPE_NEEDS = {
  nothing: "Nothing was being drawn.",
  ring: "A ring needs at least 3 corners.",
  line: "A line needs at least 2 corners.",
  building: "A building needs at least 3 corners.",
  "no-go": "A no-go area needs at least 3 corners.",
  flow: "The river's flow needs two places: upstream and downstream.",
  gauge: "The gauge needs a place.",
  source: "A source needs a place.",
  culvert: "A culvert needs two ends.",
  road: "A road needs at least 2 corners.",
  drain: "A drain needs a place.",
  "work-place": "A work place needs a place on the map.",
  "truck-way": "The trucks' way in needs at least 2 corners.",
} as const;

/** Why an edit is refused, what became of saving the plan in this browser, and of files that are no plan. */
export const DOCUMENT_REFUSALS = {
  "autosave/full": ({ what }: { what: "plan" | "terrain" }) =>
    what === "plan"
      ? [
          "The browser has no room left: your last edits are not saved.",
          `${GO_ON} Once disk space is free, the plan is saved again.`,
        ]
      : [
          "The browser has no room left to save this elevation data.",
          "You can go on. After the page is closed, open the files again.",
        ],
  "autosave/almost-full": ({ leftBytes }: { leftBytes: number }) => [
    `The browser has room for only ${bytesWords(leftBytes)} more. The plan is saved; large elevation data may not be.`,
    "Free disk space, and save the plan as a file.",
  ],
  "autosave/refused": ({ cause }: { cause: string }) => [
    `The browser does not save this plan: ${cause}`,
    `${GO_ON} A private window or blocked site data may be the cause.`,
  ],
  "autosave/again": () => ["The plan is saved in this browser again.", ""],
  "autosave/unreadable": ({ why }: { why: Failure }, _units, say) => [
    `The plan saved in this browser cannot be opened: ${say(why)[0]}`,
    "It is left as it is. Open the plan from its file, or go on with a new one.",
  ],
  "autosave/view-only": () => [
    "This plan is open for editing on another page; here it can only be looked at.",
    "Press Edit here first, or work on a copy.",
  ],
  "autosave/taken-over": () => [
    "Another page has taken this plan over, because this one did not answer.",
    "This page goes on with its own copy. Nothing is lost in either.",
  ],
  "autosave/too-many-pages": () => [
    "So many pages of Drystead are open that this one's plan is not saved.",
    "Save the plan as a file before you close this page, or close other pages and reload.",
  ],
  "autosave/terrain-lost": () => [
    "The plan is back, but the browser has lost the elevation data saved with it.",
    "Open the elevation data again in Elevation data.",
  ],
  "plan/several": (
    { first, others }: { first: { name: string; why: Failure }; others: readonly string[] },
    _units,
    say,
  ) => {
    const [message, remedy] = say(first.why);
    const named = others.slice(0, MOST_NAMED).map((name) => `"${name}"`);
    const more = others.length - named.length;
    const list = more > 0 ? `${named.join(", ")} and ${more} more` : named.join(", ");
    return [`"${first.name}": ${message} Not opened as plans either: ${list}.`, remedy];
  },
  "reach/outside": () => [
    "Expected a station inside the line, away from its ends.",
    "Type a station between the first and the last.",
  ],
  "reach/taken": ({ closestM }: { closestM: number }, units) => [
    "A reach already ends at that station.",
    `Choose a station at least ${units.length(closestM)} away.`,
  ],
  "reach/passed": () => [
    "Expected a station between the ends of the two reaches that meet here.",
    "Join reaches first to move an end past another.",
  ],
  "reach/stretch": () => [
    "Expected two stations on the line, the first before the second.",
    "Type where the stretch begins and where it ends.",
  ],
  "reach/short": ({ shortestM }: { shortestM: number }, units) => [
    `Expected a stretch of ${units.length(shortestM)} or more.`,
    "Type two stations that lie further apart.",
  ],
  "ring/no-structure": () => [
    "Expected a building to go around; the plan has none.",
    "Draw the building or import its footprint first.",
  ],
  "ring/distance": ({ mostM, cameM }: { mostM: number; cameM: number }, units) => [
    `Expected a distance above 0 and up to ${units.distance(mostM)}; came ${units.distance(cameM)}.`,
    "Check the setback and the height to allow for.",
  ],
  "ring/flat-structure": () => [
    "Expected a building with some area; all its corners lie on one line.",
    "Draw the building again.",
  ],
  "draw/too-few": ({ shape }: { shape: keyof typeof SHAPE_NEEDS }) => [
    SHAPE_NEEDS[shape],
    "Set its corners one after the other, then double-click or press Enter.",
  ],
  "draw/not-editable": ({ name, cause }: { name: string; cause: string | null }) => [
    `${name} cannot be edited on the map: ${cause ?? "its shape was refused"}.`,
    "Edit its corners in the table under Line.",
  ],
  "site/unchanged": ({ name, why }: { name: string; why: "changed" | "no-saving" }) =>
    why === "changed"
      ? [`${name} stays as it is. It was changed meanwhile.`, "Improve it again."]
      : [
          `${name} stays as it is. A short move saves nothing: its corners are where they need the fewest bags.`,
          "Find the ring looks further away.",
        ],
  "base-map/address": () => [
    "Expected a web address of map tiles with {z}, {x} and {y} in it, such as https://tiles.example/{z}/{x}/{y}.png.",
    "Copy the tile address from whoever offers the map, or leave the base map off.",
  ],
} satisfies RefusalTexts;

/** Most files named beside the first. */
const MOST_NAMED = 5;
