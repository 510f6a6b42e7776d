/** A place in a grid, counted in cell centres. */
export type GridSpot = readonly [column: number, row: number];

/**
 * Every cell that a straight piece goes through, in order, each sharing a side with the one before: water
 * that moves corner to corner finds no gap in them. Through a corner of four cells it goes by way of one of
 * the two others. A piece with an end nowhere on the grid's map (not finite) has no cells.
 * @param visit column, row, and how far along the piece the cell is entered, 0 to 1
 */
export function cellsAlong(
  [fromColumn, fromRow]: GridSpot,
  [toColumn, toRow]: GridSpot,
  visit: (column: number, row: number, share: number) => void,
): void {
  const x = fromColumn + 0.5;
  const y = fromRow + 0.5;
  const dx = toColumn - fromColumn;
  const dy = toRow - fromRow;
  let column = Math.floor(x);
  let row = Math.floor(y);
  const lastColumn = Math.floor(toColumn + 0.5);
  const lastRow = Math.floor(toRow + 0.5);
  if (!Number.isFinite(dx + dy + x + y)) return;
  const stepColumn = Math.sign(lastColumn - column);
  const stepRow = Math.sign(lastRow - row);
  // Share of the piece at the next side across each axis.
  const nextX = () => (column + (stepColumn > 0 ? 1 : 0) - x) / dx;
  const nextY = () => (row + (stepRow > 0 ? 1 : 0) - y) / dy;
  visit(column, row, 0);
  while (column !== lastColumn || row !== lastRow) {
    const acrossX = column === lastColumn ? Number.POSITIVE_INFINITY : nextX();
    const acrossY = row === lastRow ? Number.POSITIVE_INFINITY : nextY();
    if (acrossX < acrossY) column += stepColumn;
    else row += stepRow;
    visit(column, row, Math.min(1, Math.max(0, Math.min(acrossX, acrossY))));
  }
}
