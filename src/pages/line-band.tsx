import { isComplete } from "../../shared/completeness.ts";
import type { Exported } from "../../shared/exports/exported.ts";
import { bagsWords } from "../../shared/words/counted.ts";
import { mustFixBand } from "../../shared/words/line-state.ts";
import { beforeBuilding, mustFixWords } from "../../shared/words/must-fix.ts";

/** More than these run on in smaller type, so that the band leaves the page its room. */
const MANY = 4;

/** On every page: what must be fixed on the line, and for how much of it the totals are; nothing where there is neither. */
export function LineBand({ of: { line, checks, system } }: { readonly of: Exported }) {
  const mustFix = mustFixBand(checks, system);
  const isPart = !isComplete(line.totals);
  if (mustFix.length === 0 && !isPart) return null;
  return (
    <div class="sheet-band" data-many={mustFix.length > MANY}>
      {mustFix.length > 0 && <strong>{mustFixWords(mustFix.length)}: </strong>}
      <ul>
        {mustFix.map((what) => (
          <li key={what}>{what}</li>
        ))}
        {mustFix.length > 0 && <li>{beforeBuilding(mustFix.length)}</li>}
        {isPart && <li>The totals are not complete: {bagsWords(line.totals, system)}.</li>}
      </ul>
    </div>
  );
}
