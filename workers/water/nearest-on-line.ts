import type { PlaneLine } from "../../shared/alignment.ts";

/** The place of a line nearest to a point of the plan plane. */
export function nearestOnLine(
  line: PlaneLine,
  xM: number,
  yM: number,
): { chainageM: number; distanceM: number } {
  let chainageM = 0;
  let distanceM = Number.POSITIVE_INFINITY;
  for (let leg = 0; leg < line.legs; leg++) {
    const alongX = line.xM[leg + 1]! - line.xM[leg]!;
    const alongY = line.yM[leg + 1]! - line.yM[leg]!;
    const square = alongX * alongX + alongY * alongY;
    const towardX = xM - line.xM[leg]!;
    const towardY = yM - line.yM[leg]!;
    const raw = square > 0 ? (towardX * alongX + towardY * alongY) / square : 0;
    const share = Math.min(1, Math.max(0, raw));
    const off = Math.hypot(towardX - share * alongX, towardY - share * alongY);
    if (off >= distanceM) continue;
    distanceM = off;
    chainageM = line.chainageM[leg]! + share * Math.sqrt(square);
  }
  return { chainageM, distanceM };
}
