import { type PlaneLine, placeAt } from "../alignment.ts";
import type { LonLat } from "../plan.ts";
import type { PlanPlane } from "../plan-plane.ts";

/** A pipe that ends nearer to the line than this ends under its base, metres. Source: judgement. */
const UNDER_BASE_M = 2;

/** Chainages at which a line crosses a pipe, or the pipe ends under the line; rising, each place once. */
export function crossingsOf(path: readonly LonLat[], line: PlaneLine, plane: PlanPlane): number[] {
  const spots = path.map((at) => plane.toPlane(at));
  const found: number[] = [];
  for (let leg = 0; leg < line.legs; leg++) {
    const a = [line.xM[leg]!, line.yM[leg]!] as const;
    const b = [line.xM[leg + 1]!, line.yM[leg + 1]!] as const;
    const fromM = line.chainageM[leg]!;
    const lengthM = line.chainageM[leg + 1]! - fromM;
    for (let k = 0; k + 1 < spots.length; k++) {
      const share = shareAt(a, b, spots[k]!, spots[k + 1]!);
      if (share !== null) found.push(fromM + share * lengthM);
    }
    for (const end of [spots[0]!, spots.at(-1)!]) {
      const share = shareNear(a, b, end, UNDER_BASE_M);
      if (share !== null) found.push(fromM + share * lengthM);
    }
  }
  return once(found, line);
}

type Spot = readonly [number, number];

/** How far along a piece another crosses it, 0 to 1; null where it does not. */
function shareAt([ax, ay]: Spot, [bx, by]: Spot, [cx, cy]: Spot, [dx, dy]: Spot): number | null {
  const across = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx);
  if (across === 0) return null;
  const share = ((cx - ax) * (dy - cy) - (cy - ay) * (dx - cx)) / across;
  const other = ((cx - ax) * (by - ay) - (cy - ay) * (bx - ax)) / across;
  return share >= 0 && share <= 1 && other >= 0 && other <= 1 ? share : null;
}

/** How far along a piece its place nearest to a spot is, where that is near. */
function shareNear([ax, ay]: Spot, [bx, by]: Spot, [x, y]: Spot, nearM: number): number | null {
  const [dx, dy] = [bx - ax, by - ay];
  const lengthM2 = dx * dx + dy * dy;
  const raw = lengthM2 > 0 ? ((x - ax) * dx + (y - ay) * dy) / lengthM2 : 0;
  const share = Math.min(1, Math.max(0, raw));
  return Math.hypot(x - ax - share * dx, y - ay - share * dy) <= nearM ? share : null;
}

/** Places nearer to each other than the base is wide are one; a ring's end is its start. */
function once(chainagesM: readonly number[], line: PlaneLine): number[] {
  const kept: number[] = [];
  for (const chainageM of [...chainagesM].sort((a, b) => a - b)) {
    const place = placeAt(line, chainageM);
    const isNew = kept.every((other) => {
      const { xM, yM } = placeAt(line, other);
      return Math.hypot(place.xM - xM, place.yM - yM) > 2 * UNDER_BASE_M;
    });
    if (isNew) kept.push(chainageM);
  }
  return kept;
}
