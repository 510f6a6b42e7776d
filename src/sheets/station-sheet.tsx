import type { SizedLine } from "../../shared/sizing-types.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { STATION_COLUMNS } from "./station-columns.ts";

const COLUMNS = STATION_COLUMNS.filter((column) => column.onPaper);

/** The station table for the crew: where each stake stands, its crest mark, courses and base. */
export function StationSheet({ line, system }: { line: SizedLine; system: UnitSystem }) {
  return (
    <section class="sheet-part sheet-page" aria-label="Stations">
      <h2>Stations</h2>
      <table class="sheet-table" data-table="stations">
        <thead>
          <tr>
            {COLUMNS.map((column) => (
              <th key={column.id} scope="col">
                {column.title}
                <small>{column.unit(system)}</small>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {line.stations.map((station) => (
            <tr key={`${station.chainageM} ${station.reason}`}>
              {COLUMNS.map((column) => (
                <td key={column.id}>{column.value(station, system) ?? "no data"}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
