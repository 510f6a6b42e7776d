import { useEffect, useState } from "preact/hooks";
import type { DrawingGrid } from "../../shared/exports/drawing-grid.ts";
import type { Exported } from "../../shared/exports/exported.ts";
import { stakeGrid } from "../../shared/exports/stake-grid.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { lineStakes, type Stake } from "../../shared/stakes/stakes.ts";
import { formatStation, type UnitSystem } from "../../shared/units.ts";
import { placeHeads, placeRow, STAKE_PLACES_TITLE } from "../../shared/words/stake-place.ts";
import { toGrid } from "../live/to-grid.ts";
import type { Rows } from "./sheet.tsx";

/** The stakes of a line on the grid of the elevation data: undefined while it is asked for, null where it has none. */
export function useStakeGrid(line: SizedLine): DrawingGrid | null | undefined {
  const [found, setFound] = useState<{
    readonly of: SizedLine;
    readonly grid: DrawingGrid | null;
  }>();
  useEffect(() => {
    let isOn = true;
    const take = (grid: DrawingGrid | null) => isOn && setFound({ of: line, grid });
    stakeGrid(line, toGrid).then(take, () => take(null));
    return () => {
      isOn = false;
    };
  }, [line]);
  return found?.of === line ? found.grid : undefined;
}

/** Every stake by coordinates, and by tape and bearing from the stake before, for those who set out by instrument. */
export function stakePlaceRows({ plan, line, system }: Exported, grid: DrawingGrid | null): Rows {
  const stakes = lineStakes(plan, line);
  const at = (index: number) => formatStation(stakes[index]!.station.chainageM, system);
  return {
    rows: stakes.map((stake, i) => (
      <PlaceRow key={i} stake={stake} xy={grid?.xy[i] ?? null} system={system} />
    )),
    around: (rows) => (
      <table class="stake-places">
        <caption>{STAKE_PLACES_TITLE}</caption>
        <thead>
          <tr>
            {placeHeads(grid, system).map((head) => (
              <th key={head}>{head}</th>
            ))}
          </tr>
        </thead>
        <tbody data-rows>{rows}</tbody>
      </table>
    ),
    nameOf: (from, to) => `Stake places ${at(from)} to ${at(to - 1)}`,
    partOf: (from, to) => ({
      fromM: stakes[from]!.station.chainageM,
      toM: stakes[to - 1]!.station.chainageM,
    }),
  };
}

interface PlaceRowProps {
  readonly stake: Stake;
  readonly xy: readonly [number, number] | null;
  readonly system: UnitSystem;
}

function PlaceRow({ stake, xy, system }: PlaceRowProps) {
  const [station, ...figures] = placeRow(stake, xy, system);
  return (
    <tr>
      <th scope="row">{station}</th>
      {figures.map((figure, i) => (
        <td key={i}>{figure}</td>
      ))}
    </tr>
  );
}
