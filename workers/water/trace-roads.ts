import { roadFlood } from "../../shared/roads/road-flood.ts";
import type { TracedRoad } from "../../shared/water-types.ts";
import { cellsAlong } from "./cells-along.ts";
import type { Footprint, TraceContext } from "./trace-context.ts";
import { traceState } from "./trace-state.ts";
import { cellIndex } from "./water-grid.ts";

/**
 * Where each exit road first floods, with nothing built: the lowest level at which connected water reaches any cell
 * along it. Not known where part of it has no elevation data, or that hangs on a hole or a pipe that is not known.
 */
export function traceRoads(context: TraceContext): TracedRoad[] {
  const roads = (context.plan.roads ?? []).map(({ id, name, path }) => ({
    ...{ id, name },
    ...cellsOf(context, path),
  }));
  const { found } = traceState(context, roads, null);
  return found.map(({ reached }, i): TracedRoad => {
    const { id, name, isOnGround } = roads[i]!;
    const { sillM, sillAt, marginM, throughHole, throughPipe } = reached;
    const isKnown = isOnGround && throughHole === null && throughPipe?.isKnown !== false;
    if (!isKnown || sillM === null || marginM === null) {
      const nothing = { floodsAboveM: null, at: null, gaugeM: null, stageM: null, hour: null };
      return { id, name, isKnown, ...nothing, fromStart: false, leavesBefore: null };
    }
    const gaugeM = context.levelM + marginM;
    const { at: hour, ...flood } = roadFlood(context.plan, gaugeM);
    return {
      ...{ id, name, isKnown, floodsAboveM: sillM, at: sillAt, gaugeM },
      hour,
      ...flood,
    };
  });
}

function cellsOf(
  { grid }: TraceContext,
  path: readonly (readonly [number, number])[],
): Pick<Footprint, "cells"> & { readonly isOnGround: boolean } {
  const spots = path.map(([longitude, latitude]) => grid.place.toCell(longitude, latitude));
  const found = new Set<number>();
  for (let k = 0; k + 1 < spots.length; k++) {
    cellsAlong(spots[k]!, spots[k + 1]!, (column, row) => {
      found.add(cellIndex(grid, column, row));
    });
  }
  const cells = [...found].filter((cell) => cell >= 0);
  const isOnGround =
    cells.length === found.size && cells.every((cell) => Number.isFinite(grid.heightM[cell]!));
  return { cells, isOnGround };
}
