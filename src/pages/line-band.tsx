import { isComplete } from "../../shared/completeness.ts";
import type { Exported } from "../../shared/exports/exported.ts";
import { bagsWords } from "../../shared/words/counted.ts";
import { beforeBuilding, mustFixWords } from "../../shared/words/must-fix.ts";
import { type LinePart, mustFixBand } from "../../shared/words/must-fix-band.ts";

/** More than these run on in smaller type, so that the band leaves the page its room. */
const MANY = 2;

interface LineBandProps {
  readonly of: Exported;
  /** The part of the line that the page is for; null for all of it. */
  readonly part: LinePart | null;
}

/** On every page: what must be fixed on the line, and for how much of it the totals are; nothing where there is neither. */
export function LineBand({ of: { line, checks, system }, part }: LineBandProps) {
  const { count, named, rest } = mustFixBand(checks, part, system);
  const isPart = !isComplete(line.totals);
  if (count === 0 && !isPart) return null;
  return (
    <div class="sheet-band" data-many={named.length > MANY}>
      {count > 0 && <strong>{mustFixWords(count)}: </strong>}
      <ul>
        {named.map((what) => (
          <li key={what}>{what}</li>
        ))}
        {rest !== null && <li>{rest}</li>}
        {count > 0 && <li>{beforeBuilding(count)}</li>}
        {isPart && <li>The totals are not complete: {bagsWords(line.totals, system)}.</li>}
      </ul>
    </div>
  );
}
