import type { PlaneLine } from "../../shared/alignment.ts";
import type { Passage } from "../../shared/water-types.ts";
import type { LeveeWall } from "./levee-wall.ts";
import { nearestOnLine } from "./nearest-on-line.ts";
import { groundAt, type TraceContext } from "./trace-context.ts";
import { lonLatOf } from "./water-grid.ts";

/** A line built to its crest on the grid. */
export interface Levee {
  readonly line: PlaneLine;
  readonly wall: LeveeWall;
  /** Crest over the heights of the grid, metres. */
  readonly crestM: number;
}

/** Nearer to an end than this many cells is at the end. */
const AT_END_CELLS = 1.5;

/** A cell where water passes, as seen from a line. */
export function findPassage(context: TraceContext, line: PlaneLine, cell: number): Passage {
  const { grid, plane } = context;
  const at = lonLatOf(grid, cell);
  const { chainageM, distanceM } = nearestOnLine(line, ...plane.toPlane(at));
  const nearM = AT_END_CELLS * grid.cellM;
  const atStart = chainageM <= nearM;
  const atEnd = chainageM >= line.lengthM - nearM;
  return {
    at,
    groundM: groundAt(context, cell),
    chainageM,
    fromLineM: distanceM,
    end: line.closed ? null : atStart ? "start" : atEnd ? "end" : null,
  };
}
