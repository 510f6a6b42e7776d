import type { LonLatComplaint } from "../../plan-complaints.ts";
import { cameWords, shown } from "../came.ts";

/*
 * What was expected of a value of a plan and what came, for the schemas. Figures are in the units of a plan file,
 * which is written in meters; `what` is a noun with the name of the entry: "the size of the culvert (sizeM)".
 */

export function quantityWords(what: string, [least, most]: Range, unit: string, came: unknown) {
  return `Expected ${what} from ${least} to ${most}${unit && ` ${unit}`}; came ${shown(came)}.`;
}

type Range = readonly [least: number, most: number];

export function choiceWords(what: string, allowed: readonly string[], came: unknown): string {
  return `Expected ${what} to be one of ${allowed.join(", ")}; came ${shown(came)}.`;
}

export function yesOrNoWords(what: string, came: unknown): string {
  return `Expected ${what} as true or false; came ${shown(came)}.`;
}

export function plainTextWords(what: string, [least, most]: Range, came: unknown): string {
  return `Expected ${what} as ${least} to ${most} characters of plain text; came ${shown(came)}.`;
}

export function entriesWords(what: string, names: readonly string[], came: unknown): string {
  return `Expected ${what} as an object with ${names.join(", ")}; came ${shown(came)}.`;
}

/** @param entry its name in quotes */
export function unknownEntryWords(what: string, entry: string): string {
  return `Expected ${what} without the unknown entry ${entry}.`;
}

export function noListWords(what: string, came: unknown): string {
  return `Expected ${what} as a list; came ${shown(came)}.`;
}

export function tooManyWords(most: number, what: string, came: number | string): string {
  return `Expected at most ${most} ${what}; came ${came}.`;
}

export function wholeNumberWords(what: string, came: number): string {
  return `Expected ${what} as a whole number; came ${came}.`;
}

export function momentWanted(what: string, came: unknown): string {
  return `Expected ${what} as a time such as 2026-04-08T11:00-05:00; came ${shown(came)}.`;
}

export function inMetersWords(what: string, came: unknown): string {
  return `Expected ${what} in meters; came ${shown(came)}.`;
}

export function rasterAddressWords(came: unknown): string {
  return `Expected its address as http or https; came ${shown(came)}.`;
}

export function lonLatWords({ came, likely }: LonLatComplaint): string {
  const said = `Expected [longitude, latitude] in degrees, longitude from -180 to 180 and latitude from -90 to 90; came ${cameWords(came)}.`;
  if (likely === null) return said;
  const why = {
    swapped: "The two look swapped: longitude comes first (RFC 7946).",
    grid: "These look like map meters or feet, not degrees.",
  };
  return `${said} ${why[likely]}`;
}

export function cornerCountWords(what: string, [least, most]: Range, came: number): string {
  return `Expected ${what} from ${least} to ${most}; came ${came}.`;
}

/** @param one @param other corners, from 1 */
export function sameCornersWords(one: number, other: number): string {
  return `Expected neighboring corners at different places; corners ${one} and ${other} are at the same place.`;
}

export function differentCornersWords(least: number, came: number): string {
  return `Expected at least ${least} different corners; came ${came}.`;
}

export function lineTooLongWords(what: string, mostM: number, cameM: number): string {
  return `Expected ${what} within ${mostM / 1000} km of line; came about ${Math.round(cameM / 1000)} km.`;
}

export function lineKindWords(came: unknown): string {
  return `Expected a line of kind ring or line; came ${shown(came)}.`;
}

export function breaksWords(most: number, came: unknown): string {
  return `Expected reach breaks (reachBreaksM) as at most ${most} rising distances from the start of the line, above 0 m; came ${shown(came)}.`;
}

export function pinsWords(came: unknown): string {
  return `Expected pinned corners (pinned) as rising whole numbers from 0; came ${shown(came)}.`;
}

export const FLOW_AT_ONE_PLACE =
  "Expected the flow arrow to lead from one place to another; both ends are at the same place.";

export const CLOSURES_APART =
  "Expected closures in order along the line, each with its end (toM) past its start (fromM), none over another.";

export const NO_LEAVE_LEVEL =
  "Expected a stage, an elevation or an hour to leave (leave.levelM, leave.at); came none.";

export const LAP_TOO_LONG =
  "Expected the lap of the poly sheeting (section.sheet.lapM) shorter than its roll (section.sheet.rollLengthM).";

export function wholeSecondsWords(came: number): string {
  return `Expected when it was marked (atS) in whole seconds; came ${came}.`;
}

export function builtBackwardWords(fromM: number, toM: number): string {
  return `Expected what is built to end (toM) after it starts at ${fromM} m; came ${toM} m.`;
}

export function invertsWords([least, most]: Range, came: unknown): string {
  return `Expected the inverts (invertsM) as two elevations from ${least} to ${most} m, or null, first end first; came ${shown(came)}.`;
}

export function workPlaceWords(kind: "pile" | "pumps" | "truck-way", came: number): string {
  const expected = kind === "truck-way" ? "a line of at least 2 points" : "one point";
  return `Expected ${expected} for the kind ${kind}; came ${came}.`;
}

export function errorSharesWords(bias: number, correlated: number): string {
  return `Expected the shares of the elevation error (ground.biasShare and ground.correlatedShare) to be at most 1 together; came ${bias} and ${correlated}.`;
}

export function taskRatesWords(low: number, high: number): string {
  return `Expected the low rate of a task (practice.taskRateLow) not above the high rate of ${high}; came ${low}.`;
}

/** @param low @param high names of the entries */
export function rangeTurnedWords(what: string, low: string, high: string): string {
  return `Expected the low end of the ${what} (holding.${low}) not above its high end (holding.${high}).`;
}

export function dayTurnedWords(fromH: number, toH: number): string {
  return `Expected the start of a day's work (time.dayFromH) before its end at ${toH} h; came ${fromH} h.`;
}
