import { append, intList } from "./int-list.ts";
import { neighbourSteps, type WaterCells, type WaterGrid } from "./water-grid.ts";

const UNSEEN = 0;
const TARGET = 9;

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
  const came = new Uint8Array(heightM.length);
  const queue = intList();
  for (let k = 0; k < targets.length; k++) {
    const cell = targets[k]!;
    if (heightM[cell]! > levelM || came[cell] !== UNSEEN) continue;
    came[cell] = TARGET;
    if (sources.has(cell)) return [cell];
    append(queue, cell);
  }
  for (let head = 0; head < queue.length; head++) {
    const cell = queue.values[head]!;
    for (let s = 0; s < 8; s++) {
      const next = cell + steps[s]!;
      if (came[next] !== UNSEEN || heightM[next]! > levelM) continue;
      if (from.edge && heightM[next] === Number.NEGATIVE_INFINITY)
        return wayBack(came, steps, cell);
      came[next] = s + 1;
      if (sources.has(next)) return wayBack(came, steps, next);
      append(queue, next);
    }
  }
  return [];
}

function wayBack(came: Uint8Array, steps: Int32Array, source: number): number[] {
  const path = [source];
  for (let cell = source; came[cell] !== TARGET; ) {
    cell -= steps[came[cell]! - 1]!;
    path.push(cell);
  }
  return path;
}
