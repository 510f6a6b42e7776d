import { planPlane } from "../../shared/plan-plane.ts";
import { append, type IntList, intList } from "./int-list.ts";
import { type GridPlace, neighbourSteps, setEdge, type WaterGrid } from "./water-grid.ts";

/** A framed array for a grid of this size, all holes; heights are written into it row by row. */
export function emptyFrame(columns: number, rows: number): Float32Array {
  return new Float32Array((columns + 2) * (rows + 2)).fill(Number.NaN);
}

/** Copies whole rows of heights (metres, NaN where there is no data) into a framed array. */
export function writeRows(
  framed: Float32Array,
  columns: number,
  firstRow: number,
  heightsM: Float32Array,
): void {
  const width = columns + 2;
  for (let row = 0; row * columns < heightsM.length; row++) {
    const from = row * columns;
    framed.set(heightsM.subarray(from, from + columns), (firstRow + row + 1) * width + 1);
  }
}

/** A grid over framed heights, which become its own, with its edge open. */
export function makeGrid(
  columns: number,
  rows: number,
  heightM: Float32Array,
  place: GridPlace,
): WaterGrid {
  const size = {
    columns,
    rows,
    width: columns + 2,
    heightM,
    place,
    ...cellSizes(columns, rows, place),
  };
  setEdge({ ...size, holeCells: new Int32Array(0), outsideCells: new Int32Array(0) }, false);
  const outsideCells = outsideOf(columns, rows, heightM);
  const grid = { ...size, outsideCells, holeCells: holesIn(heightM) };
  setEdge(grid, true);
  return grid;
}

/** Cells without data that reach the edge over cells without data, corner to corner too; marked -Infinity. */
function outsideOf(columns: number, rows: number, heightM: Float32Array): Int32Array {
  const width = columns + 2;
  const found = intList();
  const take = (cell: number) => {
    if (!Number.isNaN(heightM[cell]!)) return;
    heightM[cell] = Number.NEGATIVE_INFINITY;
    append(found, cell);
  };
  for (let column = 1; column <= columns; column++) {
    take(width + column);
    take(rows * width + column);
  }
  for (let row = 1; row <= rows; row++) {
    take(row * width + 1);
    take(row * width + columns);
  }
  const steps = neighbourSteps(width);
  for (let k = 0; k < found.length; k++) {
    const cell = found.values[k]!;
    for (let s = 0; s < 8; s++) take(cell + steps[s]!);
  }
  return cellsOf(found);
}

function holesIn(heightM: Float32Array): Int32Array {
  const found = intList();
  for (let cell = 0; cell < heightM.length; cell++) {
    const h = heightM[cell]!;
    if (Number.isNaN(h)) append(found, cell);
  }
  return cellsOf(found);
}

function cellsOf(list: IntList): Int32Array {
  return list.values.slice(0, list.length);
}

/** Area of one cell in each row, and the shorter side of a cell in the middle, on the ellipsoid. */
function cellSizes(columns: number, rows: number, place: GridPlace) {
  const middle = (columns - 1) / 2;
  const plane = planPlane(place.toLonLat(middle, (rows - 1) / 2));
  const at = (column: number, row: number) => plane.toPlane(place.toLonLat(column, row));
  const sidesOf = (row: number) => {
    const [left, right] = [at(middle - 0.5, row), at(middle + 0.5, row)];
    const [above, below] = [at(middle, row - 0.5), at(middle, row + 0.5)];
    return [right[0] - left[0], right[1] - left[1], below[0] - above[0], below[1] - above[1]];
  };
  const rowAreaM2 = Float64Array.from({ length: rows }, (_, row) => {
    const [ax, ay, bx, by] = sidesOf(row) as [number, number, number, number];
    return Math.abs(ax * by - ay * bx);
  });
  const [ax, ay, bx, by] = sidesOf((rows - 1) / 2) as [number, number, number, number];
  return { rowAreaM2, cellM: Math.min(Math.hypot(ax, ay), Math.hypot(bx, by)) };
}
