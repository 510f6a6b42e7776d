/** Heights of rows in a list, one after the other, CSS pixels. */
export interface RowHeights {
  /** Where each row starts; one more than there are rows, the last is the height of all. */
  readonly tops: readonly number[];
}

export function rowHeights(heights: readonly number[]): RowHeights {
  const tops = [0];
  for (const height of heights) tops.push(tops.at(-1)! + height);
  return { tops };
}

/** Rows drawn beyond the edges, so that a quick scroll shows no gap. */
const BEYOND = 8;

/** The rows from `first` to before `end` that are in sight, and some beyond. */
export function rowsInSight(
  { tops }: RowHeights,
  fromPx: number,
  heightPx: number,
): { readonly first: number; readonly end: number } {
  const count = tops.length - 1;
  const first = Math.max(0, lastAtOrBefore(tops, fromPx) - BEYOND);
  const end = Math.min(count, lastAtOrBefore(tops, fromPx + heightPx) + 1 + BEYOND);
  return { first, end };
}

/** Index of the last top that is not below a place. */
function lastAtOrBefore(tops: readonly number[], placePx: number): number {
  let [low, high] = [0, tops.length - 1];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (tops[middle]! <= placePx) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** How far a list must be scrolled so that a row is in sight; as it is where it is already. */
export function scrolledTo(
  { tops }: RowHeights,
  index: number,
  { scrollTop, heightPx }: { readonly scrollTop: number; readonly heightPx: number },
): number {
  const [top, bottom] = [tops[index]!, tops[index + 1]!];
  if (top < scrollTop) return top;
  return bottom > scrollTop + heightPx ? bottom - heightPx : scrollTop;
}
