import type { SizedLine } from "../../shared/sizing-types.ts";
import { levelDoubtRemedy, levelDoubtWords } from "../../shared/words/level-doubt.ts";
import type { Units } from "../../shared/words/units.ts";

/** Where water and ground do not belong together, a sentence for each line. */
export function levelDoubts(lines: readonly SizedLine[], units: Units): string[] {
  return lines.flatMap(({ name, levelDoubt }) =>
    levelDoubt
      ? [`"${name}": ${levelDoubtWords(levelDoubt, units)} ${levelDoubtRemedy(levelDoubt)}`]
      : [],
  );
}
