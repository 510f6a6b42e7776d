import type { Plan } from "../../shared/plan.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { formatLength, type UnitSystem } from "../../shared/units.ts";
import type { TracedAlternative } from "../../shared/water-types.ts";
import { levelDoubtShort } from "../../shared/words/level-doubt.ts";
import { mustFixWords } from "../../shared/words/must-fix.ts";
import { overtopsWords } from "../../shared/words/water.ts";
import { mustFixOn } from "./water-now.ts";

/** Shorter than this is a rounding, metres. */
const A_STRETCH_M = 0.05;

/** How much of a line runs over ground that is not known, in words; null where all of it is known. */
export function gapLength(line: SizedLine | null, system: UnitSystem): string | null {
  const gapM = line?.totals.lengthNoDataM ?? 0;
  return gapM > A_STRETCH_M ? formatLength(gapM, system, 0) : null;
}

/** Above which level a line overtops, what must be fixed on it, and how much of it that leaves aside because its ground is not known; nothing where the water is in doubt. */
export function overtopsButForGap(
  traced: TracedAlternative,
  line: SizedLine | null,
  plan: Plan,
  system: UnitSystem,
): string {
  const doubt = line?.levelDoubt;
  if (doubt?.countsUnknown) return `is not known to keep anything dry: ${levelDoubtShort(doubt)}`;
  const overtops = overtopsWords(traced, plan, system);
  const gap = traced.dry === null ? null : gapLength(line, system);
  const known = gap === null ? overtops : `${overtops}, but for ${gap} not known`;
  const mustFix = line ? mustFixOn(line) : 0;
  return mustFix > 0 ? `${known}; ${mustFixWords(mustFix)}` : known;
}
