import type { SizedLine } from "../sizing-types.ts";
import { levelDoubtRemedy, levelDoubtWords } from "./level-doubt.ts";
import type { Units } from "./units.ts";

/** Where water and ground do not belong together, a sentence for each line. */
export function levelDoubts(lines: readonly SizedLine[], units: Units): string[] {
  return lines.flatMap(({ name, levelDoubt }) =>
    levelDoubt
      ? [`"${name}": ${levelDoubtWords(levelDoubt, units)} ${levelDoubtRemedy(levelDoubt)}`]
      : [],
  );
}
