import type { Exported } from "../../shared/exports/exported.ts";
import { stationColumns } from "../../shared/exports/station-columns.ts";
import type { Station } from "../../shared/sizing-types.ts";
import { SETTLING_NOTE } from "../../shared/words/settling.ts";

/** The stakes for the crew: where each one is, what to mark on it, courses and base. */
export function StakesPart({ of: { line, system } }: { readonly of: Exported }) {
  const columns = stationColumns(line).filter(({ title }) => title !== undefined);
  return (
    <>
      <p class="sheet-lead">
        Mark <strong>top of levee</strong> on the stake, and <strong>lay bags to</strong> above it.{" "}
        {SETTLING_NOTE} Height is above the ground at the stake; greatest height is above the lowest
        ground under the base. Survey the ground elevations at the stakes, and check the level on a
        benchmark in the datum above first.
      </p>
      <table class="sheet-table" data-table="stations">
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column.id} scope="col" data-column={column.id}>
                {column.title}
                <small>{column.unit(system)}</small>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {line.stations.map((station) => (
            <tr key={`${station.chainageM} ${station.reason}`}>
              {columns.map((column) => (
                <td key={column.id} data-column={column.id}>
                  {column.value(station, system) ?? nothing(station)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

/** Why a cell is empty: there is no elevation data, or the levee type has no such thing. */
function nothing({ greatestHeightM }: Station): string {
  return greatestHeightM === null ? "no data" : "–";
}
