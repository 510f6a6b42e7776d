import { HOLE_REACHED, WATER } from "../../shared/water-types.ts";
import { connectedWater } from "./connected-water.ts";
import { type GridState, inState } from "./grid-state.ts";
import { isRaised } from "./levee-wall.ts";
import { type Sill, type SillSearch, sillSearch } from "./sill-search.ts";
import type { Footprint, TraceContext } from "./trace-context.ts";
import type { WaterGrid } from "./water-grid.ts";

const NOWHERE: Sill = { levelM: Number.NaN, cell: -1 };

/** Sills without a levee do not change with the level: those found last are kept for each grid. */
const bare = new WeakMap<WaterGrid, Map<boolean, { key: string; sills: readonly Sill[] }>>();

/** Connected water in a state, and the sills of places in it; a place off the ground has none (its cell is -1). */
export function findSills(
  context: TraceContext,
  footprints: readonly Footprint[],
  state: GridState,
) {
  const { grid, levelM } = context;
  return inState(context, state, (from) => {
    const codes = connectedWater(grid, from, levelM);
    const key = state.levee ? "" : JSON.stringify([from, context.plan.structures]);
    const isKept = !state.levee && footprints === context.footprints;
    const kept = bare.get(grid)?.get(state.holesHold);
    if (isKept && kept?.key === key) return { codes, sills: kept.sills };
    const search = sillSearch(grid, from, { codes, levelM });
    const sills = footprints.map(({ cells }) => {
      if (cells.length === 0) return NOWHERE;
      const sill = search.find(cells);
      return state.levee ? atLowestGround(context, state.levee, sill, search, codes) : sill;
    });
    if (isKept) keepBare(grid, state.holesHold, key, sills);
    return { codes, sills };
  });
}

function keepBare(grid: WaterGrid, holesHold: boolean, key: string, sills: readonly Sill[]): void {
  const kept = bare.get(grid) ?? new Map();
  bare.set(grid, kept.set(holesHold, { key, sills }));
}

/**
 * A crest that runs with the water is overtopped all along at once. Of the places where water stands on one
 * side and the protected ground lies on the other, the one on the lowest ground is named: there the levee is
 * highest and the water deepest.
 */
function atLowestGround(
  { grid }: TraceContext,
  levee: NonNullable<GridState["levee"]>,
  sill: Sill,
  search: SillSearch,
  codes: Uint8Array,
): Sill {
  const { wall, crestM } = levee;
  const k = wall.cells.indexOf(sill.cell);
  if (k < 0 || !isRaised(wall, k, crestM)) return sill;
  const isWater = (cell: number) => codes[cell] === WATER || codes[cell] === HOLE_REACHED;
  let lowest = k;
  for (let i = 0; i < wall.cells.length; i++) {
    if (!isRaised(wall, i, crestM) || !(wall.groundM[i]! < wall.groundM[lowest]!)) continue;
    const near = (reach: number, wanted: (cell: number) => boolean) =>
      someAround(grid.width, codes.length, wall.cells[i]!, reach, wanted);
    if (near(1, search.passed) && near(2, isWater)) lowest = i;
  }
  return { levelM: sill.levelM, cell: wall.cells[lowest]! };
}

function someAround(
  width: number,
  count: number,
  cell: number,
  reach: number,
  wanted: (cell: number) => boolean,
): boolean {
  for (let down = -reach; down <= reach; down++) {
    for (let right = -reach; right <= reach; right++) {
      const next = cell + down * width + right;
      if (next >= 0 && next < count && wanted(next)) return true;
    }
  }
  return false;
}
