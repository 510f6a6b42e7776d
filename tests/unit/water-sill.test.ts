import { describe, expect, it } from "vitest";
import { WATER } from "../../shared/water-types.ts";
import { connectedWater } from "../../workers/water/connected-water.ts";
import { plugHoles } from "../../workers/water/over-plane.ts";
import { sillSearch } from "../../workers/water/sill-search.ts";
import {
  cellIndex,
  setEdge,
  type WaterCells,
  type WaterGrid,
} from "../../workers/water/water-grid.ts";
import { wayIn } from "../../workers/water/way-in.ts";
import { seededRandom } from "../helpers/seeded-random.ts";
import { drawn, EDGE, gridFrom, type Heights, TURNS } from "../helpers/water-grids.ts";

describe("sills on grids drawn by hand", () => {
  const bowl = drawn(
    "9 9 9 9 9", //
    "9 1 3 9 9",
    "9 2 9 5 4",
    "9 9 9 9 9",
  );
  const at = (column: number, row: number) => cellIndex(gridFrom(bowl), column, row);

  it("gives the highest ground of the lowest way, and its cell, whichever way the grid lies", () => {
    for (const { turn, cell } of TURNS) {
      const grid = gridFrom(turn(bowl));
      const spot = (column: number, row: number) => cellIndex(grid, ...cell(bowl, column, row));
      const sill = sillSearch(grid, EDGE, null).find([spot(1, 2)]);
      expect(sill).toEqual({ levelM: 5, cell: spot(3, 2) });
    }
  });

  it("gives the place's own ground where that is the highest", () => {
    const grid = gridFrom(bowl);
    const search = sillSearch(grid, EDGE, null);
    expect(search.find([at(4, 2)])).toEqual({ levelM: 4, cell: at(4, 2) });
    expect(search.find([at(2, 2)])).toEqual({ levelM: 9, cell: at(2, 2) });
  });

  it("takes the lowest of a place's cells", () => {
    const grid = gridFrom(bowl);
    expect(sillSearch(grid, EDGE, null).find([at(2, 2), at(1, 1)]).levelM).toBe(5);
    expect(sillSearch(grid, EDGE, null).find([at(1, 1), at(4, 2)]).levelM).toBe(4);
  });

  it("starts from marked sources, of which the ground counts too; without a way there is no sill", () => {
    const grid = gridFrom(bowl);
    const find = (source: number, target: number) => {
      setEdge(grid, false);
      return sillSearch(grid, { edge: false, cells: [source] }, null).find([target]).levelM;
    };
    expect(find(at(1, 2), at(2, 1))).toBe(3);
    expect(find(at(3, 2), at(1, 1))).toBe(5);
    expect(find(at(1, 1), at(1, 1))).toBe(1);
    setEdge(grid, false);
    expect(sillSearch(grid, { edge: false, cells: [] }, null).find([at(1, 1)]).levelM).toBe(
      Number.POSITIVE_INFINITY,
    );
  });

  it("goes through holes, and not when they hold", () => {
    const holed = gridFrom(drawn("9 9 9 9", "9 1 x 4", "9 9 9 9", "9 9 6 9"));
    const inside = cellIndex(holed, 1, 1);
    expect(sillSearch(holed, EDGE, null).find([inside]).levelM).toBe(4);
    plugHoles(holed, true, true);
    expect(sillSearch(holed, EDGE, null).find([inside]).levelM).toBe(9);
    plugHoles(holed, true, false);
    expect(sillSearch(holed, EDGE, null).find([inside]).levelM).toBe(4);
  });
});

describe("sills on random ground, against sorting all cells and joining them from below", () => {
  for (const [what, marked] of [
    ["from the edge", false],
    ["from marked sources", true],
  ] as const) {
    it(`${what}, with and without the water known`, () => {
      for (let seed = 1; seed <= 40; seed++) {
        const heights = hills(
          seed,
          4 + (seed % 23),
          3 + ((5 * seed) % 17),
          seed % 4 === 0 ? 0.06 : 0,
        );
        const grid = gridFrom(heights);
        const random = seededRandom(1000 + seed);
        const anyCell = () =>
          cellIndex(grid, Math.floor(random() * grid.columns), Math.floor(random() * grid.rows));
        const from: WaterCells = marked ? { edge: false, cells: [anyCell(), anyCell()] } : EDGE;
        setEdge(grid, from.edge);
        const levelM = random();
        const codes = connectedWater(grid, from, levelM);
        const searches = [
          sillSearch(grid, from, null),
          sillSearch(grid, from, { codes, levelM }),
        ] as const;
        for (let k = 0; k < 8; k++) {
          const targets = blockAt(grid, anyCell(), 1 + (k % 3));
          const expected = joinedAt(grid.heightM, grid.width, from, targets);
          for (const search of searches) expect(search.find(targets).levelM).toBe(expected);
          if (!targets.every((cell) => Number.isFinite(grid.heightM[cell]!))) continue;
          expect(targets.some((cell) => codes[cell] === WATER)).toBe(expected < levelM);
        }
      }
    });
  }

  it("stays right over more searches than it can tell apart, in any order", () => {
    const noise = seededRandom(6);
    const heightM = Float32Array.from({ length: 17 * 13 }, () =>
      noise() < 0.02 ? Number.NaN : noise(),
    );
    const heights: Heights = { columns: 17, rows: 13, heightM };
    const grid = gridFrom(heights);
    const search = sillSearch(grid, EDGE, null);
    const random = seededRandom(5);
    for (let k = 0; k < 300; k++) {
      const target = cellIndex(grid, Math.floor(random() * 17), Math.floor(random() * 13));
      const targets = blockAt(grid, target, 1 + (k % 3));
      expect(search.find(targets).levelM).toBe(joinedAt(grid.heightM, grid.width, EDGE, targets));
    }
  });

  it("looks everywhere when thousands of cells wait at once", () => {
    const side = 1400;
    const last = side - 4;
    const gaps = [
      [4, 3],
      [last, last - 1],
    ] as const;
    for (const [gapColumn, gapRow] of gaps) {
      const random = seededRandom(gapColumn);
      const heightM = Float32Array.from({ length: side * side }, (_, i) => {
        const [column, row] = [i % side, Math.floor(i / side)];
        if (column === gapColumn && row === gapRow) return 3;
        const fromEdge = Math.min(column, row, side - 1 - column, side - 1 - row);
        return fromEdge === 3 ? 5 + random() : 0;
      });
      const grid = gridFrom({ columns: side, rows: side, heightM });
      const middle = cellIndex(grid, side / 2, side / 2);
      const gap = cellIndex(grid, gapColumn, gapRow);
      expect(sillSearch(grid, EDGE, null).find([middle])).toEqual({ levelM: 3, cell: gap });
    }
  });

  it("finds a way in that goes no higher than the sill, cell by cell from a source", () => {
    for (let seed = 1; seed <= 30; seed++) {
      const heights = hills(seed, 25, 19, seed % 3 === 0 ? 0.05 : 0);
      const grid = gridFrom(heights);
      const random = seededRandom(seed);
      const target = cellIndex(grid, Math.floor(random() * 25), Math.floor(random() * 19));
      const { levelM, cell } = sillSearch(grid, EDGE, null).find([target]);
      const path = wayIn(grid, EDGE, [target], levelM);
      expect(path.at(-1)).toBe(target);
      const [column, row] = [(path[0]! % grid.width) - 1, Math.floor(path[0]! / grid.width) - 1];
      const besideOutside = grid.outsideCells.some((each) => touches(each, path[0]!, grid.width));
      expect(besideOutside || column === 0 || row === 0 || column === 24 || row === 18).toBe(true);
      for (const [i, each] of path.entries()) {
        expect(grid.heightM[each]! > levelM).toBe(false);
        if (i > 0) expect(touches(each, path[i - 1]!, grid.width)).toBe(true);
      }
      if (Number.isFinite(levelM)) expect(path).toContain(cell);
    }
  });
});

/** Cells of a square of `side` cells, as far as it lies in the grid. */
function blockAt(grid: WaterGrid, cell: number, side: number): number[] {
  const [column, row] = [(cell % grid.width) - 1, Math.floor(cell / grid.width) - 1];
  return Array.from({ length: side * side }, (_, i) =>
    cellIndex(grid, column + (i % side), row + Math.floor(i / side)),
  ).filter((each) => each >= 0);
}

function touches(a: number, b: number, width: number): boolean {
  const columns = Math.abs((a % width) - (b % width));
  const rows = Math.abs(Math.floor(a / width) - Math.floor(b / width));
  return Math.max(columns, rows) <= 1;
}

function hills(seed: number, columns: number, rows: number, holes: number): Heights {
  const random = seededRandom(seed);
  const [a, b, c] = [random() * 6, random() * 6, random() * 6];
  const heightM = Float32Array.from({ length: columns * rows }, (_, i) => {
    const [x, y] = [i % columns, Math.floor(i / columns)];
    const height = 0.5 + 0.25 * Math.sin(x / 3 + a) * Math.cos(y / 2.3 + b) + 0.2 * random() * c;
    return random() < holes ? Number.NaN : height;
  });
  return { columns, rows, heightM };
}

/**
 * The lowest level at which targets and sources are one, by brute force: all cells in order of height, each
 * joined with its neighbours that are already there. Unknown cells come first.
 */
function joinedAt(
  heightM: Float32Array,
  width: number,
  from: WaterCells,
  targets: readonly number[],
): number {
  const heightOf = (cell: number) =>
    Number.isNaN(heightM[cell]!) ? Number.NEGATIVE_INFINITY : heightM[cell]!;
  const order = Array.from(heightM.keys()).sort((p, q) => {
    const [low, high] = [heightOf(p), heightOf(q)];
    return low < high ? -1 : low > high ? 1 : p - q;
  });
  const root = new Map<number, number>();
  const rootOf = (cell: number): number => {
    const above = root.get(cell)!;
    if (above === cell) return cell;
    root.set(cell, rootOf(above));
    return root.get(cell)!;
  };
  const sources = from.edge ? [0, ...from.cells] : from.cells;
  for (const [i, cell] of order.entries()) {
    if (heightOf(cell) === Number.POSITIVE_INFINITY) break;
    root.set(cell, cell);
    for (const step of [-width - 1, -width, -width + 1, -1, 1, width - 1, width, width + 1]) {
      const next = cell + step;
      if (root.has(next) && touches(cell, next, width)) root.set(rootOf(next), rootOf(cell));
    }
    const levelM = heightOf(cell);
    if (i + 1 < order.length && heightOf(order[i + 1]!) === levelM) continue;
    const there = new Set(targets.filter((each) => root.has(each)).map(rootOf));
    if (sources.some((each) => root.has(each) && there.has(rootOf(each)))) return levelM;
  }
  return Number.POSITIVE_INFINITY;
}
