/**
 * How good a part of `count` places from `first` on is for one crew, the more the better; NaN where no crew can be
 * given it. On a ring a part runs on past the last place.
 */
export type PartScore = (first: number, count: number) => number;

/** Places in a row, or in a ring, that crews are to share. */
export interface Places {
  readonly count: number;
  readonly isRing: boolean;
}

/** How places are divided. */
export interface Cuts {
  /** First place of each part, rising. */
  readonly starts: readonly number[];
  /** The least of each score over the parts. */
  readonly least: readonly number[];
}

/** Scores that differ by less are the same. */
const SAME = 1e-9;

/**
 * Divides places among crews, each a run of its own, so that the least score is as great as can be; among such
 * divisions by the next score, and so on. Every division is compared; of equals the first is taken.
 * @returns null where they cannot be divided among so many
 */
export function bestCuts(places: Places, crews: number, scores: readonly PartScore[]): Cuts | null {
  const { count } = places;
  const table = new Float64Array(count * (count + 1));
  const least: number[] = [];
  let found: Division | null = null;
  for (const [level, score] of scores.entries()) {
    for (let first = 0; first < count; first++) {
      const most = mostFrom(places, first);
      for (let size = 1; size <= most; size++) {
        const at = first * (count + 1) + size;
        const isOut = level > 0 && !(table[at]! >= found!.least - SAME);
        table[at] = isOut ? Number.NaN : score(first, size);
      }
    }
    found = divide(places, crews, table);
    if (!found) return null;
    least.push(found.least);
  }
  return found && { starts: found.starts, least };
}

interface Division {
  readonly least: number;
  readonly starts: readonly number[];
}

/** Most places that a part from `first` on can have. */
function mostFrom({ count, isRing }: Places, first: number): number {
  return isRing ? count : count - first;
}

/** The division with the greatest least score, from a table with a row of `count + 1` scores for each first place. */
function divide(places: Places, crews: number, table: Float64Array): Division | null {
  const { count, isRing } = places;
  let found: Division | null = null;
  for (let start = 0; start < (isRing && crews > 1 ? count : 1); start++) {
    const better = divideFrom(start, count, crews, table, found?.least ?? Number.NaN);
    if (better) found = better;
  }
  return found;
}

/** The best division whose first part begins at `start`; null where none is better than `atLeast`. */
function divideFrom(
  start: number,
  count: number,
  crews: number,
  table: Float64Array,
  atLeast: number,
): Division | null {
  let before = new Float64Array(count + 1).fill(Number.NaN);
  before[start] = Number.POSITIVE_INFINITY;
  const from: Int32Array[] = [];
  for (let crew = 1; crew <= crews; crew++) {
    const isLast = crew === crews;
    const least = new Float64Array(count + 1).fill(Number.NaN);
    const cameFrom = new Int32Array(count + 1);
    for (let end = isLast ? count : start + crew; end <= (isLast ? count : count - 1); end++) {
      for (let middle = start + crew - 1; middle < end; middle++) {
        const size = (isLast ? start + count : end) - middle;
        const here = Math.min(before[middle]!, table[middle * (count + 1) + size]!);
        if (here > least[end]! || (Number.isNaN(least[end]!) && !Number.isNaN(here))) {
          least[end] = here;
          cameFrom[end] = middle;
        }
      }
    }
    before = least;
    from.push(cameFrom);
  }
  const least = before[count]!;
  if (Number.isNaN(least) || least <= atLeast) return null;
  const starts: number[] = [];
  let end = count;
  for (const cameFrom of from.reverse()) {
    end = cameFrom[end]!;
    starts.unshift(end);
  }
  return { least, starts };
}
