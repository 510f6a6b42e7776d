/**
 * The edges out of a lattice node. The price of edge k from u is
 * `end[k] (f[u] + f[u + step[k]]) + one[k] (f[u + a[k]] + f[u + b[k]]) + two[k] (f[u + c[k]] + f[u + d[k]])`:
 * Simpson's rule on the node prices along it (three-eighths for the long ones), so that a closed node that
 * the edge touches closes the edge.
 */
export interface Stencil {
  readonly count: number;
  /** Columns reached at most on either side of a node. */
  readonly reach: number;
  readonly step: Int32Array;
  readonly end: Float64Array;
  readonly one: Float64Array;
  readonly a: Int32Array;
  readonly b: Int32Array;
  readonly two: Float64Array;
  readonly c: Int32Array;
  readonly d: Int32Array;
}

interface Edge {
  readonly di: number;
  readonly dj: number;
  readonly end: number;
  readonly one: number;
  readonly two: number;
  readonly touched: readonly (readonly [number, number])[];
}

const AXIS: Edge = { di: 1, dj: 0, end: 1 / 2, one: 0, two: 0, touched: [] };
const DIAGONAL: Edge = {
  di: 1,
  dj: 1,
  end: Math.SQRT2 / 3,
  one: Math.SQRT2 / 6,
  two: 0,
  touched: [
    [1, 0],
    [0, 1],
  ],
};
const KNIGHT: Edge = {
  di: 2,
  dj: 1,
  end: Math.sqrt(5) / 6,
  one: Math.sqrt(5) / 3,
  two: 0,
  touched: [
    [1, 0],
    [1, 1],
  ],
};
const THREE_ONE: Edge = {
  di: 3,
  dj: 1,
  end: Math.sqrt(10) / 8,
  one: Math.sqrt(10) / 4,
  two: Math.sqrt(10) / 8,
  touched: [
    [1, 0],
    [2, 1],
    [1, 1],
    [2, 0],
  ],
};
const THREE_TWO: Edge = {
  di: 3,
  dj: 2,
  end: Math.sqrt(13) / 8,
  one: Math.sqrt(13) / 4,
  two: Math.sqrt(13) / 8,
  touched: [
    [1, 1],
    [2, 1],
    [1, 0],
    [2, 2],
  ],
};

const KINDS: Record<4 | 8 | 16 | 32, readonly Edge[]> = {
  4: [AXIS],
  8: [AXIS, DIAGONAL],
  16: [AXIS, DIAGONAL, KNIGHT],
  32: [AXIS, DIAGONAL, KNIGHT, THREE_ONE, THREE_TWO],
};

/** The stencil of 4, 8, 16 or 32 neighbours on a lattice of so many columns. */
export function stencilOf(neighbours: 4 | 8 | 16 | 32, columns: number): Stencil {
  const edges = KINDS[neighbours].flatMap(turned);
  const at = (edge: Edge, k: number) => {
    const touched = edge.touched[k];
    return touched ? touched[1] * columns + touched[0] : 0;
  };
  return {
    count: edges.length,
    reach: neighbours === 32 ? 3 : neighbours === 16 ? 2 : 1,
    step: Int32Array.from(edges, (each) => each.dj * columns + each.di),
    end: Float64Array.from(edges, (each) => each.end),
    one: Float64Array.from(edges, (each) => each.one),
    a: Int32Array.from(edges, (each) => at(each, 0)),
    b: Int32Array.from(edges, (each) => at(each, 1)),
    two: Float64Array.from(edges, (each) => each.two),
    c: Int32Array.from(edges, (each) => at(each, 2)),
    d: Int32Array.from(edges, (each) => at(each, 3)),
  };
}

/** All turns and mirrors of an edge, each once. */
function turned(edge: Edge): Edge[] {
  const found = new Map<string, Edge>();
  for (let turn = 0; turn < 8; turn++) {
    const move = ([i, j]: readonly [number, number]): [number, number] => {
      const [p, q] = turn & 4 ? [j, i] : [i, j];
      return [turn & 1 ? -p : p, turn & 2 ? -q : q];
    };
    const [di, dj] = move([edge.di, edge.dj]);
    found.set(`${di},${dj}`, { ...edge, di, dj, touched: edge.touched.map(move) });
  }
  return [...found.values()];
}
