type Point = readonly [number, number];

/**
 * The convex hull of some points, counter-clockwise, the first corner not repeated; corners on a straight side are
 * left out. Fewer than three when the points lie on one line. Andrew's monotone chain.
 */
export function convexHull(points: readonly Point[]): Point[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  return [...half(sorted), ...half(sorted.reverse())];
}

/** One side of the hull, without its last corner. */
function half(sorted: readonly Point[]): Point[] {
  const hull: Point[] = [];
  for (const at of sorted) {
    while (hull.length > 1 && !turnsLeft(hull.at(-2)!, hull.at(-1)!, at)) hull.pop();
    hull.push(at);
  }
  return hull.slice(0, -1);
}

function turnsLeft(a: Point, b: Point, c: Point): boolean {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) > 0;
}
