import type { Point } from "../search/types.ts";

/** How far the thinned line may lie from the corners it leaves out, in the unit of the points. */
const WITHIN = 0.4;

/** A closed line without the corners that its shape does not need (Douglas and Peucker's rule). */
export function thinned(points: readonly Point[]): Point[] {
  if (points.length < 4) return [...points];
  const closed = [...points, points[0]!];
  const far = farthest(closed, 0, points.length, (at) => distance(at, closed[0]!));
  const keep = new Uint8Array(closed.length);
  keep[0] = 1;
  keep[far.at] = 1;
  const spans: [number, number][] = [
    [0, far.at],
    [far.at, points.length],
  ];
  for (let span = spans.pop(); span; span = spans.pop()) {
    const [from, to] = span;
    const away = (at: Point) => offLeg(at, closed[from]!, closed[to]!);
    const most = farthest(closed, from, to, away);
    if (!(most.value > WITHIN)) continue;
    keep[most.at] = 1;
    spans.push([from, most.at], [most.at, to]);
  }
  return points.filter((_, k) => keep[k] === 1);
}

/** The point strictly between two places in a list for which a value is greatest. */
function farthest(
  points: readonly Point[],
  from: number,
  to: number,
  amount: (at: Point) => number,
): { readonly at: number; readonly value: number } {
  let best = { at: from, value: 0 };
  for (let k = from + 1; k < to; k++) {
    const value = amount(points[k]!);
    if (value > best.value) best = { at: k, value };
  }
  return best;
}

function distance(a: Point, b: Point): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}

function offLeg(at: Point, from: Point, to: Point): number {
  const [alongX, alongY] = [to[0] - from[0], to[1] - from[1]];
  const square = alongX * alongX + alongY * alongY;
  if (square === 0) return distance(at, from);
  const share = ((at[0] - from[0]) * alongX + (at[1] - from[1]) * alongY) / square;
  const held = Math.min(1, Math.max(0, share));
  return distance(at, [from[0] + held * alongX, from[1] + held * alongY]);
}
