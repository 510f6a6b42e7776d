import type { TracedPipe } from "../../shared/water-types.ts";
import { buildWall, type LeveeWall, removeWall } from "./levee-wall.ts";
import { plugHoles } from "./over-plane.ts";
import { withOpenPipes } from "./pipe-links.ts";
import type { TraceContext } from "./trace-context.ts";
import { setEdge, type WaterCells } from "./water-grid.ts";

/** Which of the pipes let water through. */
export type OpenPipes = (pipe: TracedPipe) => boolean;

/** As the plan says: all that are not plugged. */
export const asDrawn: OpenPipes = ({ plugged }) => !plugged;
export const allPlugged: OpenPipes = () => false;
export const allOpen: OpenPipes = () => true;

/** A state of the ground: with a levee or without, holes letting water through or holding it back. */
export interface GridState {
  readonly levee: { readonly wall: LeveeWall; readonly crestM: number } | null;
  readonly holesHold: boolean;
  /** Left out = as drawn. */
  readonly pipes?: OpenPipes;
}

/**
 * Does work with the grid in a state, and with where water comes from in it, and puts the grid back as it was. The
 * work must not wait for anything.
 */
export function inState<T>(
  context: TraceContext,
  state: GridState,
  work: (from: WaterCells) => T,
): T {
  const { grid, from, built, pipes } = context;
  setEdge(grid, from.edge);
  if (state.holesHold) plugHoles(grid, from.edge, true, built);
  if (state.levee) buildWall(grid, state.levee.wall, state.levee.crestM);
  try {
    return work(withOpenPipes(from, pipes, state.pipes ?? asDrawn));
  } finally {
    if (state.levee) removeWall(grid, state.levee.wall);
    if (state.holesHold) plugHoles(grid, from.edge, false);
  }
}

/** Whether there is ground that is not known, so that the two answers can differ. */
export function hasHoles({ grid, from }: TraceContext): boolean {
  return grid.holeCells.length > 0 || (!from.edge && grid.outsideCells.length > 0);
}
