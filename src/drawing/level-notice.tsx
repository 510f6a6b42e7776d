import type { LevelDoubt } from "../../shared/level-doubt.ts";
import { formatElevation, formatLength, type UnitSystem } from "../../shared/units.ts";
import { levelDoubtRemedy, levelDoubtWords } from "../../shared/words/level-doubt.ts";
import { SeverityMark } from "./severity-mark.tsx";

interface LevelNoticeProps {
  readonly doubt: LevelDoubt | null;
  readonly system: UnitSystem;
}

/** That water and ground of a line do not belong together, and what to look at; nothing where they do. */
export function LevelNotice({ doubt, system }: LevelNoticeProps) {
  if (!doubt) return null;
  const heights = {
    elevation: (m: number) => formatElevation(m, system),
    length: (m: number) => formatLength(m, system),
  };
  return (
    <div class="level-notice" role="note" aria-label="Water and ground">
      <SeverityMark severity={doubt.countsUnknown ? "stop" : "caution"} />
      <p>
        <strong>{levelDoubtWords(doubt, heights)}</strong> {levelDoubtRemedy(doubt)}
      </p>
    </div>
  );
}
