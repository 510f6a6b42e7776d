import { area, booleanPointInPolygon, booleanValid, polygon } from "@turf/turf";
import { describe, expect, it } from "vitest";
import { thinned } from "../../workers/lines/thinned.ts";
import { outlinesOf, type WetCells } from "../../workers/lines/water-outlines.ts";
import type { Outline, Point } from "../../workers/search/types.ts";

/** Cells from a drawing, `~` wet, with a dry frame; one cell is one unit and the first is at (0, 0). */
function drawn(rows: readonly string[]): WetCells {
  const columns = rows[0]!.length + 2;
  const wet = new Float32Array(columns * (rows.length + 2));
  rows.forEach((row, j) => {
    [...row].forEach((mark, i) => {
      if (mark === "~") wet[(j + 1) * columns + i + 1] = 1;
    });
  });
  return {
    ...{ wet, columns, rows: rows.length + 2 },
    toPlane: (column, row) => [column - 1, row - 1],
    toCell: ([x, y]) => [x + 1, y + 1],
  };
}

function house(x: number, y: number): Outline {
  return [
    [x - 0.4, y - 0.4],
    [x + 0.4, y - 0.4],
    [x + 0.4, y + 0.4],
    [x - 0.4, y + 0.4],
  ];
}

/** In hundred-thousandths of a degree, so that the library's sphere is flat enough. */
function shape(outline: Outline) {
  const path = [...outline, outline[0]!].map(([x, y]) => [x * 1e-5, y * 1e-5]);
  return polygon([path]);
}

const UNIT_M2 = area(
  shape([
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ]),
);

function holds(outline: Outline, [x, y]: Point): boolean {
  return booleanPointInPolygon([x * 1e-5, y * 1e-5], shape(outline));
}

const RIVER = [
  "..........", //
  "~~~~......",
  "~~~~~~....",
  "..~~~~~~~~",
  "....~~~~~~",
  "..........",
];
const MOAT = [
  "~~~~~~~~~",
  "~~~~~~~~~",
  "~~.....~~",
  "~~.....~~",
  "~~.....~~",
  "~~~~~~~~~",
  "~~~~~~~~~",
];

describe("outlines of the water", () => {
  it("hold the middles of the wet cells and not of the dry ones", () => {
    const cells = drawn(RIVER);
    const outlines = outlinesOf(cells, []);
    expect(outlines).toHaveLength(1);
    RIVER.forEach((row, y) => {
      [...row].forEach((mark, x) => {
        expect(holds(outlines[0]!, [x, y]), `${x}, ${y}`).toBe(mark === "~");
      });
    });
    const wetCells = RIVER.join("").split("~").length - 1;
    expect(Math.abs(area(shape(outlines[0]!)) / UNIT_M2 / wetCells - 1)).toBeLessThan(0.2);
  });

  it("fill an island where nothing stands", () => {
    const [outline, ...more] = outlinesOf(drawn(MOAT), []);
    expect(more).toEqual([]);
    expect(holds(outline!, [4, 3])).toBe(true);
  });

  it("never go round a structure: water all round it comes in parts that leave no gap", () => {
    const outlines = outlinesOf(drawn(MOAT), [house(4, 3)]);
    expect(outlines).toHaveLength(2);
    expect(outlines.some((outline) => holds(outline, [4, 3]))).toBe(false);
    const wetArea = outlines.reduce((sum, outline) => sum + area(shape(outline)), 0) / UNIT_M2;
    const wetCells = MOAT.join("").split("~").length - 1;
    expect(Math.abs(wetArea / wetCells - 1)).toBeLessThan(0.15);
    const across = outlines.map((outline) => outline.filter(([, y]) => y < 2).map(([x]) => x));
    expect(Math.max(...across[0]!)).toBeCloseTo(Math.min(...across[1]!), 6);
  });
});

describe("a thinned outline", () => {
  it("stays within 0.4 of what it left out, with far fewer corners, and stays a simple polygon", () => {
    const circle = Array.from({ length: 400 }, (_, k): Point => {
      const turn = (2 * Math.PI * k) / 400;
      return [40 * Math.cos(turn), 40 * Math.sin(turn)];
    });
    const kept = thinned(circle);
    expect(kept.length).toBeLessThan(40);
    expect(booleanValid(shape(kept))).toBe(true);
    const sagitta = 40 * (1 - Math.cos(Math.PI / kept.length));
    expect(sagitta).toBeLessThan(0.4);
    expect(area(shape(kept)) / UNIT_M2).toBeGreaterThan(Math.PI * (40 - 0.4) ** 2);
    expect(area(shape(kept)) / UNIT_M2).toBeLessThan(Math.PI * 40 ** 2 * 1.0001);
  });

  it("leaves a triangle alone", () => {
    const triangle: Point[] = [
      [0, 0],
      [9, 0],
      [0, 9],
    ];
    expect(thinned(triangle)).toEqual(triangle);
  });
});
