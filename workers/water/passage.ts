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

/**
 * Nearer to an end than this many cells is at the end: the cell that lets the water in may lie beside the
 * last of the levee, with the levee standing. Judgement.
 */
const AT_END_CELLS = 3;

/** A cell where water passes, as seen from a line; at an end, the station is the end's own. */
export function findPassage(context: TraceContext, line: PlaneLine, cell: number): Passage {
  const { grid, plane } = context;
  const at = lonLatOf(grid, cell);
  const { chainageM, distanceM } = nearestOnLine(line, ...plane.toPlane(at));
  const nearM = AT_END_CELLS * grid.cellM;
  const end = line.closed ? null : endNear(line.lengthM, chainageM, nearM);
  return {
    at,
    groundM: groundAt(context, cell),
    chainageM: end === null ? chainageM : end === "start" ? 0 : line.lengthM,
    fromLineM: distanceM,
    end,
  };
}

function endNear(lengthM: number, chainageM: number, nearM: number): "start" | "end" | null {
  const toEndM = lengthM - chainageM;
  if (Math.min(chainageM, toEndM) > nearM) return null;
  return chainageM <= toEndM ? "start" : "end";
}
