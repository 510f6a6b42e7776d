/** One level line in grid coordinates (column, row; cell centres at whole numbers), interleaved. */
export type Isoline = readonly number[];

/**
 * Lines of equal height through a grid by marching squares, joined into polylines; a closed line repeats
 * its first point. A square with a corner without data is not crossed, so that no line runs along a hole
 * or along the edge of the grid. Own code because the libraries at hand answer another question:
 * `d3-contour` closes areas round the grid's edge and treats NaN as low ground, and `@turf/isolines` wants
 * one feature for each grid point (it is the oracle in the tests).
 * @param heightM columns x rows heights, row by row, NaN where there is no data
 */
export function isolines(
  heightM: Float32Array,
  columns: number,
  rows: number,
  levelM: number,
): Isoline[] {
  return join(crossings(heightM, columns, rows, levelM), heightM, columns, levelM);
}

/**
 * Edges of the grid that a level crosses, each with its one or two neighbours along the line.
 * Edge `2 k` runs from grid point k to the east, `2 k + 1` from grid point k to the south.
 */
type Links = Map<number, number[]>;

/** Pairs of sides (0 north, 1 east, 2 south, 3 west) joined in a square, by which corners are high. */
const JOINED: readonly (readonly (readonly [number, number])[])[] = [
  [],
  [[3, 0]],
  [[0, 1]],
  [[3, 1]],
  [[1, 2]],
  [],
  [[0, 2]],
  [[3, 2]],
  [[2, 3]],
  [[2, 0]],
  [],
  [[2, 1]],
  [[1, 3]],
  [[1, 0]],
  [[0, 3]],
  [],
];
/** The two ways through a saddle: round the north west and south east corners, or round the other two. */
const ROUND_NW_SE = [
  [3, 0],
  [1, 2],
] as const;
const ROUND_NE_SW = [
  [0, 1],
  [2, 3],
] as const;

function crossings(heightM: Float32Array, columns: number, rows: number, levelM: number): Links {
  const links: Links = new Map();
  for (let row = 0; row < rows - 1; row++) {
    for (let column = 0; column < columns - 1; column++) {
      const k = row * columns + column;
      const nw = heightM[k]!;
      const ne = heightM[k + 1]!;
      const sw = heightM[k + columns]!;
      const se = heightM[k + columns + 1]!;
      const high =
        (nw >= levelM ? 1 : 0) |
        (ne >= levelM ? 2 : 0) |
        (se >= levelM ? 4 : 0) |
        (sw >= levelM ? 8 : 0);
      const sum = nw + ne + sw + se;
      if (high === 0 || high === 15 || Number.isNaN(sum)) continue;
      for (const [from, to] of waysThrough(high, sum / 4 >= levelM)) {
        link(links, sideEdge(k, columns, from), sideEdge(k, columns, to));
      }
    }
  }
  return links;
}

function waysThrough(high: number, middleHigh: boolean): readonly (readonly [number, number])[] {
  if (high === 5) return middleHigh ? ROUND_NE_SW : ROUND_NW_SE;
  if (high === 10) return middleHigh ? ROUND_NW_SE : ROUND_NE_SW;
  return JOINED[high]!;
}

function sideEdge(k: number, columns: number, side: number): number {
  if (side === 0) return 2 * k;
  if (side === 1) return 2 * (k + 1) + 1;
  if (side === 2) return 2 * (k + columns);
  return 2 * k + 1;
}

function link(links: Links, a: number, b: number): void {
  const ofA = links.get(a);
  if (ofA) ofA.push(b);
  else links.set(a, [b]);
  const ofB = links.get(b);
  if (ofB) ofB.push(a);
  else links.set(b, [a]);
}

function join(links: Links, heightM: Float32Array, columns: number, levelM: number): Isoline[] {
  const lines: Isoline[] = [];
  const trace = (start: number): void => {
    const points: number[] = [];
    let previous = -1;
    let edge: number | undefined = start;
    while (edge !== undefined) {
      addCrossing(points, heightM, columns, levelM, edge);
      const neighbours: number[] = links.get(edge) ?? [];
      links.delete(edge);
      const next: number | undefined = neighbours.find(
        (each) => each !== previous && links.has(each),
      );
      const closes =
        next === undefined && edge !== start && previous !== start && neighbours.includes(start);
      if (closes) points.push(points[0]!, points[1]!);
      previous = edge;
      edge = next;
    }
    if (points.length >= 4) lines.push(points);
  };
  for (const [edge, neighbours] of [...links]) {
    if (neighbours.length === 1 && links.has(edge)) trace(edge);
  }
  for (const edge of [...links.keys()]) {
    if (links.has(edge)) trace(edge);
  }
  return lines;
}

function addCrossing(
  points: number[],
  heightM: Float32Array,
  columns: number,
  levelM: number,
  edge: number,
): void {
  const k = edge >> 1;
  const southward = edge & 1;
  const from = heightM[k]!;
  const to = heightM[southward ? k + columns : k + 1]!;
  const share = (levelM - from) / (to - from);
  const column = (k % columns) + (southward ? 0 : share);
  const row = Math.floor(k / columns) + (southward ? share : 0);
  const last = points.length - 2;
  if (last >= 0 && points[last] === column && points[last + 1] === row) return;
  points.push(column, row);
}
