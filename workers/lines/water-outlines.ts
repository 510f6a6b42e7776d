import type { Plan } from "../../shared/plan.ts";
import type { PlanPlane } from "../../shared/plan-plane.ts";
import type { PlaneBox } from "../../shared/site.ts";
import type { Terrain } from "../raster/terrain.ts";
import { contains, shapeOf } from "../search/shape.ts";
import type { Outline, Point } from "../search/types.ts";
import { isolines } from "../tiles/isolines.ts";
import { riverAsSurveyed } from "../water/river-as-surveyed.ts";
import { traceContext } from "../water/trace-context.ts";
import type { WaterGrid } from "../water/water-grid.ts";
import { readWaterGround } from "../water/water-ground.ts";
import { thinned } from "./thinned.ts";

interface Kept {
  readonly key: string;
  readonly outlines: readonly Outline[];
}

const kept = new WeakMap<Terrain, Kept>();

/**
 * Outlines on the plan plane, within a box, of the water as it stood when the ground was surveyed: low ground
 * joined with a marked source. None when no source is marked. An outline never goes round a structure: water
 * that does is given in parts.
 */
export async function waterOutlines(
  terrain: Terrain,
  plan: Plan,
  plane: PlanPlane,
  box: PlaneBox,
  structures: readonly Outline[],
): Promise<readonly Outline[]> {
  const { sources, flow, gauge, water } = plan;
  if (!sources || sources.length === 0) return [];
  const key = JSON.stringify([
    ...[sources, flow, gauge?.at, water.fallPerM, plane.origin],
    ...[box, structures],
  ]);
  const known = kept.get(terrain);
  if (known?.key === key) return known.outlines;
  const corners = [
    ...plan.structures.flatMap(({ outline }) => outline),
    ...plan.alignments.flatMap((each) => each.corners),
  ];
  const { near } = await readWaterGround(terrain, corners);
  const river = riverAsSurveyed(traceContext(plan, near, corners[0]!));
  const outlines = river ? riverOutlines({ near, river, plane, box }, structures) : [];
  kept.set(terrain, { key, outlines });
  return outlines;
}

/** Where a river as surveyed is wanted. */
interface RiverPlace {
  readonly near: WaterGrid;
  /** 1 for each cell of the framed grid that is river. */
  readonly river: Uint8Array;
  readonly plane: PlanPlane;
  readonly box: PlaneBox;
}

/** Outlines on the plan plane of a river within a box; see {@link waterOutlines}. */
export function riverOutlines(
  { near, river, plane, box }: RiverPlace,
  structures: readonly Outline[],
): Outline[] {
  return outlinesOf(croppedTo(box, near, river, plane), structures);
}

/** Some cells of a grid with a dry frame one cell wide, and where they lie on the plan plane. */
export interface WetCells {
  /** 1 where wet. */
  readonly wet: Float32Array;
  readonly columns: number;
  readonly rows: number;
  /** From cell centres, counted in these cells. */
  readonly toPlane: (column: number, row: number) => Point;
  readonly toCell: (at: Point) => readonly [column: number, row: number];
}

function croppedTo(
  box: PlaneBox,
  { place, columns, rows, width }: WaterGrid,
  river: Uint8Array,
  plane: PlanPlane,
): WetCells {
  const cellOf = ([xM, yM]: Point) => place.toCell(...plane.toLonLat(xM, yM));
  const spots = [
    cellOf([box.minX, box.minY]),
    cellOf([box.maxX, box.minY]),
    cellOf([box.maxX, box.maxY]),
    cellOf([box.minX, box.maxY]),
  ];
  const column0 = Math.max(0, Math.floor(Math.min(...spots.map(([x]) => x))));
  const row0 = Math.max(0, Math.floor(Math.min(...spots.map(([, y]) => y))));
  const column1 = Math.min(columns - 1, Math.ceil(Math.max(...spots.map(([x]) => x))));
  const row1 = Math.min(rows - 1, Math.ceil(Math.max(...spots.map(([, y]) => y))));
  const across = Math.max(0, column1 - column0 + 1) + 2;
  const down = Math.max(0, row1 - row0 + 1) + 2;
  const wet = new Float32Array(across * down);
  for (let row = row0; row <= row1; row++) {
    for (let column = column0; column <= column1; column++) {
      const isWet = river[(row + 1) * width + column + 1] === 1;
      if (isWet) wet[(row - row0 + 1) * across + column - column0 + 1] = 1;
    }
  }
  return {
    ...{ wet, columns: across, rows: down },
    toPlane: (column, row) => plane.toPlane(place.toLonLat(column + column0 - 1, row + row0 - 1)),
    toCell: (at) => {
      const [x, y] = cellOf(at);
      return [x - column0 + 1, y - row0 + 1];
    },
  };
}

/** Outlines of wet cells; cells that go round one of the structures are cut in two through it. */
export function outlinesOf(cells: WetCells, structures: readonly Outline[]): Outline[] {
  const { wet, columns, rows, toPlane } = cells;
  const found: Outline[] = [];
  for (const loop of isolines(wet, columns, rows, 0.5)) {
    const spots: Point[] = [];
    for (let k = 0; k + 3 < loop.length; k += 2) spots.push([loop[k]!, loop[k + 1]!]);
    if (!isOuter(spots, cells)) continue;
    const outline = thinned(spots).map(([column, row]) => toPlane(column, row));
    const inside = structures.map(dryPoint(cells)).find((at) => at && contains(outline, ...at));
    if (inside) return cutThrough(cells, inside, structures);
    if (outline.length >= 3) found.push(outline);
  }
  return found;
}

/**
 * Whether a loop has its water inside and not the dry ground of an island. A loop's first point lies half way
 * between a wet and a dry cell.
 */
function isOuter(spots: readonly Point[], { wet, columns }: WetCells): boolean {
  const [column, row] = spots[0]!;
  const [low, high] = [
    [Math.floor(column), Math.floor(row)],
    [Math.ceil(column), Math.ceil(row)],
  ] as const;
  const [x, y] = wet[low[1] * columns + low[0]] === 1 ? low : high;
  return contains(spots, x, y);
}

/** A point in a structure, when its cell is dry. */
function dryPoint({ wet, columns, rows, toCell }: WetCells): (outline: Outline) => Point | null {
  return (outline) => {
    const at = shapeOf(outline).inside;
    const [column, row] = toCell(at).map(Math.round) as [number, number];
    const onCells = column >= 0 && row >= 0 && column < columns && row < rows;
    return onCells && wet[row * columns + column] === 0 ? at : null;
  };
}

function cutThrough(cells: WetCells, at: Point, structures: readonly Outline[]): Outline[] {
  const { wet, columns } = cells;
  const cutColumn = Math.round(cells.toCell(at)[0]);
  const part = (isLeft: boolean): WetCells => ({
    ...cells,
    wet: wet.map((each, k) => (k % columns <= cutColumn === isLeft ? each : 0)),
  });
  return [true, false].flatMap((isLeft) => outlinesOf(part(isLeft), structures));
}
