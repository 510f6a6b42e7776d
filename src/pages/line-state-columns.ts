import type { SizedLine } from "../../shared/sizing-types.ts";
import { lengthIn, lengthUnit, type UnitSystem } from "../../shared/units.ts";
import type { Cell } from "./csv.ts";

/** Heads of the columns that every row of a file ends with: whether the line's totals and heights can be relied on. */
export function lineStateHead(system: UnitSystem): Cell[] {
  return [`Line without elevation data (${lengthUnit(system)})`, "Must fix"];
}

/** Length of the line without elevation data, and how many things must be fixed on it. */
export function lineStateCells(
  { totals }: Pick<SizedLine, "totals">,
  mustFix: number,
  system: UnitSystem,
): Cell[] {
  return [Number(lengthIn(totals.lengthNoDataM, system).toFixed(1)), mustFix];
}
