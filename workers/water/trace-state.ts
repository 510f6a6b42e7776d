import type { Reached } from "../../shared/water-types.ts";
import { findSills } from "./find-sills.ts";
import { asDrawn, type GridState, hasHoles, inState, type OpenPipes } from "./grid-state.ts";
import type { Sill } from "./sill-search.ts";
import { throughPipes } from "./through-pipes.ts";
import { elevationAt, type Footprint, type TraceContext } from "./trace-context.ts";
import { lonLatOf } from "./water-grid.ts";
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
  pipes: OpenPipes = asDrawn,
): TracedState {
  const open = findSills(context, footprints, { levee, holesHold: false, pipes });
  const firm = hasHoles(context)
    ? findSills(context, footprints, { levee, holesHold: true, pipes }).sills
    : open.sills;
  const throughPipe = throughPipes(context, footprints, open.sills, { levee, pipes });
  const found = footprints.map((footprint, i): FoundSill => {
    const sill = open.sills[i]!;
    const reached = reachedOf(context, footprint, sill, firm[i]!, levee);
    return { footprint, sill, reached: { ...reached, throughPipe: throughPipe[i] ?? null } };
  });
  return { codes: open.codes, found };
}

function reachedOf(
  context: TraceContext,
  footprint: Footprint,
  sill: Sill,
  firm: Sill,
  levee: GridState["levee"],
): Omit<Reached, "throughPipe"> {
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
  const { grid, levelM, built } = context;
  const hole = inState(context, { levee, holesHold: false }, (from) =>
    wayIn(grid, from, cells, sill.levelM).findLast(
      (cell) => !Number.isFinite(grid.heightM[cell]!) && !built.has(cell),
    ),
  );
  if (hole === undefined) return null;
  const alone = sill.levelM < levelM && firm.levelM >= levelM;
  return { at: lonLatOf(grid, hole), alone };
}
