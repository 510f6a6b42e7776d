import { isCounted, isWhole, mustFixCount } from "../completeness.ts";
import { letterOfLine } from "../line-letter.ts";
import { lengthIn, lengthUnit } from "../units.ts";
import { DISCLAIMER } from "../words/cautions.ts";
import { leaveWords } from "../words/leave.ts";
import { type MustFix, mustFixOf, shortCautions } from "../words/line-state.ts";
import type { Exported, Named, Value } from "./exported.ts";
import { decimals } from "./rounded.ts";

/** Facts of a line; the unit in each name. */
type State = Readonly<Record<string, Value | readonly MustFix[] | readonly string[]>>;

/** Which line it is, what its figures are of and count from, and how many things must be fixed. */
export function lineFacts(exported: Exported): Named {
  const { plan, line, checks, isTraced, verticalDatum, system } = exported;
  const { totals } = line;
  const unit = lengthUnit(system);
  return {
    site: plan.title,
    line_letter: letterOfLine(plan, line.id),
    line: line.name,
    vertical_datum: verticalDatum,
    complete: isWhole(line),
    [`line_without_elevation_data_${unit}`]: decimals(lengthIn(totals.lengthNoDataM, system), 1),
    [`line_over_height_limit_${unit}`]: isCounted(line)
      ? decimals(lengthIn(totals.lengthOverLimitM, system), 1)
      : null,
    water_traced: isTraced,
    leave: leaveWords(plan, system),
    must_fix_count: mustFixCount(checks),
  };
}

/**
 * What must be read beside any figure of a line: its facts, what must be fixed on it, with kind and figures in SI
 * (`finding`), and the cautions.
 */
export function lineState(exported: Exported): State {
  const { checks, system } = exported;
  return {
    ...lineFacts(exported),
    must_fix: mustFixOf(checks, system),
    cautions: [...shortCautions(exported), DISCLAIMER],
  };
}
