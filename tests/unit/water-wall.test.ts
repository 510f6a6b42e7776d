import { describe, expect, it } from "vitest";
import { layLine } from "../../shared/alignment.ts";
import { cellsAlong, type GridSpot } from "../../workers/water/cells-along.ts";
import { connectedWater } from "../../workers/water/connected-water.ts";
import { buildWall, leveeWall, removeWall } from "../../workers/water/levee-wall.ts";
import { outlineCells } from "../../workers/water/outline-cells.ts";
import { cellIndex, setEdge, type WaterGrid } from "../../workers/water/water-grid.ts";
import { type Corner, openLine, PLANE, ring } from "../helpers/grounds.ts";
import { seededRandom } from "../helpers/seeded-random.ts";
import { EDGE, gridFrom, inner } from "../helpers/water-grids.ts";

const SIDE = 60;

function lowGround(): WaterGrid {
  return gridFrom({ columns: SIDE, rows: SIDE, heightM: new Float32Array(SIDE * SIDE) });
}

function cellsOf(from: GridSpot, to: GridSpot): [number, number, number][] {
  const cells: [number, number, number][] = [];
  cellsAlong(from, to, (column, row, share) => cells.push([column, row, share]));
  return cells;
}

describe("the cells a straight piece goes through", () => {
  it("each share a side with the one before, from the first to the last, none twice", () => {
    const random = seededRandom(3);
    for (let k = 0; k < 200; k++) {
      const spot = (): GridSpot =>
        k % 3 === 0
          ? [Math.round(20 * random()) / 2, Math.round(20 * random()) / 2]
          : [20 * random() - 4, 20 * random() - 4];
      const [from, to] = [spot(), spot()];
      const cells = cellsOf(from, to);
      expect(cells[0]!.slice(0, 2)).toEqual(from.map((at) => Math.floor(at + 0.5)));
      expect(cells.at(-1)!.slice(0, 2)).toEqual(to.map((at) => Math.floor(at + 0.5)));
      const steps = cells.slice(1).map(([column, row, share], i) => {
        const [beforeColumn, beforeRow, beforeShare] = cells[i]!;
        const sides = Math.abs(column - beforeColumn) + Math.abs(row - beforeRow);
        return sides === 1 && share >= beforeShare - 1e-12;
      });
      expect(steps).not.toContain(false);
      expect(new Set(cells.map(String)).size).toBe(cells.length);
    }
  });

  it("hold every point of the piece", () => {
    const random = seededRandom(4);
    for (let k = 0; k < 60; k++) {
      const from: GridSpot = [20 * random(), 20 * random()];
      const to: GridSpot = [20 * random(), 20 * random()];
      const cells = new Set(cellsOf(from, to).map(([column, row]) => `${column},${row}`));
      const through = Array.from({ length: 98 }, (_, i) =>
        from.map((at, axis) => Math.floor(at + (i / 97) * (to[axis]! - at) + 0.5)).join(),
      );
      expect(through.filter((cell) => !cells.has(cell))).toEqual([]);
    }
  });

  it("are none for a piece that leads nowhere on the map", () => {
    expect(cellsOf([0, 0], [Number.NaN, 3])).toEqual([]);
    expect(cellsOf([0, Number.POSITIVE_INFINITY], [2, 3])).toEqual([]);
  });
});

describe("a ring built as a wall", () => {
  it("lets no water in, at any angle, size and place on the grid", () => {
    const random = seededRandom(8);
    for (let k = 0; k < 30; k++) {
      const corners = polygon(3 + (k % 6), random);
      const grid = lowGround();
      const line = layLine(ring(corners), PLANE);
      const wall = leveeWall(grid, line, PLANE);
      buildWall(grid, wall, 2);
      const codes = connectedWater(grid, EDGE, 1);
      const under = new Set(wall.cells);
      const covered = outlineCells(grid, ring(corners).corners).filter((cell) => !under.has(cell));
      expect(covered.length).toBeGreaterThan(10);
      expect(covered.every((cell) => codes[cell] === 1)).toBe(true);
      removeWall(grid, wall);
      expect(inner(grid, grid.heightM).every((height) => height === 0)).toBe(true);
    }
  });

  it("would let water in if one cell of it were missing", () => {
    const random = seededRandom(9);
    for (let k = 0; k < 20; k++) {
      const grid = lowGround();
      const wall = leveeWall(grid, layLine(ring(polygon(4 + (k % 3), random)), PLANE), PLANE);
      buildWall(grid, wall, 2);
      const straight = [...wall.cells].find((cell) => isPlainWall(grid, cell))!;
      grid.heightM[straight] = 0;
      expect(inner(grid, connectedWater(grid, EDGE, 1))).not.toContain(1);
    }
  });

  it("keeps ground that is higher than the crest, and fills holes and low ground to it", () => {
    const heightM = new Float32Array(25).fill(1);
    heightM.set([1, 7, Number.NaN, 2, 3], 10);
    const grid = gridFrom({ columns: 5, rows: 5, heightM });
    const across = layLine(
      openLine([
        [0, -2],
        [4, -2],
      ]),
      PLANE,
    );
    const wall = leveeWall(grid, across, PLANE);
    expect([...wall.groundM]).toEqual([1, 7, Number.NaN, 2, 3]);
    expect([...wall.chainageM].map((chainage) => Math.round(chainage * 1000) / 1000)).toEqual([
      0, 0.5, 1.5, 2.5, 3.5,
    ]);
    buildWall(grid, wall, 2.5);
    expect(inner(grid, grid.heightM).slice(10, 15)).toEqual([2.5, 7, 2.5, 2.5, 3]);
    removeWall(grid, wall);
    expect(inner(grid, grid.heightM).slice(10, 15)).toEqual([1, 7, Number.NaN, 2, 3]);
  });

  it("has no cells off the grid", () => {
    const wall = leveeWall(
      lowGround(),
      layLine(
        openLine([
          [-400, -30],
          [30, -30],
        ]),
        PLANE,
      ),
      PLANE,
    );
    expect(wall.cells).toHaveLength(31);
    expect(wall.chainageM[0]).toBeCloseTo(399.5, 3);
  });
});

describe("the cells of an outline", () => {
  it("are those it covers or touches, each once", () => {
    const grid = lowGround();
    setEdge(grid, true);
    const outline = ring([
      [10.6, -20.2],
      [14.4, -20.2],
      [14.4, -23.9],
      [10.6, -23.9],
    ]).corners;
    const cells = outlineCells(grid, outline);
    const expected = [11, 12, 13, 14].flatMap((column) =>
      [20, 21, 22, 23, 24].map((row) => cellIndex(grid, column, row)),
    );
    expect(new Set(cells)).toEqual(new Set(expected));
    expect(cells).toHaveLength(expected.length);
  });

  it("is one for a hut within a cell, and none off the grid", () => {
    const grid = lowGround();
    const hut = (x: number, y: number) =>
      ring([
        [x, y],
        [x + 0.2, y],
        [x, y + 0.2],
      ]).corners;
    expect(outlineCells(grid, hut(30.1, -40.1))).toEqual([cellIndex(grid, 30, 40)]);
    expect(outlineCells(grid, hut(-30, -40))).toEqual([]);
  });
});

/** A star-shaped polygon inside the grid. */
function polygon(corners: number, random: () => number): Corner[] {
  const [x, y] = [25 + 10 * random(), -25 - 10 * random()];
  const turn = 6 * random();
  return Array.from({ length: corners }, (_, k): Corner => {
    const angle = turn + (2 * Math.PI * k) / corners;
    const radius = 8 + 14 * random();
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });
}

/** A cell of a wall with wall on two opposite sides, and free ground beside it. */
function isPlainWall({ heightM, width }: WaterGrid, cell: number): boolean {
  const high = (step: number) => heightM[cell + step]! > 1;
  const level = high(-1) && high(1) && !high(-width) && !high(width);
  return level || (high(-width) && high(width) && !high(-1) && !high(1));
}
