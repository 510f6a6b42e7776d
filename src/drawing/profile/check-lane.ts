import type { Severity } from "../../../shared/sizing-types.ts";
import { severityCount } from "../../../shared/words/severity.ts";
import { textWidth } from "../text-width.ts";
import type { CheckMark } from "./profile-marks.ts";

/** Between a mark's shape and its words, and before the next mark, pixels. */
const FROM_SHAPE_PX = 12;
const CLEAR_PX = 8;
const TYPE_PX = 12;
/** Notes are marked without words. */
const SEVERITIES = ["stop", "caution"] as const;

/** A mark's words on the lane of the checks, each severity a part of its own; they begin at `x`. */
export interface MarkWords {
  readonly x: number;
  readonly parts: readonly { readonly severity: Severity; readonly text: string }[];
}

/** What a mark stands for ("1 Must fix, 4 cautions"), where it fits before the next mark; else null. */
export function wordsBeside(
  mark: CheckMark,
  marks: readonly CheckMark[],
  rightPx: number,
): MarkWords | null {
  if (mark.isJoined) return null;
  const parts = SEVERITIES.flatMap((severity) => {
    const n = mark.counts[severity] ?? 0;
    return n > 0 ? [{ severity, text: severityCount(severity, n) }] : [];
  });
  if (parts.length === 0) return null;
  const x = mark.middlePx + FROM_SHAPE_PX;
  const end = x + textWidth(parts.map(({ text }) => text).join(", "), TYPE_PX) + CLEAR_PX;
  const others = marks.filter((each) => each !== mark && each.toPx > x);
  const isFree = others.every(({ fromPx, isJoined }) => fromPx >= end || isJoined);
  return isFree && end <= rightPx ? { x, parts } : null;
}
