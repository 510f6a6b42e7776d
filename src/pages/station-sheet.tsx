import type { Plan } from "../../shared/plan.ts";
import type { SizedLine, Station } from "../../shared/sizing-types.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { SheetOf } from "./sheet-of.tsx";
import { stationColumns } from "./station-columns.ts";

interface StationSheetProps {
  readonly plan: Plan;
  readonly line: SizedLine;
  readonly system: UnitSystem;
}

/** The station table for the crew: where each stake stands, its crest mark, courses and base. */
export function StationSheet({ plan, line, system }: StationSheetProps) {
  const columns = stationColumns(line).filter((column) => column.onPaper);
  return (
    <section class="sheet-part sheet-page" aria-label="Stations">
      <h2>Stations</h2>
      <SheetOf plan={plan} line={line} system={system} />
      <p class="sheet-lead">
        <strong>Crest</strong> is the level to mark on the stake and build to. Height is above the
        ground at the stake, greatest height above the lowest ground under the base. Ground, crest
        and gauge count from the datum on the first sheet: check the laser level against a mark of
        that datum first.
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
    </section>
  );
}

/** Why a cell is empty: the ground is not known there, or the section has no such thing. */
function nothing({ greatestHeightM }: Station): string {
  return greatestHeightM === null ? "no data" : "–";
}
