import { A_STRETCH_M } from "../completeness.ts";
import type { Plan } from "../plan.ts";
import type { SizedLine } from "../sizing-types.ts";
import { formatElevation, formatLength, type UnitSystem } from "../units.ts";
import type { TracedAlternative } from "../water-types.ts";
import { levelDoubtShort } from "./level-doubt.ts";
import { mustFixWords } from "./must-fix.ts";
import { firstOverWords, overtopsWords } from "./water.ts";

/** How much of a line runs over ground that is not known, in words; null where all of it is known. */
export function gapLength(line: SizedLine | null, system: UnitSystem): string | null {
  const gapM = line?.totals.lengthNoDataM ?? 0;
  return gapM > A_STRETCH_M ? formatLength(gapM, system, 0) : null;
}

/**
 * Above which level a line overtops, what must be fixed on it, and how much of it that leaves aside because its ground is not known; nothing where the water is in doubt.
 * @param mustFix how many things must be fixed on the line
 */
export function overtopsButForGap(
  traced: TracedAlternative,
  line: SizedLine | null,
  plan: Plan,
  system: UnitSystem,
  mustFix: number,
): string {
  const doubt = line?.levelDoubt;
  if (doubt?.countsUnknown) return `not known whether water gets in: ${levelDoubtShort(doubt)}`;
  const overtops = overtopsWords(traced, plan, system);
  const gap = traced.dry === null ? null : gapLength(line, system);
  const known = gap === null ? overtops : `${overtops}, but for ${gap} without elevation data`;
  return andMustFix(`${known}${ifCulvertWords(traced, plan, system)}`, mustFix);
}

/** That water comes in lower down where there is a culvert nobody knows of. */
function ifCulvertWords(
  { ifCulverts }: Pick<TracedAlternative, "ifCulverts">,
  plan: Plan,
  system: UnitSystem,
): string {
  if (!ifCulverts) return "";
  return `, above ${firstOverWords({ firstOver: ifCulverts }, plan, system)} if there is a culvert`;
}

/** How high the water is, where it is not known whether it gets in, and what must be fixed: `water at 874.00 ft; 2 Must fix`. */
export function waterAtWords(elevationM: number, mustFix: number, system: UnitSystem): string {
  return andMustFix(`water at ${formatElevation(elevationM, system)}`, mustFix);
}

function andMustFix(words: string, mustFix: number): string {
  return mustFix > 0 ? `${words}; ${mustFixWords(mustFix)}` : words;
}
