import { isInside, type PlanePolygon } from "../../shared/plane-polygon.ts";
import type { WayIn } from "../../shared/water-types.ts";
import { isWet } from "./dry-verdict.ts";
import { inState } from "./grid-state.ts";
import { findPassage, type Levee } from "./passage.ts";
import type { TraceContext } from "./trace-context.ts";
import type { FoundSill } from "./trace-state.ts";
import { cellIndex, columnOf, lonLatOf, rowOf, type WaterGrid } from "./water-grid.ts";
import { pipesOnWay, wayIn } from "./way-in.ts";

/**
 * How water gets to the structure it reaches first over known ground in spite of the levee; null when it reaches none. Where the
 * levee raises the sill, the place named is the new sill: the gap that is left. Where it changes nothing,
 * the place is where the way passes the line: through its open side, or past the nearer end.
 */
export function findWayIn(
  context: TraceContext,
  levee: Levee,
  found: readonly FoundSill[],
  before: readonly FoundSill[],
): WayIn | null {
  const wet = found.filter(({ reached }) => isWet(reached));
  if (wet.length === 0) return null;
  const first = wet.reduce((low, each) => (each.sill.levelM < low.sill.levelM ? each : low));
  const { grid } = context;
  const { cells, pipes } = inState(context, { levee, holesHold: false }, (from) => {
    const way = wayIn(grid, from, first.footprint.cells, first.sill.levelM);
    return { cells: way, pipes: pipesOnWay(from, way) };
  });
  const without = before.find(({ footprint }) => footprint.id === first.footprint.id);
  const raised = !without || first.sill.levelM > without.sill.levelM;
  const sillCell = cells.findLast((cell) => grid.heightM[cell] === first.sill.levelM);
  const piped = pipes.at(-1)?.outAt;
  const entry = raised || levee.line.closed ? sillCell : passingCell(context, levee, cells);
  const cell = piped ?? entry ?? sillCell ?? first.sill.cell;
  return {
    ...findPassage(context, levee.line, cell),
    structureId: first.footprint.id,
    through: pipes.map(({ pipeId }) => pipeId),
    path: withoutMiddles(cells.filter((each) => isOnGround(grid, each))).map((each) =>
      lonLatOf(grid, each),
    ),
  };
}

/** The cell at which a way passes an open line: the last that is not yet behind it, else the nearest to an end. */
function passingCell(
  { grid, plane }: TraceContext,
  { line }: Levee,
  cells: readonly number[],
): number | undefined {
  const behind: PlanePolygon = { xM: Array.from(line.xM), yM: Array.from(line.yM) };
  const spots = cells.map((cell) => plane.toPlane(lonLatOf(grid, cell)));
  const outside = spots.findLastIndex(([x, y]) => !isInside(behind, x, y));
  if (outside >= 0 && outside < cells.length - 1) return cells[outside];
  const last = line.legs;
  const toEnd = ([x, y]: readonly [number, number]) =>
    Math.min(
      Math.hypot(x - line.xM[0]!, y - line.yM[0]!),
      Math.hypot(x - line.xM[last]!, y - line.yM[last]!),
    );
  const distances = spots.map(toEnd);
  return cells[distances.indexOf(Math.min(...distances))];
}

/** False for a cell of the frame, from which a drain's water comes. */
function isOnGround(grid: WaterGrid, cell: number): boolean {
  return cellIndex(grid, columnOf(grid, cell), rowOf(grid, cell)) === cell;
}

/** The cells of a path at which it turns, with its ends. */
function withoutMiddles(cells: readonly number[]): number[] {
  return cells.filter(
    (cell, i) => i === 0 || i === cells.length - 1 || cell - cells[i - 1]! !== cells[i + 1]! - cell,
  );
}
