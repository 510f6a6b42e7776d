import { HOLE_REACHED, type Reached, WATER } from "../../shared/water-types.ts";
import { connectedWater } from "./connected-water.ts";
import { type GridState, hasHoles, inState } from "./grid-state.ts";
import { isRaised } from "./levee-wall.ts";
import { type Sill, type SillSearch, sillSearch } from "./sill-search.ts";
import { elevationAt, type Footprint, type TraceContext } from "./trace-context.ts";
import { lonLatOf, type WaterGrid } from "./water-grid.ts";
import { wayIn } from "./way-in.ts";

/** Water in one state of the ground, holes letting it through. */
export interface TracedState {
  /** Codes of the framed grid. */
  readonly codes: Uint8Array;
  /** One for each footprint asked for, in their order. */
  readonly found: readonly FoundSill[];
}

export interface FoundSill {
  readonly footprint: Footprint;
  readonly sill: Sill;
  readonly reached: Reached;
}

/** Traces connected water, and the sills of places that are to stay dry, with a levee or without. */
export function traceState(
  context: TraceContext,
  footprints: readonly Footprint[],
  levee: GridState["levee"],
): TracedState {
  const open = findSills(context, footprints, { levee, holesHold: false });
  const firm = hasHoles(context)
    ? findSills(context, footprints, { levee, holesHold: true }).sills
    : open.sills;
  const found = footprints.map((footprint, i): FoundSill => {
    const sill = open.sills[i]!;
    return { footprint, sill, reached: reachedOf(context, footprint, sill, firm[i]!, levee) };
  });
  return { codes: open.codes, found };
}

const NOWHERE: Sill = { levelM: Number.NaN, cell: -1 };

/** Sills without a levee do not change with the level: those found last are kept for each grid. */
const bare = new WeakMap<WaterGrid, Map<boolean, { key: string; sills: readonly Sill[] }>>();

function findSills(context: TraceContext, footprints: readonly Footprint[], state: GridState) {
  const { grid, from, levelM } = context;
  return inState(context, state, () => {
    const codes = connectedWater(grid, from, levelM);
    const key = state.levee ? "" : JSON.stringify([from, context.plan.structures]);
    const kept = bare.get(grid)?.get(state.holesHold);
    if (!state.levee && kept?.key === key) return { codes, sills: kept.sills };
    const search = sillSearch(grid, from, { codes, levelM });
    const sills = footprints.map(({ cells }) => {
      if (cells.length === 0) return NOWHERE;
      const sill = search.find(cells);
      return state.levee ? atLowestGround(context, state.levee, sill, search, codes) : sill;
    });
    if (!state.levee) keepBare(grid, state.holesHold, key, sills);
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

function reachedOf(
  context: TraceContext,
  footprint: Footprint,
  sill: Sill,
  firm: Sill,
  levee: GridState["levee"],
): Reached {
  const { id, name } = footprint;
  const nothing = { sillM: null, sillAt: null, marginM: null, throughHole: null };
  if (sill.cell < 0) return { id, name, wet: null, ...nothing };
  const wet = sill.levelM < context.levelM;
  const isKnown = Number.isFinite(sill.levelM);
  const exactM = exactLevel(sill, levee);
  return {
    ...{ id, name, wet },
    sillM: isKnown ? elevationAt(context, sill.cell, exactM) : null,
    sillAt: isKnown ? lonLatOf(context.grid, sill.cell) : null,
    marginM: isKnown ? exactM - context.levelM : null,
    throughHole:
      firm.levelM > sill.levelM ? holeBefore(context, footprint, sill, firm, levee) : null,
  };
}

/** The sill without the rounding of the grid's heights where it is the crest. */
function exactLevel({ levelM, cell }: Sill, levee: GridState["levee"]): number {
  if (!levee || levelM !== Math.fround(levee.crestM)) return levelM;
  return levee.wall.cells.includes(cell) ? levee.crestM : levelM;
}

/** The last hole on the way in before the footprint. */
function holeBefore(
  context: TraceContext,
  { cells }: Footprint,
  sill: Sill,
  firm: Sill,
  levee: GridState["levee"],
): Reached["throughHole"] {
  const { grid, from, levelM, built } = context;
  const hole = inState(context, { levee, holesHold: false }, () =>
    wayIn(grid, from, cells, sill.levelM).findLast(
      (cell) => !Number.isFinite(grid.heightM[cell]!) && !built.has(cell),
    ),
  );
  if (hole === undefined) return null;
  const alone = sill.levelM < levelM && firm.levelM >= levelM;
  return { at: lonLatOf(grid, hole), alone };
}
