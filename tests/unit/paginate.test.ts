import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Measured, paginate } from "../../src/pages/paginate.ts";

const whole = (px: number): Measured => ({ aroundPx: px, rowsPx: [] });
const table = (head: number, ...rowsPx: number[]): Measured => ({ aroundPx: head, rowsPx });

describe("pieces on pages", () => {
  it("fill a page and go on to the next, the head of a table again", () => {
    expect(paginate([whole(30), table(10, 20, 20, 20, 20, 20)], 100)).toEqual([
      [
        { piece: 0, from: 0, to: 0 },
        { piece: 1, from: 0, to: 3 },
      ],
      [{ piece: 1, from: 3, to: 5 }],
    ]);
  });

  it("leave no row alone on the last page", () => {
    const pages = paginate([table(10, 20, 20, 20, 20, 20)], 90);
    expect(pages.map(([part]) => [part!.from, part!.to])).toEqual([
      [0, 3],
      [3, 5],
    ]);
  });

  it("begin a table on the next page where two of its rows do not fit", () => {
    expect(paginate([whole(60), table(10, 20, 20, 20)], 100).map((page) => page.length)).toEqual([
      1, 1,
    ]);
  });

  it("hold every piece and row once, in order, and none beyond the page that could be within it", () => {
    const pieces = fc.array(
      fc.record({
        aroundPx: fc.integer({ min: 1, max: 90 }),
        rowsPx: fc.array(fc.integer({ min: 1, max: 40 }), { maxLength: 30 }),
      }),
      { minLength: 1, maxLength: 12 },
    );
    fc.assert(
      fc.property(pieces, (given) => {
        const pages = paginate(given, 100);
        const parts = pages.flat();
        given.forEach(({ rowsPx }, piece) => {
          const own = parts.filter((part) => part.piece === piece);
          const rows = own.flatMap(({ from, to }) => rowsPx.slice(from, to));
          expect(own.length).toBeGreaterThan(0);
          expect(rows).toEqual(rowsPx);
        });
        expect(parts.map(({ piece }) => piece)).toEqual(
          [...parts.map(({ piece }) => piece)].sort((a, b) => a - b),
        );
        for (const page of pages) {
          const height = page.reduce((sum, { piece, from, to }) => {
            const { aroundPx, rowsPx } = given[piece]!;
            return sum + aroundPx + rowsPx.slice(from, to).reduce((a, b) => a + b, 0);
          }, 0);
          const isOneRow = page.length === 1 && page[0]!.to - page[0]!.from <= 1;
          if (!isOneRow) expect(height).toBeLessThanOrEqual(100);
        }
      }),
      { seed: 11, numRuns: 300 },
    );
  });
});
