import { append, intList } from "./int-list.ts";
import {
  acrossLink,
  linksByCell,
  neighbourSteps,
  type WaterCells,
  type WaterGrid,
} from "./water-grid.ts";

const UNSEEN = 0;
const TARGET = 9;
const PIPE = 10;

/**
 * The shortest way of water, in cells, from a source to a place, over no cell higher than `levelM`: cells
 * from the source to the place. Empty when there is none. Run it on the grid in the state that gave the level.
 */
export function wayIn(
  grid: WaterGrid,
  from: WaterCells,
  targets: ArrayLike<number>,
  levelM: number,
): number[] {
  const { heightM, width } = grid;
  const steps = neighbourSteps(width);
  const sources = new Set(from.cells);
  const linked = linksByCell(from);
  const throughPipe = new Map<number, number>();
  const came = new Uint8Array(heightM.length);
  const queue = intList();
  const isOutside = (cell: number) =>
    sources.has(cell) || (from.edge && heightM[cell] === Number.NEGATIVE_INFINITY);
  const wayBack = (source: number) => {
    const path = [source];
    for (let cell = source; came[cell] !== TARGET; ) {
      cell = came[cell] === PIPE ? throughPipe.get(cell)! : cell - steps[came[cell]! - 1]!;
      path.push(cell);
    }
    return path;
  };
  for (let k = 0; k < targets.length; k++) {
    const cell = targets[k]!;
    if (heightM[cell]! > levelM || came[cell] !== UNSEEN) continue;
    came[cell] = TARGET;
    if (sources.has(cell)) return [cell];
    append(queue, cell);
  }
  for (let head = 0; head < queue.length; head++) {
    const cell = queue.values[head]!;
    const links = linked?.get(cell);
    for (let k = 0; links && k < links.length; k++) {
      const next = acrossLink(links[k]!, cell);
      const isOver = links[k]!.levelM > levelM || heightM[next]! > levelM;
      if (came[next] !== UNSEEN || isOver) continue;
      came[next] = PIPE;
      throughPipe.set(next, cell);
      if (isOutside(next)) return wayBack(next);
      append(queue, next);
    }
    for (let s = 0; s < 8; s++) {
      const next = cell + steps[s]!;
      if (came[next] !== UNSEEN || heightM[next]! > levelM) continue;
      if (from.edge && heightM[next] === Number.NEGATIVE_INFINITY) return wayBack(cell);
      came[next] = s + 1;
      if (sources.has(next)) return wayBack(next);
      append(queue, next);
    }
  }
  return [];
}

/** The pipes that a way goes through, in its order, each with the cell at which water comes out of it. */
export function pipesOnWay(
  { links = [] }: WaterCells,
  cells: readonly number[],
): { readonly pipeId: string; readonly outAt: number }[] {
  return cells.slice(1).flatMap((cell, i) => {
    const before = cells[i]!;
    const link = links.find(
      ({ a, b }) => (a === before && b === cell) || (b === before && a === cell),
    );
    return link ? [{ pipeId: link.pipeId, outAt: cell }] : [];
  });
}
