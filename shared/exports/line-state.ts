import { isWhole } from "../completeness.ts";
import { letterOfLine } from "../line-letter.ts";
import { lengthIn, lengthUnit } from "../units.ts";
import { DISCLAIMER } from "../words/cautions.ts";
import { leaveWords } from "../words/leave.ts";
import { type MustFix, mustFixOf, shortCautions } from "../words/line-state.ts";
import type { Exported, Value } from "./exported.ts";
import { decimals } from "./rounded.ts";

/** Facts of a line; the unit in each name. */
type State = Readonly<Record<string, Value | readonly MustFix[] | readonly string[]>>;

/**
 * What must be read beside any figure of a line: which it is, whether it is counted to its end, what must be fixed
 * on it, its vertical datum and the cautions. `finding` is the kind and figures of what must be fixed, SI.
 */
export function lineState({ plan, line, checks, verticalDatum, system }: Exported): State {
  const { totals } = line;
  const unit = lengthUnit(system);
  const mustFix = mustFixOf(checks, system);
  return {
    site: plan.title,
    line_letter: letterOfLine(plan, line.id),
    line: line.name,
    vertical_datum: verticalDatum,
    complete: isWhole(line),
    [`line_without_elevation_data_${unit}`]: decimals(lengthIn(totals.lengthNoDataM, system), 1),
    [`line_over_height_limit_${unit}`]: decimals(lengthIn(totals.lengthOverLimitM, system), 1),
    leave: leaveWords(plan, system),
    must_fix_count: mustFix.length,
    must_fix: mustFix,
    cautions: [...shortCautions(checks, system), DISCLAIMER],
  };
}
