import type { FoundCordon } from "../../shared/siting-types.ts";
import { formatArea, formatCount, formatLength } from "../../shared/units.ts";
import type { Found } from "../siting/found.ts";
import { takeInstead } from "../siting/put-found.ts";
import { unitSystem } from "../state.ts";

interface CordonsTableProps {
  readonly result: Found;
  readonly cordons: readonly FoundCordon[];
}

/** What a line would need, and enclose, that may run further away. */
export function CordonsTable({ result, cordons }: CordonsTableProps) {
  const system = unitSystem.value;
  const now = result.lines.length === 1 ? result.lines[0]!.totals.bags : null;
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
            {line && !sameAsBefore && (
              <>
                <td>{formatCount(line.totals.bags)}</td>
                <td>{now === null ? "" : saved(now - line.totals.bags)}</td>
                <td>{formatArea(line.enclosedM2, system)}</td>
                <td>
                  <button
                    type="button"
                    class="text-button"
                    aria-label={`Take the line within ${formatLength(reachM, system, 0)}`}
                    disabled={now === line.totals.bags}
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

function saved(bags: number): string {
  if (bags === 0) return "0";
  return bags > 0 ? formatCount(bags) : `−${formatCount(-bags)}`;
}
