import { carriedBreaks } from "./carry-breaks.ts";
import type { Alignment, Closure, LonLat } from "./plan.ts";

/** The corners of a line that are pinned, by index; those past its end are left out. */
export function pinsOf({ corners, pinned }: Alignment): readonly number[] {
  return (pinned ?? []).filter((index) => index < corners.length);
}

/** The alignment with a corner pinned, or no longer pinned. */
export function withPin(alignment: Alignment, index: number, pinned: boolean): Alignment {
  const others = pinsOf(alignment).filter((each) => each !== index);
  return pinnedAt(alignment, pinned ? [...others, index] : others);
}

/**
 * The alignment with other corners, its reaches kept where they were meant, and its pins on the corners they
 * were on: a moved corner keeps its pin, corners put in or taken out shift the pins behind them, a corner
 * taken out takes its pin along.
 */
export function withCorners(alignment: Alignment, corners: readonly LonLat[]): Alignment {
  const before = alignment.corners;
  const changed = {
    ...alignment,
    ...{ corners, reachBreaksM: carriedBreaks(alignment, corners) },
    ...carriedClosures(alignment, corners),
  };
  const pins = pinsOf(alignment);
  if (pins.length === 0 || corners.length === before.length) return changed;
  const head = sameFrom(before, corners, (list, k) => list[k]);
  const tail = sameFrom(before, corners, (list, k) => list[list.length - 1 - k]);
  const by = corners.length - before.length;
  const kept = pins.flatMap((index) => {
    if (index < head) return [index];
    return index >= before.length - tail ? [index + by] : [];
  });
  return pinnedAt(changed, kept);
}

/** Closures stay where they were meant, as reach breaks do. */
function carriedClosures(
  alignment: Alignment,
  corners: readonly LonLat[],
): { readonly closures?: readonly Closure[] } {
  const { closures } = alignment;
  if (!closures) return {};
  const reachBreaksM = closures.flatMap(({ fromM, toM }) => [fromM, toM]);
  const carried = carriedBreaks({ ...alignment, reachBreaksM }, corners);
  return {
    closures: closures.map((each, k) => ({
      ...{ ...each, fromM: carried[2 * k]!, toM: carried[2 * k + 1]! },
    })),
  };
}

function pinnedAt({ pinned: _, ...bare }: Alignment, indices: readonly number[]): Alignment {
  if (indices.length === 0) return bare;
  return { ...bare, pinned: [...new Set(indices)].sort((a, b) => a - b) };
}

type Pick = (list: readonly LonLat[], k: number) => LonLat | undefined;

/** How many corners two lists share, counted from the end that `pick` counts from; never all of the shorter twice. */
function sameFrom(before: readonly LonLat[], after: readonly LonLat[], pick: Pick): number {
  const shorter = Math.min(before.length, after.length);
  let count = 0;
  while (count < shorter && same(pick(before, count), pick(after, count))) count++;
  return count;
}

function same(a: LonLat | undefined, b: LonLat | undefined): boolean {
  return a !== undefined && b !== undefined && a[0] === b[0] && a[1] === b[1];
}
