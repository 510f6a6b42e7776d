import { CLEARANCE, type Lattice, PAD } from "./lattice.ts";

/** An upright rectangle of nodes, by the columns and rows of its sides. */
interface Rectangle {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

export interface FirstLimit {
  readonly price: number;
  /** The rectangle that has this price; null where none is open and the price is a guess. */
  readonly rectangle: Rectangle | null;
}

/**
 * A price that the best ring does not pass, to size the search's buckets: the cheapest of the upright
 * rectangles of open nodes round everything too close to the structures. Where none is open it is a
 * guess, to be raised until a ring is found.
 */
export function firstLimit(lattice: Lattice): FirstLimit {
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
    if (why[node] !== CLEARANCE) continue;
    const i = node % columns;
    const j = (node - i) / columns;
    left = Math.min(left, i);
    right = Math.max(right, i);
    bottom = Math.min(bottom, j);
    top = Math.max(top, j);
  }
  let best = Infinity;
  let rectangle: Rectangle | null = null;
  for (let k = 1; left - k >= PAD && bottom - k >= PAD; k++) {
    if (right + k >= columns - PAD || top + k >= rows - PAD) break;
    const next = { left: left - k, right: right + k, bottom: bottom - k, top: top + k };
    const price = rectanglePrice(lattice, next, best);
    if (!(price < best)) continue;
    best = price;
    rectangle = next;
  }
  if (rectangle) return { price: best * (1 + 1e-9), rectangle };
  const perimeter = 2 * (right - left + top - bottom + 8);
  return { price: (perimeter * openPrice) / Math.max(1, openCount), rectangle: null };
}

/** The nodes of a rectangle in order round it. */
export function rectangleLoop({ columns }: Lattice, sides: Rectangle): Int32Array {
  const { left, right, bottom, top } = sides;
  const nodes: number[] = [];
  for (let i = left; i < right; i++) nodes.push(bottom * columns + i);
  for (let j = bottom; j < top; j++) nodes.push(j * columns + right);
  for (let i = right; i > left; i--) nodes.push(top * columns + i);
  for (let j = top; j > bottom; j--) nodes.push(j * columns + left);
  return Int32Array.from(nodes);
}

function rectanglePrice(
  { columns, price }: Lattice,
  { left, right, bottom, top }: Rectangle,
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
