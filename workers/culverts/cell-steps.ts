import { planPlane } from "../../shared/plan-plane.ts";
import type { GridPlace } from "../water/water-grid.ts";

/** A direction on the ground as a step over the grid: columns and rows for each metre. */
export interface CellStep {
  readonly columns: number;
  readonly rows: number;
}

/**
 * The same directions on the ground whatever the grid: evenly spread, the first to the east.
 * @param middle column and row near which the grid is taken as straight
 */
export function cellSteps(
  place: GridPlace,
  [column, row]: readonly [number, number],
  count: number,
): CellStep[] {
  const plane = planPlane(place.toLonLat(column, row));
  const [ax, ay] = plane.toPlane(place.toLonLat(column + 1, row));
  const [bx, by] = plane.toPlane(place.toLonLat(column, row + 1));
  const area = ax * by - ay * bx;
  return Array.from({ length: count }, (_, k) => {
    const [east, north] = [
      Math.cos((2 * Math.PI * k) / count),
      Math.sin((2 * Math.PI * k) / count),
    ];
    return {
      columns: (east * by - north * bx) / area,
      rows: (north * ax - east * ay) / area,
    };
  });
}
