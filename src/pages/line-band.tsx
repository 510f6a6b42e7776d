import { isComplete } from "../../shared/completeness.ts";
import type { Exported } from "../../shared/exports/exported.ts";
import { bagsWords } from "../../shared/words/counted.ts";
import { mustFixLead, mustFixOf } from "../../shared/words/line-state.ts";

/** On every page: what must be fixed on the line, and for how much of it the totals are; nothing where there is neither. */
export function LineBand({ of: { line, checks, system } }: { readonly of: Exported }) {
  const mustFix = mustFixOf(checks, system);
  const isPart = !isComplete(line.totals);
  if (mustFix.length === 0 && !isPart) return null;
  return (
    <ul class="sheet-band">
      {mustFix.length > 0 && (
        <li>
          <strong>{mustFixLead(mustFix.length)}</strong>
        </li>
      )}
      {mustFix.map(({ what }) => (
        <li key={what}>{what}</li>
      ))}
      {isPart && <li>The totals are not complete: {bagsWords(line.totals, system)}.</li>}
    </ul>
  );
}
