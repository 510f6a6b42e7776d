import Graph from "graphology";
import { describe, expect, it } from "vitest";
import { LOW, WATER } from "../../shared/water-types.ts";
import { connectedWater } from "../../workers/water/connected-water.ts";
import { sillSearch } from "../../workers/water/sill-search.ts";
import {
  cellIndex,
  type Link,
  neighbourSteps,
  setEdge,
  type WaterCells,
  type WaterGrid,
} from "../../workers/water/water-grid.ts";
import { pipesOnWay, wayIn } from "../../workers/water/way-in.ts";
import { seededRandom } from "../helpers/seeded-random.ts";
import { gridFrom } from "../helpers/water-grids.ts";

/*
 * Connected water with pipes against a graph library (graphology 0.26): cells below the level are nodes, neighbours
 * that are both there are joined, and so are the ends of a pipe whose level is passed. What a walk over that graph
 * reaches from the sources must be the connected water; the lowest level at which it reaches a place, its sill.
 */
const COLUMNS = 11;
const ROWS = 9;
const LEVELS = 12;

function graphAt(grid: WaterGrid, { links = [] }: WaterCells, levelM: number): Graph {
  const graph = new Graph({ type: "undirected", multi: false });
  const { heightM, width } = grid;
  for (const [cell, height] of heightM.entries()) if (height < levelM) graph.addNode(cell);
  for (const node of graph.nodes()) {
    for (const step of neighbourSteps(width)) {
      const next = Number(node) + step;
      if (graph.hasNode(next)) graph.mergeEdge(node, next);
    }
  }
  for (const { a, b, levelM: passes } of links) {
    if (passes < levelM && graph.hasNode(a) && graph.hasNode(b)) graph.mergeEdge(a, b);
  }
  return graph;
}

function reachedFrom(graph: Graph, cells: readonly number[]): ReadonlySet<number> {
  const seen = new Set<number>();
  const waiting = cells.filter((cell) => graph.hasNode(cell));
  for (let cell = waiting.pop(); cell !== undefined; cell = waiting.pop()) {
    if (seen.has(cell)) continue;
    seen.add(cell);
    graph.forEachNeighbor(cell, (next) => waiting.push(Number(next)));
  }
  return seen;
}

function someCase(seed: number) {
  const random = seededRandom(seed);
  const heightM = Float32Array.from({ length: COLUMNS * ROWS }, () => Math.ceil(random() * LEVELS));
  const grid = gridFrom({ columns: COLUMNS, rows: ROWS, heightM });
  const anyCell = () =>
    cellIndex(grid, Math.floor(random() * COLUMNS), Math.floor(random() * ROWS));
  const links = Array.from({ length: seed % 6 }, (_, k): Link => {
    const [a, b] = [anyCell(), anyCell()];
    return { pipeId: `p${k}`, a, b, levelM: Math.ceil(random() * LEVELS) };
  }).filter(({ a, b }) => a !== b);
  const from: WaterCells = { edge: false, cells: [anyCell()], links };
  setEdge(grid, false);
  return { grid, from, anyCell };
}

describe("connected water with pipes, against a graph library", () => {
  it("covers the same cells at every level", () => {
    for (let seed = 1; seed <= 24; seed++) {
      const { grid, from } = someCase(seed);
      for (let level = 1; level <= LEVELS + 1; level += 3) {
        const graph = graphAt(grid, from, level);
        const expected = reachedFrom(graph, from.cells);
        const codes = connectedWater(grid, from, level);
        for (const node of graph.nodes()) {
          expect(codes[Number(node)]).toBe(expected.has(Number(node)) ? WATER : LOW);
        }
      }
    }
  });

  it("has the same sills, with the water known and without, and a way that goes no higher", () => {
    for (let seed = 1; seed <= 24; seed++) {
      const { grid, from, anyCell } = someCase(seed);
      const levelM = 1 + (seed % LEVELS);
      const codes = connectedWater(grid, from, levelM);
      const searches = [sillSearch(grid, from, null), sillSearch(grid, from, { codes, levelM })];
      for (let k = 0; k < 6; k++) {
        const target = anyCell();
        const expected = Array.from({ length: LEVELS }, (_, i) => i + 1).find((level) =>
          reachedFrom(graphAt(grid, from, level + 0.5), from.cells).has(target),
        );
        for (const search of searches) expect(search.find([target]).levelM).toBe(expected);
        const way = wayIn(grid, from, [target], expected!);
        expect([from.cells[0], target]).toEqual([way[0], way.at(-1)]);
        expect(way.every((cell) => grid.heightM[cell]! <= expected!)).toBe(true);
        const below = pipesOnWay(from, way).map(
          ({ pipeId }) => from.links!.find((link) => link.pipeId === pipeId)!.levelM,
        );
        expect(below.every((level) => level <= expected!)).toBe(true);
      }
    }
  });
});
