import { stationColumns } from "../../shared/exports/station-columns.ts";
import type { Station } from "../../shared/sizing-types.ts";
import { formatStation } from "../../shared/units.ts";
import { SETTLING_NOTE } from "../../shared/words/settling.ts";
import { type Rows, Sheet } from "./sheet.tsx";
import type { SheetFrame } from "./title-block.tsx";

/** The stakes for the crew: where each one is, what to mark on it, courses and base. */
export function StakesSheet(frame: SheetFrame) {
  return <Sheet {...frame} name="Stakes" pieces={[<Lead />, stakeRows(frame)]} />;
}

function Lead() {
  return (
    <p class="sheet-lead">
      Mark <strong>top of levee</strong> on the stake, and <strong>lay bags to</strong> above it.{" "}
      {SETTLING_NOTE} Height is above the ground at the stake; greatest height is above the lowest
      ground under the base. Survey the ground elevations at the stakes, and check the level on a
      benchmark in the datum above first.
    </p>
  );
}

function stakeRows({ of: { line, system } }: SheetFrame): Rows {
  const columns = stationColumns(line).filter(({ title }) => title !== undefined);
  const { stations } = line;
  const at = (index: number) => formatStation(stations[index]!.chainageM, system);
  return {
    rows: stations.map((station) => (
      <tr key={`${station.chainageM} ${station.reason}`}>
        {columns.map((column) => (
          <td key={column.id} data-column={column.id}>
            {column.value(station, system) ?? nothing(station)}
          </td>
        ))}
      </tr>
    )),
    around: (rows) => (
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
        <tbody data-rows>{rows}</tbody>
      </table>
    ),
    nameOf: (from, to) => `Stakes ${at(from)} to ${at(to - 1)}`,
  };
}

/** Why a cell is empty: there is no elevation data, or the levee type has no such thing. */
function nothing({ greatestHeightM }: Station): string {
  return greatestHeightM === null ? "no data" : "–";
}
