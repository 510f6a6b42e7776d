import { isWhole } from "../completeness.ts";
import { hasOtherSections } from "../reaches.ts";
import type { SizedLine } from "../sizing-types.ts";
import { formatCount } from "../units.ts";
import { mustFixWords } from "./must-fix.ts";

/** A line that another is measured against. */
export interface Rival {
  readonly line: SizedLine;
  readonly letter: string;
}

/**
 * `, 4,870 fewer than A`, with what must be fixed on either and what else either takes; empty where one of them is
 * not counted in full.
 */
export function againstRival(
  line: SizedLine,
  { line: rival, letter }: Rival,
  mustFixOn: (line: SizedLine) => number,
): string {
  if (!isWhole(line) || !isWhole(rival)) return "";
  const difference = line.totals.bags - rival.totals.bags;
  const size = formatCount(Math.abs(difference));
  const words =
    difference === 0
      ? `, as many as ${letter}`
      : `, ${size} ${difference < 0 ? "fewer" : "more"} than ${letter}`;
  const isBagsAlone = !hasOtherSections(line) && !hasOtherSections(rival);
  const [here, there] = [mustFixOn(line), mustFixOn(rival)];
  const beside = [
    difference !== 0 && !isBagsAlone && "other materials beside",
    here > 0 && `${mustFixWords(here)} here`,
    there > 0 && `${mustFixWords(there)} on ${letter}`,
  ].filter((each) => each !== false);
  return [words, ...beside].join("; ");
}
