import { longestCellM } from "../ground-accuracy.ts";
import type { GroundSummary } from "../messages.ts";
import type { Plan, VerticalUnit } from "../plan.ts";
import { formatLength, grouped, lengthIn, type UnitSystem } from "../units.ts";
import { verticalDatumWords } from "./vertical-datum.ts";

/** Units that heights of elevation data come in. */
export const HEIGHT_UNIT_WORDS: Readonly<Record<VerticalUnit, string>> = {
  metre: "meters",
  foot: "international feet",
  "us-survey-foot": "US survey feet",
};

/** `3.3 ft cells`, or `cells 3.3 ft to 33 ft` where finer data lie over coarser. */
export function gridCellWords(
  { cellXM, cellYM, coarsestCellM }: GroundSummary,
  system: UnitSystem,
): string {
  const finest = formatLength(Math.max(cellXM, cellYM), system);
  const coarsest = coarsestCellM ? formatLength(coarsestCellM, system) : finest;
  return coarsest === finest ? `${finest} cells` : `cells ${finest} to ${coarsest}`;
}

/** `Heights 171.2 to 402.6 ft, NAVD 88, cells 3.3 ft`; where a person said the unit, that too. */
export function groundLine(summary: GroundSummary, plan: Plan, system: UnitSystem): string {
  const lowest = grouped(lengthIn(summary.lowestM, system), 1);
  const highest = formatLength(summary.highestM, system, 1);
  const isSaid = summary.verticalUnitFrom === "person";
  const said = isSaid ? ` (${HEIGHT_UNIT_WORDS[summary.verticalUnit]}, as you said)` : "";
  const cell = formatLength(longestCellM(summary), system);
  return `Heights ${lowest} to ${highest}${said}, ${verticalDatumWords(plan, summary)}, cells ${cell}`;
}
