/** What one piece of a sheet takes: what stands around its rows, and each row; a piece without rows is all `around`. */
export interface Measured {
  readonly aroundPx: number;
  readonly rowsPx: readonly number[];
}

/** A piece on one page: its rows `from` up to before `to`; both 0 of a piece without rows. */
export interface Placed {
  readonly piece: number;
  readonly from: number;
  readonly to: number;
}

/** Rows that stay together where a piece begins or goes on, if it has so many. */
const TOGETHER = 2;

/** Puts pieces on pages, in order; rows go on over pages. What is higher than a page has one of its own. */
export function paginate(pieces: readonly Measured[], roomPx: number): Placed[][] {
  const pages: Placed[][] = [[]];
  let leftPx = roomPx;
  const turn = () => {
    if (pages.at(-1)!.length === 0) return;
    pages.push([]);
    leftPx = roomPx;
  };
  pieces.forEach(({ aroundPx, rowsPx }, piece) => {
    let from = 0;
    do {
      const startPx = aroundPx + sum(rowsPx.slice(from, from + TOGETHER));
      if (startPx > leftPx) turn();
      const to = from + fitting(rowsPx, from, leftPx - aroundPx);
      pages.at(-1)!.push({ piece, from, to });
      leftPx -= aroundPx + sum(rowsPx.slice(from, to));
      from = to;
      if (from < rowsPx.length) turn();
    } while (from < rowsPx.length);
  });
  return pages;
}

/** How many rows fit, one at least where there is one; the last of all does not stand alone on the next page. */
function fitting(rowsPx: readonly number[], from: number, roomPx: number): number {
  let count = 0;
  let usedPx = 0;
  for (const px of rowsPx.slice(from)) {
    if (count > 0 && usedPx + px > roomPx) break;
    usedPx += px;
    count += 1;
  }
  const isLastAlone = from + count === rowsPx.length - 1;
  return isLastAlone && count > TOGETHER ? count - 1 : count;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
