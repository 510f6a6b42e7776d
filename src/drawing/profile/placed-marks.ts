import type { Walk } from "../../../shared/sizing-types.ts";
import type { Box } from "../place-labels.ts";
import type { LineMark } from "./line-marks.ts";
import { nearestSample } from "./picked-samples.ts";
import type { ProfileFrame } from "./profile-frame.ts";
import { drawnGroundM } from "./profile-paths.ts";

/** A mark where it stands on the picture. */
export interface PlacedMark extends LineMark {
  readonly x: number;
  readonly y: number;
  /** What it covers. */
  readonly box: Box;
}

export const MARK_RADIUS_PX = 6.5;
/** A diamond under the ground, its point at the top. */
export const DIAMOND_PX = { half: 4.5, high: 9 };

/** The marks in view that touch none placed before them. */
export function placedMarks(
  marks: readonly LineMark[],
  walk: Walk,
  frame: ProfileFrame,
): readonly PlacedMark[] {
  const { fromM, toM } = frame.stretch;
  const placed: PlacedMark[] = [];
  for (const mark of marks) {
    if (mark.chainageM < fromM - 1e-6 || mark.chainageM > toM + 1e-6) continue;
    const next = place(mark, walk, frame);
    if (next && !placed.some(({ box }) => touch(box, next.box))) placed.push(next);
  }
  return placed;
}

function place(mark: LineMark, walk: Walk, frame: ProfileFrame): PlacedMark | null {
  const { plot } = frame;
  const index = nearestSample(walk.chainageM, mark.chainageM);
  if (index < 0) return null;
  const x = frame.x(mark.chainageM);
  const levelM = { over: walk.crestM, "way-in": walk.waterM }[mark.kind as string];
  const at = frame.y(levelM ? levelM[index]! : drawnGroundM(walk, index));
  if (mark.kind === "weakest" || mark.kind === "survey" || mark.kind === "reading") {
    const { half, high } = DIAMOND_PX;
    const y = Math.min(
      plot.bottom - high - 1,
      Math.max(plot.top, Number.isNaN(at) ? plot.bottom : at),
    );
    return { ...mark, x, y, box: { left: x - half, right: x + half, top: y, bottom: y + high } };
  }
  const r = MARK_RADIUS_PX;
  const y = Math.min(plot.bottom - r, Math.max(plot.top + r, at));
  return { ...mark, x, y, box: { left: x - r, right: x + r, top: y - r, bottom: y + r } };
}

function touch(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}
