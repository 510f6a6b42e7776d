import type { PlaneLine } from "../../shared/alignment.ts";
import { append, intList } from "./int-list.ts";
import type { LeveeWall } from "./levee-wall.ts";
import type { TraceContext } from "./trace-context.ts";
import { cellAt, neighbourSteps, setEdge } from "./water-grid.ts";

/** Ground no higher than this above a marked source counts as the same water, metres. Source: judgement. */
const RIPPLE_M = 0.1;
/** Cells of a line that are this near to each other are one stretch. */
const GAP_CELLS = 3;

/**
 * Water as it stood when the ground was surveyed: ground joined with a marked source and no higher than it,
 * over the falling surface. Null when no source is marked on known ground.
 */
export function riverAsSurveyed(context: TraceContext): Uint8Array | null {
  const { grid, sources, from } = context;
  const marked = sources.filter(({ groundM }) => groundM !== null);
  if (marked.length === 0) return null;
  setEdge(grid, false);
  const { heightM, width } = grid;
  const steps = neighbourSteps(width);
  const river = new Uint8Array(heightM.length);
  for (const { at } of marked) {
    const source = cellAt(grid, at);
    const topM = heightM[source]! + RIPPLE_M;
    const queue = intList();
    append(queue, source);
    river[source] = 1;
    for (let head = 0; head < queue.length; head++) {
      for (let s = 0; s < 8; s++) {
        const next = queue.values[head]! + steps[s]!;
        if (river[next] === 1 || !(heightM[next]! <= topM)) continue;
        river[next] = 1;
        append(queue, next);
      }
    }
  }
  setEdge(grid, from.edge);
  return river;
}

/** Where a line lies in that water. */
export function riverStretches(wall: LeveeWall, river: Uint8Array, line: PlaneLine) {
  const wet = Array.from(wall.cells.keys())
    .filter((k) => river[wall.cells[k]!] === 1)
    .map((k) => wall.chainageM[k]!)
    .sort((a, b) => a - b);
  const gapM = (GAP_CELLS * line.lengthM) / Math.max(1, wall.cells.length);
  const stretches: { fromM: number; toM: number }[] = [];
  for (const chainageM of wet) {
    const last = stretches.at(-1);
    if (last && chainageM - last.toM <= gapM) last.toM = chainageM;
    else stretches.push({ fromM: chainageM, toM: chainageM });
  }
  return stretches;
}
