import { KEEP_OUT, type Lattice, PAD } from "./lattice.ts";

/**
 * A price that the best ring does not pass, to size the search's buckets: the cheapest of the upright
 * rectangles of open nodes round everything too close to the structures. Where none is open it is a
 * guess, to be raised until a ring is found.
 */
export function firstLimit(lattice: Lattice): { readonly price: number; readonly sure: boolean } {
  const { columns, rows, price, why } = lattice;
  let left = columns;
  let right = -1;
  let bottom = rows;
  let top = -1;
  let openPrice = 0;
  let openCount = 0;
  for (let node = 0; node < why.length; node++) {
    if (price[node]! < Infinity) {
      openPrice += price[node]!;
      openCount++;
    }
    if (why[node] !== KEEP_OUT) continue;
    const i = node % columns;
    const j = (node - i) / columns;
    left = Math.min(left, i);
    right = Math.max(right, i);
    bottom = Math.min(bottom, j);
    top = Math.max(top, j);
  }
  let best = Infinity;
  for (let k = 1; left - k >= PAD && bottom - k >= PAD; k++) {
    if (right + k >= columns - PAD || top + k >= rows - PAD) break;
    const around = rectanglePrice(lattice, left - k, right + k, bottom - k, top + k, best);
    best = Math.min(best, around);
  }
  if (best < Infinity) return { price: best * (1 + 1e-9), sure: true };
  const perimeter = 2 * (right - left + top - bottom + 8);
  return { price: (perimeter * openPrice) / Math.max(1, openCount), sure: false };
}

function rectanglePrice(
  { columns, price }: Lattice,
  left: number,
  right: number,
  bottom: number,
  top: number,
  limit: number,
): number {
  let sum = 0;
  for (let i = left; i < right && sum < limit; i++) {
    sum += price[bottom * columns + i]! + price[top * columns + i + 1]!;
  }
  for (let j = bottom; j < top && sum < limit; j++) {
    sum += price[(j + 1) * columns + left]! + price[j * columns + right]!;
  }
  return sum;
}
