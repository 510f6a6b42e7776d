import type { Check, Severity } from "../../../shared/sizing-types.ts";

/** A check drawn above the line: its stretch and its shape, in a row of its own where it would touch another. */
export interface CheckMark {
  readonly check: Check;
  readonly lane: number;
  /** Ends of the stretch and middle of the shape, pixels. */
  readonly fromPx: number;
  readonly toPx: number;
  readonly middlePx: number;
  /** Checks this mark's shape stands for, and of what severity: more than one where the rows ran out. */
  readonly count: number;
  readonly counts: Readonly<Partial<Record<Severity, number>>>;
  /** True when another mark's shape stands for it, and only its stretch is drawn. */
  readonly isJoined: boolean;
}

const RANK: Readonly<Record<Severity, number>> = { stop: 0, caution: 1, note: 2 };
/** Half the width a shape takes, pixels. */
const HALF_SHAPE_PX = 6;
/** Further width of a count beside it. */
export const COUNT_PX = 9;
const LOW_ROOM_PX = 170;

function hasStretch({ fromM, toM }: Check): boolean {
  return toM > 0 && toM >= fromM;
}

/** Rows of marks needed to tell them apart on the whole line, as far as there is room. */
export function markLanes(
  checks: readonly Check[],
  lengthM: number,
  widthPx: number,
  heightPx: number,
): number {
  const most = heightPx < LOW_ROOM_PX ? 1 : 2;
  const x = (chainageM: number) => (chainageM / Math.max(1, lengthM)) * widthPx;
  return checkMarks(checks, most, x, 0, widthPx).reduce(
    (rows, { lane }) => Math.max(rows, lane + 1),
    0,
  );
}

/**
 * Marks for the checks that speak of a stretch in view, the most severe placed first and drawn last. Where
 * rows run out a check joins the mark it would cover, whose shape then stands for both.
 */
export function checkMarks(
  checks: readonly Check[],
  lanes: number,
  x: (chainageM: number) => number,
  leftPx: number,
  rightPx: number,
): CheckMark[] {
  if (lanes === 0) return [];
  const marks: CheckMark[] = [];
  const ordered = checks
    .filter(hasStretch)
    .sort((a, b) => RANK[a.severity] - RANK[b.severity] || a.fromM - b.fromM);
  for (const check of ordered) {
    const fromPx = Math.max(leftPx, x(check.fromM));
    const toPx = Math.min(rightPx, x(check.toM));
    if (toPx < leftPx || fromPx > rightPx) continue;
    const mark = { check, lane: 0, fromPx, toPx, middlePx: (fromPx + toPx) / 2 };
    const counts = { [check.severity]: 1 };
    place(marks, { ...mark, count: 1, counts, isJoined: false }, lanes);
  }
  return marks.reverse();
}

function place(marks: CheckMark[], mark: CheckMark, lanes: number): void {
  const touching = marks.filter((each) => !each.isJoined && touches(each, mark));
  const free = Array.from({ length: lanes }, (_, lane) => lane).find(
    (lane) => !touching.some((each) => each.lane === lane),
  );
  if (free !== undefined) {
    marks.push({ ...mark, lane: free });
    return;
  }
  const host = touching.findLast((each) => each.lane === lanes - 1)!;
  const { severity } = mark.check;
  const counts = { ...host.counts, [severity]: (host.counts[severity] ?? 0) + 1 };
  marks[marks.indexOf(host)] = { ...host, count: host.count + 1, counts };
  marks.push({ ...mark, lane: lanes - 1, isJoined: true });
}

function touches(a: CheckMark, b: CheckMark): boolean {
  return reach(a)[0] < reach(b)[1] && reach(b)[0] < reach(a)[1];
}

function reach({ fromPx, toPx, middlePx, count }: CheckMark): [number, number] {
  const right = count > 1 ? HALF_SHAPE_PX + COUNT_PX : HALF_SHAPE_PX;
  return [Math.min(fromPx, middlePx - HALF_SHAPE_PX), Math.max(toPx, middlePx + right)];
}
