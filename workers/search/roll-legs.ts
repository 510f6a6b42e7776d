import { type BentLine, beside, legCount, moveIfBetter } from "./bent-line.ts";
import { legBreach, legIsClear } from "./leg-price.ts";
import { SHAPING } from "./progress.ts";
import type { SearchTerms } from "./search-terms.ts";
import type { SearchStep } from "./types.ts";

/** Angles a leg is rolled by, radians. */
const ANGLES = [0.12, 0.04, 0.013, 0.004];
const MOST_SWEEPS = 6;
/** Legs looked at between two steps. */
const STRETCH = 8;
/** A leg with more room than this on both sides is not held by an obstacle, metres. */
const HELD_WITHIN_M = 0.1;
const HALVINGS = 7;
/** Legs this nearly in line with a neighbour are left alone (sine of the angle). */
const LEAST_SINE = 0.03;

/**
 * Rolls legs that are held by an obstacle round it: the leg is turned a little about its middle and moved off
 * until it just keeps clear, and its ends slide along its neighbours. Moving corners one by one cannot do
 * that, as every single move would come too close.
 */
export function* rollLegs(
  terms: SearchTerms,
  line: BentLine,
  outOfTime: () => boolean,
): Generator<SearchStep, void> {
  for (const angle of ANGLES) {
    for (let sweep = 0; sweep < MOST_SWEEPS; sweep++) {
      let better = false;
      for (let k = 0; k < legCount(line); k++) {
        if (outOfTime()) return;
        if (k % STRETCH === 0) yield SHAPING;
        if (rollLeg(terms, line, k, angle) || rollLeg(terms, line, k, -angle)) better = true;
      }
      if (!better) break;
    }
  }
}

function rollLeg(terms: SearchTerms, line: BentLine, k: number, angle: number): boolean {
  const n = beside(line, k, 1);
  const p = beside(line, k, -1);
  const q = beside(line, k, 2);
  if (p < 0 || q >= line.x.length || line.pinned[k] || line.pinned[n] || line.x.length < 4)
    return false;
  const [x1, y1, x2, y2] = [line.x[k]!, line.y[k]!, line.x[n]!, line.y[n]!];
  const length = Math.hypot(x2 - x1, y2 - y1);
  if (length < HELD_WITHIN_M) return false;
  const away = sideAway(terms, x1, y1, x2, y2, length);
  if (away === 0) return false;
  const [ux, uy] = [(x2 - x1) / length, (y2 - y1) / length];
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const [dx, dy] = [ux * cos - uy * sin, ux * sin + uy * cos];
  const at = (offM: number): Ends | null => {
    const x = (x1 + x2) / 2 - dy * away * offM;
    const y = (y1 + y2) / 2 + dx * away * offM;
    const from = along(x, y, dx, dy, line.x[p]!, line.y[p]!, x1, y1);
    const to = along(x, y, dx, dy, line.x[q]!, line.y[q]!, x2, y2);
    if (from === null || to === null || from >= to) return null;
    return { xs: [x + from * dx, x + to * dx], ys: [y + from * dy, y + to * dy] };
  };
  const ends = justClear(terms, at, length * Math.abs(sin));
  return ends !== null && moveIfBetter(terms, line, k, ends.xs, ends.ys);
}

interface Ends {
  readonly xs: readonly [number, number];
  readonly ys: readonly [number, number];
}

/** Side to move off to: 1 left, -1 right, 0 where no obstacle holds the leg. */
function sideAway(
  terms: SearchTerms,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  length: number,
): -1 | 0 | 1 {
  const offX = (-(y2 - y1) / length) * HELD_WITHIN_M;
  const offY = ((x2 - x1) / length) * HELD_WITHIN_M;
  const left = legBreach(terms, x1 + offX, y1 + offY, x2 + offX, y2 + offY);
  const right = legBreach(terms, x1 - offX, y1 - offY, x2 - offX, y2 - offY);
  if (left === right) return 0;
  return left < right ? 1 : -1;
}

/** The turned leg moved off as little as keeps it clear; null when moving it off so far does not help. */
function justClear(
  terms: SearchTerms,
  at: (offM: number) => Ends | null,
  farM: number,
): Ends | null {
  const clear = (ends: Ends | null) =>
    ends !== null && legIsClear(terms, ends.xs[0], ends.ys[0], ends.xs[1], ends.ys[1]);
  let high = farM;
  let best = at(high);
  if (!clear(best)) return null;
  let low = -farM / 4;
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (low + high) / 2;
    const ends = at(middle);
    if (clear(ends)) {
      high = middle;
      best = ends;
    } else {
      low = middle;
    }
  }
  return best;
}

/** How far along (dx, dy) from (x, y) the line through two points is met; null when it runs nearly alongside. */
function along(
  x: number,
  y: number,
  dx: number,
  dy: number,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
): number | null {
  const ex = x2 - x1;
  const ey = y2 - y1;
  const cross = dx * ey - dy * ex;
  if (Math.abs(cross) <= LEAST_SINE * Math.hypot(ex, ey)) return null;
  return ((x1 - x) * ey - (y1 - y) * ex) / cross;
}
