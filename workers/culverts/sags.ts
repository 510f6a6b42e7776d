import { append, intList } from "../water/int-list.ts";
import { neighbourSteps } from "../water/water-grid.ts";
import type { FramedHeights } from "./filled-levels.ts";

/** Ground that would fill with water to one level before any leaves it. */
export interface Sag {
  readonly cells: Int32Array;
  readonly bottomM: number;
  /** Level at which water leaves it. */
  readonly spillM: number;
}

/** Sags of a grid, and of each cell which one it is in: its place in the list and 1, 0 for none. */
export interface Sags {
  readonly sags: readonly Sag[];
  readonly sagOf: Int32Array;
}

/** Every sag that is deeper than `depthM`, by its first cell from the north-west; @param levels of {@link filledLevels} */
export function sagsOf(
  { heightM, width }: FramedHeights,
  levels: Float32Array,
  depthM: number,
): Sags {
  const steps = neighbourSteps(width);
  const sagOf = new Int32Array(heightM.length);
  const seen = new Uint8Array(heightM.length);
  const sags: Sag[] = [];
  for (let start = 0; start < heightM.length; start++) {
    if (seen[start] || !(levels[start]! > heightM[start]!)) continue;
    const found = intList(16);
    seen[start] = 1;
    append(found, start);
    let bottomM = heightM[start]!;
    for (let k = 0; k < found.length; k++) {
      const cell = found.values[k]!;
      bottomM = Math.min(bottomM, heightM[cell]!);
      for (let s = 0; s < 8; s++) {
        const next = cell + steps[s]!;
        if (seen[next] || !(levels[next]! > heightM[next]!)) continue;
        seen[next] = 1;
        append(found, next);
      }
    }
    const spillM = levels[start]!;
    if (spillM - bottomM < depthM) continue;
    const cells = found.values.slice(0, found.length);
    sags.push({ cells, bottomM, spillM });
    for (const cell of cells) sagOf[cell] = sags.length;
  }
  return { sags, sagOf };
}
