import type { Exported } from "../exports/exported.ts";
import { lengthUnit } from "../units.ts";
import { DISCLAIMER } from "./cautions.ts";
import { leaveWords } from "./leave.ts";
import { mustFixLead, mustFixOf, shortCautions } from "./line-state.ts";
import { SETTLING_NOTE } from "./settling.ts";
import { lineTitle, sizedForWords, topRangeWords } from "./title.ts";

/** What a file says of itself beside its figures, a sentence each: what must be fixed comes first. */
export interface FileNotes {
  readonly mustFix: readonly string[];
  /** What it is of, and in which units and over which datum its figures are. */
  readonly about: readonly string[];
  readonly cautions: readonly string[];
}

/** The notes of a file in any format. */
export function fileNotes(exported: Exported): FileNotes {
  const { plan, line, checks, verticalDatum, system } = exported;
  const mustFix = mustFixOf(checks, system);
  return {
    mustFix: [
      ...(mustFix.length > 0 ? [mustFixLead(mustFix.length)] : []),
      ...mustFix.map(({ what, remedy }) => `${what} ${remedy}`),
    ],
    about: [
      `${leaveWords(plan, system)}.`,
      `${plan.title}. ${lineTitle(plan, line)}.`,
      `Sized for ${sizedForWords(plan, system)}. Top of levee ${topRangeWords(line, system)}.`,
      `Elevations, heights and widths are in ${lengthUnit(system)}. Vertical datum: ${verticalDatum}. Longitude and latitude: WGS 84.`,
      SETTLING_NOTE,
    ],
    cautions: [...shortCautions(exported), DISCLAIMER],
  };
}
