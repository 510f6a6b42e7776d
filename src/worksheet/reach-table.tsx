import type { SizedLine } from "../../shared/sizing-types.ts";
import {
  formatCount,
  formatLength,
  formatStation,
  formatVolume,
  type UnitSystem,
} from "../../shared/units.ts";

/** Subtotals of the reaches between the chosen stations; they add up to the line. */
export function ReachTable({ line, system }: { line: SizedLine; system: UnitSystem }) {
  const { totals } = line;
  return (
    <div class="table-scroll">
      <table class="reach-table">
        <caption class="unseen">Subtotals of the reaches</caption>
        <thead>
          <tr>
            <th scope="col">Reach</th>
            <th scope="col">Length</th>
            <th scope="col">Bags</th>
            <th scope="col">Sand, {formatVolume(0, system).replace(/^\S+ /, "")}</th>
            <th scope="col">Highest</th>
          </tr>
        </thead>
        <tbody>
          {line.reaches.map((reach) => (
            <tr key={reach.fromM}>
              <th scope="row">
                {formatStation(reach.fromM, system)} to {formatStation(reach.toM, system)}
              </th>
              <td>{formatLength(reach.totals.lengthM, system, 0)}</td>
              <td>{formatCount(reach.totals.bags)}</td>
              <td>{figureOf(formatVolume(reach.totals.sandM3, system))}</td>
              <td>{formatLength(reach.totals.greatestHeightM, system)}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">All</th>
            <td>{formatLength(totals.lengthM, system, 0)}</td>
            <td>{formatCount(totals.bags)}</td>
            <td>{figureOf(formatVolume(totals.sandM3, system))}</td>
            <td>{formatLength(totals.greatestHeightM, system)}</td>
          </tr>
        </tfoot>
      </table>
    </div>
  );
}

/** The figure without its unit, which stands in the head. */
function figureOf(text: string): string {
  return text.replace(/ .*/, "");
}
