import { buildWall, type LeveeWall, removeWall } from "./levee-wall.ts";
import { plugHoles } from "./over-plane.ts";
import type { TraceContext } from "./trace-context.ts";
import { setEdge } from "./water-grid.ts";

/** A state of the ground: with a levee or without, holes letting water through or holding it back. */
export interface GridState {
  readonly levee: { readonly wall: LeveeWall; readonly crestM: number } | null;
  readonly holesHold: boolean;
}

/** Does work with the grid in a state, and puts it back as it was. The work must not wait for anything. */
export function inState<T>(context: TraceContext, state: GridState, work: () => T): T {
  const { grid, from, built } = context;
  setEdge(grid, from.edge);
  if (state.holesHold) plugHoles(grid, from.edge, true, built);
  if (state.levee) buildWall(grid, state.levee.wall, state.levee.crestM);
  try {
    return work();
  } finally {
    if (state.levee) removeWall(grid, state.levee.wall);
    if (state.holesHold) plugHoles(grid, from.edge, false);
  }
}

/** Whether there is ground that is not known, so that the two answers can differ. */
export function hasHoles({ grid, from }: TraceContext): boolean {
  return grid.holeCells.length > 0 || (!from.edge && grid.outsideCells.length > 0);
}
