import type { SizedLine } from "../../shared/sizing-types.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { stationColumns } from "./station-columns.ts";

/** The station table for the crew: where each stake stands, its crest mark, courses and base. */
export function StationSheet({ line, system }: { line: SizedLine; system: UnitSystem }) {
  const columns = stationColumns(line).filter((column) => column.onPaper);
  return (
    <section class="sheet-part sheet-page" aria-label="Stations">
      <h2>Stations</h2>
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
                  {column.value(station, system) ?? "no data"}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
