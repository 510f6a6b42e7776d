import type { LoopSpace } from "./loop-space.ts";

const SIDE_BITS = 3;

/**
 * Whether the lattice holds any ring that crosses the ray an odd number of times, at whatever price: nodes
 * are labelled with the parity of crossings from a start, and an edge between labels that disagree closes
 * such a ring. Asked before a limit is raised, so that no search looks for what is not there.
 */
export function anyOddLoop(space: LoopSpace): boolean {
  const { price, tag, stencil, starts } = space;
  const { count: edges, step, one, a, b, two, c, d } = stencil;
  const label = new Int8Array(price.length);
  const waiting: number[] = [];
  const open = (u: number, k: number) => {
    let sum = price[u + step[k]!]! + one[k]! * (price[u + a[k]!]! + price[u + b[k]!]!);
    if (edges > 16) sum += two[k]! * (price[u + c[k]!]! + price[u + d[k]!]!);
    return sum < Infinity;
  };
  for (const start of starts) {
    if (label[start] !== 0 || !(price[start]! < Infinity)) continue;
    label[start] = 1;
    waiting.push(start);
    while (waiting.length > 0) {
      const u = waiting.pop()!;
      for (let k = 0; k < edges; k++) {
        const v = u + step[k]!;
        if (!open(u, k)) continue;
        const crosses = ((tag[u]! | tag[v]!) & SIDE_BITS) === 3;
        const wanted = crosses ? -label[u]! : label[u]!;
        if (label[v] === 0) {
          label[v] = wanted;
          waiting.push(v);
        } else if (label[v] !== wanted) return true;
      }
    }
  }
  return false;
}
