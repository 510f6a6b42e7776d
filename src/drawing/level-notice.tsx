import type { LevelDoubt } from "../../shared/level-doubt.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { levelDoubtRemedy, levelDoubtWords } from "../../shared/words/level-doubt.ts";
import { unitsOf } from "../../shared/words/units.ts";
import { SeverityMark } from "./severity-mark.tsx";

interface LevelNoticeProps {
  readonly doubt: LevelDoubt | null;
  readonly system: UnitSystem;
}

/** That water and ground of a line do not belong together, and what to look at; nothing where they do. */
export function LevelNotice({ doubt, system }: LevelNoticeProps) {
  if (!doubt) return null;
  return (
    <div class="level-notice" role="note" aria-label="Water and ground">
      <SeverityMark severity={doubt.countsUnknown ? "stop" : "caution"} />
      <p>
        <strong>{levelDoubtWords(doubt, unitsOf(system))}</strong> {levelDoubtRemedy(doubt)}
      </p>
    </div>
  );
}
