import { describe, expect, it } from "vitest";
import { connectedWater } from "../../workers/water/connected-water.ts";
import { cellIndex, setEdge, type WaterCells } from "../../workers/water/water-grid.ts";
import { waterAmounts } from "../../workers/water/wet-amounts.ts";
import { seededRandom } from "../helpers/seeded-random.ts";
import {
  drawn,
  EDGE,
  gridFrom,
  type Heights,
  inner,
  picture,
  TURNS,
} from "../helpers/water-grids.ts";

function traced(heights: Heights, level: number, from: WaterCells = EDGE) {
  const grid = gridFrom(heights);
  setEdge(grid, from.edge);
  return { grid, codes: connectedWater(grid, from, level) };
}

const pictureOf = (heights: Heights, level: number) => {
  const { grid, codes } = traced(heights, level);
  return picture(grid, codes);
};

describe("connected water on grids drawn by hand", () => {
  const gap = drawn(
    ". . . . . . .", //
    ". # # # # # .",
    ". # . . # . .",
    ". # . . . # .",
    ". # # # # # .",
    ". . . . . . .",
  );
  const closed = drawn(
    ". . . . . . .", //
    ". # # # # # .",
    ". # . . # # .",
    ". # . . . # .",
    ". # # # # # .",
    ". . . . . . .",
  );

  it("leaks through a gap of one cell's corner, whichever way the grid lies", () => {
    for (const { turn } of TURNS) expect(pictureOf(turn(gap), 1).join("")).not.toContain("1");
  });

  it("does not leak where the wall's cells share sides, whichever way the grid lies", () => {
    for (const { turn } of TURNS) {
      const { grid, codes } = traced(turn(closed), 1);
      expect(inner(grid, codes).filter((code) => code === 1)).toHaveLength(5);
    }
    expect(pictureOf(closed, 1)[2]).toBe("2 0 1 1 0 0 2");
  });

  it("takes ground at the level as dry, and ground just below it as wet", () => {
    const step = drawn("1 1 1", "1 1 1", "1 1 1");
    expect(pictureOf(step, 1).join("")).not.toMatch(/[12]/);
    expect(pictureOf(step, 1 + 1e-6).join("")).not.toMatch(/[01]/);
  });

  it("lets water through a hole, and counts the hole in no area", () => {
    const holed = drawn(
      ". # # # .", //
      ". x . # .",
      ". # # # .",
    );
    const { grid, codes } = traced(holed, 1);
    expect(picture(grid, codes)[1]).toBe("2 3 2 0 2");
    expect(waterAmounts(grid, codes, 1)).toMatchObject({ cells: 7, holeCells: 1, lowCells: 0 });
    const { grid: other, codes: unreached } = traced(drawn("# # #", "# x #", "# # #"), 1);
    expect(picture(other, unreached)[1]).toBe("0 0 0");
  });

  it("counts cells without data along the edge as outside, where water stands", () => {
    const collar = drawn(
      "x x x x x", //
      "x x 8 8 8",
      "x x . 8 8",
      "x 8 8 8 8",
      "x 8 . 8 8",
    );
    const { grid, codes } = traced(collar, 1);
    expect(picture(grid, codes)).toEqual([
      "0 0 0 0 0",
      "0 0 0 0 0",
      "0 0 2 0 0",
      "0 0 0 0 0",
      "0 0 2 0 0",
    ]);
    expect(grid.holeCells).toHaveLength(0);
    expect(grid.outsideCells).toHaveLength(5 + 2 + 2 + 1 + 1);
  });

  it("comes only from marked sources when there are some, and only from those below the level", () => {
    const pools = drawn(
      ". # . # .", //
      ". # . # 3",
    );
    const at = (column: number, row: number) => cellIndex(gridFrom(pools), column, row);
    const from = (...cells: number[]): WaterCells => ({ edge: false, cells });
    const seen = (level: number, cells: WaterCells) => {
      const { grid, codes } = traced(pools, level, cells);
      return picture(grid, codes);
    };
    expect(seen(1, from(at(2, 0)))).toEqual(["1 0 2 0 1", "1 0 2 0 0"]);
    expect(seen(1, from(at(0, 1), at(2, 1)))).toEqual(["2 0 2 0 1", "2 0 2 0 0"]);
    expect(seen(1, from(at(4, 1), at(1, 0)))).toEqual(["1 0 1 0 1", "1 0 1 0 0"]);
    expect(seen(4, from(at(4, 1)))).toEqual(["1 0 1 0 2", "1 0 1 0 2"]);
  });

  it("sums depth over cells of their own size", () => {
    const bowl = drawn("# # #", "# 2 .", "# # #");
    const grid = gridFrom(bowl, 10);
    const codes = connectedWater(grid, EDGE, 3);
    const { cells, areaM2, volumeM3 } = waterAmounts(grid, codes, 3);
    expect(cells).toBe(2);
    expect(areaM2).toBeCloseTo(200, 6);
    expect(volumeM3).toBeCloseTo(100 * (1 + 3), 6);
  });
});

describe("connected water on random grids, against a plain queue fill", () => {
  it.each([0.2, 0.42, 0.5, 0.6, 0.9])("with a share of %s below the level", (share) => {
    for (let seed = 1; seed <= 20; seed++) {
      const heights = noise(
        seed,
        3 + (seed % 40),
        2 + ((7 * seed) % 31),
        seed % 3 === 0 ? 0.05 : 0,
      );
      for (const marked of [false, true]) {
        const grid = gridFrom(heights);
        const cells = [0, 1, 2].map((k) =>
          cellIndex(grid, (5 * k + seed) % heights.columns, (3 * k) % heights.rows),
        );
        const from: WaterCells = marked ? { edge: false, cells } : EDGE;
        setEdge(grid, from.edge);
        const found = inner(grid, connectedWater(grid, from, share));
        const sources = marked ? cells.map((cell) => innerIndex(cell, heights)) : null;
        expect(found).toEqual(filled(heights, share, sources, marked));
      }
    }
  });

  it("is the same whichever way the grid lies", () => {
    const heights = noise(99, 31, 23, 0.03);
    const plain = traced(heights, 0.45);
    const codes = inner(plain.grid, plain.codes);
    for (const { turn, cell } of TURNS) {
      const turned = traced(turn(heights), 0.45);
      const there = inner(turned.grid, turned.codes);
      for (const [i, code] of codes.entries()) {
        const [c, r] = cell(heights, i % heights.columns, Math.floor(i / heights.columns));
        expect(there[r * turned.grid.columns + c]).toBe(code);
      }
    }
  });
});

function noise(seed: number, columns: number, rows: number, holes: number): Heights {
  const random = seededRandom(seed);
  const heightM = Float32Array.from({ length: columns * rows }, () => {
    const height = random();
    return random() < holes ? Number.NaN : height;
  });
  return { columns, rows, heightM };
}

function innerIndex(cell: number, { columns }: Heights): number {
  const width = columns + 2;
  return (Math.floor(cell / width) - 1) * columns + (cell % width) - 1;
}

/** The plainest way: a queue of cells, from every cell of the edge or from the sources. */
function filled(
  { columns, rows, heightM }: Heights,
  level: number,
  sources: readonly number[] | null,
  edgeHolds: boolean,
): number[] {
  const open = (cell: number) => Number.isNaN(heightM[cell]!) || heightM[cell]! < level;
  const onEdge = (cell: number) => {
    const [column, row] = [cell % columns, Math.floor(cell / columns)];
    return column === 0 || row === 0 || column === columns - 1 || row === rows - 1;
  };
  const all = Array.from(heightM.keys());
  const reached = new Set((sources ?? all.filter(onEdge)).filter(open));
  const spread = (seeds: Set<number>, passes: (cell: number) => boolean) => {
    for (const cell of seeds) {
      for (let k = 0; k < 9; k++) {
        const column = (cell % columns) + (k % 3) - 1;
        const row = Math.floor(cell / columns) + Math.floor(k / 3) - 1;
        if (column < 0 || row < 0 || column >= columns || row >= rows) continue;
        if (passes(row * columns + column)) seeds.add(row * columns + column);
      }
    }
    return seeds;
  };
  spread(reached, open);
  const isHole = (cell: number) => Number.isNaN(heightM[cell]!);
  const outside = spread(new Set(all.filter((cell) => onEdge(cell) && isHole(cell))), isHole);
  if (!edgeHolds) {
    for (const cell of outside) reached.add(cell);
    spread(reached, open);
  }
  return all.map((cell) => {
    if (outside.has(cell)) return 0;
    if (isHole(cell)) return reached.has(cell) ? 3 : 0;
    return reached.has(cell) ? 2 : open(cell) ? 1 : 0;
  });
}
