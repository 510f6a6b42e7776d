import { type CellWindow, contains, MOST_CELLS } from "./window.ts";

/** Windows held, however small: those of one line, and of a few asked before. A check of a county asks for thousands. */
export const MOST_WINDOWS = 12;

/**
 * A read that holds what it has read: a window inside one read, or being read, waits for that. The windows used last
 * are held, at most 64 million cells of them. A read that fails is forgotten.
 */
export function heldWindows<Cells>(
  read: (window: CellWindow) => Promise<Cells>,
): (window: CellWindow) => Promise<Cells> {
  interface Held {
    readonly window: CellWindow;
    readonly cells: Promise<Cells>;
  }
  let held: Held[] = [];
  return (window) => {
    const known = held.find((each) => contains(each.window, window));
    if (known) {
      held = [known, ...held.filter((each) => each !== known)];
      return known.cells;
    }
    const fresh: Held = { window, cells: read(window) };
    fresh.cells.catch(() => {
      held = held.filter((each) => each !== fresh);
    });
    held = withinBudget([fresh, ...held]);
    return fresh.cells;
  };
}

function withinBudget<H extends { readonly window: CellWindow }>(held: readonly H[]): H[] {
  let cells = 0;
  return held.slice(0, MOST_WINDOWS).filter(({ window }, i) => {
    cells += window.columns * window.rows;
    return i === 0 || cells <= MOST_CELLS;
  });
}
