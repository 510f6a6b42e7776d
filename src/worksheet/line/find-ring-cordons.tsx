import { isComplete } from "../../../shared/completeness.ts";
import type { FoundCordon } from "../../../shared/search-types.ts";
import { formatArea, formatCount, formatLength } from "../../../shared/units.ts";
import { bagsForWords } from "../../../shared/words/counted.ts";
import { butOverLimit, noSavingWords } from "../../../shared/words/search.ts";
import { sized } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import type { Found } from "../../live/search/found.ts";
import { takeInstead } from "../../live/search/put-found.ts";
import { mustFixOn } from "../../live/water-now.ts";

interface CordonsTableProps {
  readonly result: Found;
  readonly cordons: readonly FoundCordon[];
}

/** What a line would need, and enclose, that may run further away. */
export function CordonsTable({ result, cordons }: CordonsTableProps) {
  const system = unitSystem.value;
  const [only, ...others] = result.lines;
  const isOne = only && others.length === 0 && isComplete(only.totals);
  const now = isOne ? only.totals.bags : null;
  const last = cordons.at(-1);
  const isAlike = (each: FoundCordon) =>
    each.sameAsBefore || (each.line !== null && isLike(now, each.line.totals.bags));
  if (last?.line && cordons.every(isAlike)) {
    const lines = result.ids.flatMap((id) => sized.value.get(id) ?? []);
    const mustFix = lines.reduce((count, line) => count + mustFixOn(line), 0);
    return <p>{noSavingWords(last.reachM, mustFix, system)}</p>;
  }
  return (
    <table class="cordons">
      <caption>A bigger cordon</caption>
      <thead>
        <tr>
          <th scope="col">Within</th>
          <th scope="col">Bags</th>
          <th scope="col">Saves</th>
          <th scope="col">Inside</th>
          <th scope="col">
            <span class="unseen">Take it</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {cordons.map(({ reachM, line, sameAsBefore }) => (
          <tr key={reachM}>
            <th scope="row">{formatLength(reachM, system, 0)}</th>
            {line === null && <td colSpan={4}>no ring fits</td>}
            {line && sameAsBefore && <td colSpan={4}>the same line</td>}
            {line && !sameAsBefore && isLike(now, line.totals.bags) && (
              <td colSpan={4}>the line found</td>
            )}
            {line && !sameAsBefore && !isLike(now, line.totals.bags) && (
              <>
                <td>
                  {isComplete(line.totals)
                    ? formatCount(line.totals.bags)
                    : bagsForWords(line.totals, system)}
                  {butOverLimit(line.totals, system)}
                </td>
                <td>
                  {now !== null && isComplete(line.totals) ? saved(now - line.totals.bags) : ""}
                </td>
                <td>{formatArea(line.enclosedM2, system)}</td>
                <td>
                  <button
                    type="button"
                    class="text-button"
                    aria-label={`Take the line within ${formatLength(reachM, system, 0)}`}
                    onClick={() => takeInstead([line], "Take another cordon", { reachM })}
                  >
                    Take
                  </button>
                </td>
              </>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Lines whose bags differ by less than this share are one line found twice. */
const LIKE_SHARE = 0.003;

function isLike(now: number | null, bags: number): boolean {
  return now !== null && Math.abs(now - bags) <= LIKE_SHARE * now;
}

function saved(bags: number): string {
  return bags > 0 ? formatCount(bags) : `−${formatCount(-bags)}`;
}
