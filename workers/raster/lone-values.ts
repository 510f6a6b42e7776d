import type { Extreme, Extremes } from "./extremes.ts";

/** Heights that are taken for ground: what lies far outside may be missing data. */
export interface GroundRange {
  readonly lowestM: number;
  readonly highestM: number;
}

/** A height at one end that no other comes near. */
interface Lone extends Extreme {
  readonly side: "below" | "above";
  /** Distance to the next height that is not one of them, metres. */
  readonly gapM: number;
}

export interface LoneValues {
  /** Those held by two cells or more, or far off. */
  readonly found: readonly Lone[];
  /** All heights between those that stand apart. */
  readonly rest: GroundRange;
}

/** At most so many different marks stand at one end. */
const MOST_MARKS = 3;
/** The gap is at least so many times the distance between the heights that follow it. */
const OVER_SPACING = 3;
/** One cell alone is asked about only so far from all others, metres. */
const ONE_CELL_GAP_M = 30;

/**
 * Least gap before a height, metres: what may lie between water made flat, or a roof, and the next height is
 * less; below a number that is known to be used as a mark, less is enough. Common practice, no source.
 */
const LEAST_GAP_M = {
  below: { mark: 1, other: 3 },
  above: { mark: 3, other: 10 },
} as const;

/** Numbers in use as marks: 0, nines, round negatives, limits of the cells' types. Common practice, no source. */
function isUsualMark(value: number): boolean {
  if (value === 0 || /^-?9+$/.test(String(value)) || /^-(1|5)0+$/.test(String(value))) return true;
  return [-1, 255, 32_767, -32_767, 32_768, -32_768, 65_535].includes(value);
}

/**
 * Heights that stand apart at either end of those looked at. Flat water does not, because its banks are near
 * it in height, nor does a raster of steps, because its other heights are as far from each other.
 * @param known ground seen elsewhere, which such a height must be apart from as well; null = none
 * @param writtenAs a height as the raster has it, in its own unit
 */
export function loneValues(
  { low, high }: Extremes,
  known: GroundRange | null,
  writtenAs: (heightM: number) => number,
): LoneValues {
  const [below, above] = oneSided(
    atEnd(low, "below", known, writtenAs),
    atEnd(high, "above", known, writtenAs),
    low.length,
    writtenAs,
  );
  const rest = {
    lowestM: low[below.length]?.heightM ?? Infinity,
    highestM: high[above.length]?.heightM ?? -Infinity,
  };
  const found = [...below, ...above].filter(
    ({ cells, gapM }) => cells > 1 || gapM >= ONE_CELL_GAP_M,
  );
  return { found, rest };
}

/**
 * Of two heights each stands apart from the other: where no height is left between both ends, one of them is
 * the ground. The mark is the usual one, or else what fewer cells hold.
 */
function oneSided(
  below: readonly Lone[],
  above: readonly Lone[],
  different: number,
  writtenAs: (heightM: number) => number,
): [readonly Lone[], readonly Lone[]] {
  if (above.length === 0 || below.length + above.length < different) return [below, above];
  const isUsual = (ends: readonly Lone[]) =>
    ends.some(({ heightM }) => isUsualMark(writtenAs(heightM)));
  const cellsOf = (ends: readonly Lone[]) => ends.reduce((sum, { cells }) => sum + cells, 0);
  const isBelow =
    isUsual(below) === isUsual(above) ? cellsOf(below) <= cellsOf(above) : isUsual(below);
  return isBelow ? [below, []] : [[], above];
}

function atEnd(
  list: readonly Extreme[],
  side: Lone["side"],
  known: GroundRange | null,
  writtenAs: (heightM: number) => number,
): Lone[] {
  const sense = side === "below" ? 1 : -1;
  const knownM = known && (side === "below" ? known.lowestM : known.highestM);
  for (let count = Math.min(MOST_MARKS, list.length); count > 0; count--) {
    const marks = list.slice(0, count);
    const following = list.slice(count).map(({ heightM }) => heightM);
    const nearest = [following[0], knownM ?? undefined].filter((each) => each !== undefined);
    if (nearest.length === 0) continue;
    const gapM = Math.min(...nearest.map((each) => sense * (each - marks.at(-1)!.heightM)));
    const kind = marks.some(({ heightM }) => isUsualMark(writtenAs(heightM))) ? "mark" : "other";
    const spacingM = Math.max(
      0,
      ...following.slice(1).map((each, i) => sense * (each - following[i]!)),
    );
    if (gapM < LEAST_GAP_M[side][kind] || gapM < OVER_SPACING * spacingM) continue;
    const nextM = sense === 1 ? Math.min(...nearest) : Math.max(...nearest);
    return marks.map((each) => ({ ...each, side, gapM: Math.abs(nextM - each.heightM) }));
  }
  return [];
}
