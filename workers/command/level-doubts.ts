import { elevationWords, lengthWords } from "../../shared/checks/words.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { levelDoubtRemedy, levelDoubtWords } from "../../shared/words/level-doubt.ts";

/** Where water and ground do not belong together, a sentence for each line. */
export function levelDoubts(lines: readonly SizedLine[]): string[] {
  const heights = { elevation: elevationWords, length: lengthWords };
  return lines.flatMap(({ name, levelDoubt }) =>
    levelDoubt
      ? [`"${name}": ${levelDoubtWords(levelDoubt, heights)} ${levelDoubtRemedy(levelDoubt)}`]
      : [],
  );
}
