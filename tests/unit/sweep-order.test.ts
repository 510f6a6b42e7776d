import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkBuildings } from "../../shared/buildings/check-buildings.ts";
import type { BuildingsCheck } from "../../shared/buildings/check-types.ts";
import { WATER } from "../../shared/water-types.ts";
import { risingWater } from "../../workers/sweep/rising-water.ts";
import { connectedWater } from "../../workers/water/connected-water.ts";
import { sillSearch } from "../../workers/water/sill-search.ts";
import { setEdge } from "../../workers/water/water-grid.ts";
import { engineOn, seededTown, townPlan, townRaster } from "../helpers/sweep-town.ts";
import { EDGE, gridFrom, inner } from "../helpers/water-grids.ts";

const COUNT = 2;
/** Some 20 m of longitude there. */
const BESIDE_DEG = 0.00025;

function byId({ buildings, groups }: BuildingsCheck) {
  return [...buildings, ...groups].sort((a, b) => (a.id < b.id ? -1 : 1));
}

describe("what a check finds", () => {
  it("is the same to the last digit in any order, after any other work, however many tasks run at once", async () => {
    const town = seededTown(COUNT);
    const bytes = townRaster(town.sideM, town.heightAt);
    const beside = town.buildings[0]!.parts.map((outline) =>
      outline.map(([lon, lat]) => [lon + BESIDE_DEG, lat] as const),
    );
    const buildings = [...town.buildings, { ...town.buildings[0]!, id: "a", parts: beside }];
    const question = {
      ...{ plan: townPlan(town.waterM), buildings },
      levelsM: [town.waterM + 0.2],
    };
    const used = await engineOn(bytes);
    const found = byId(await checkBuildings(used, 1, question));
    expect(found.filter(({ line }) => line !== null).length).toBeGreaterThan(COUNT);
    expect(found.filter((each) => "members" in each).length).toBeGreaterThan(0);
    const turned = { ...question, buildings: [...buildings].reverse() };
    expect(byId(await checkBuildings(used, 3, turned))).toEqual(found);
    const known = found.filter((each) => "state" in each && "weight" in each).slice(0, COUNT);
    const fresh = await engineOn(bytes);
    const resumed = await checkBuildings(fresh, 2, question, { known: known as never });
    expect(byId(resumed)).toEqual(found);
  }, 120_000);
});

describe("water that rises over the whole ground", () => {
  const side = 9;
  const height = fc.oneof(
    { weight: 9, arbitrary: fc.integer({ min: 0, max: 6 }) },
    { weight: 1, arbitrary: fc.constant(Number.NaN) },
  );
  const heights = fc.array(height, { minLength: side * side, maxLength: side * side });

  it("wets at each level what connected water wets, from the edge or from a marked cell", () => {
    fc.assert(
      fc.property(heights, fc.boolean(), fc.integer({ min: 1, max: 7 }), (values, edge, levelM) => {
        const grid = gridFrom({ columns: side, rows: side, heightM: Float32Array.from(values) });
        const middle = (grid.width + 1) * Math.ceil(side / 2);
        const from = edge ? EDGE : { edge: false, cells: [middle] };
        setEdge(grid, from.edge);
        const levels = inner(grid, risingWater(grid, from, 100));
        const codes = inner(grid, connectedWater(grid, from, levelM));
        const known = inner(grid, grid.heightM).map((heightM) => Number.isFinite(heightM));
        const wet = levels.map((level, k) => known[k]! && level < levelM);
        expect(wet).toEqual(codes.map((code, k) => known[k]! && code === WATER));
      }),
      { seed: 4, numRuns: 300 },
    );
  });

  const spot = fc.integer({ min: 0, max: side * side - 1 });
  const framed = (at: number) => (Math.floor(at / side) + 1) * (side + 2) + (at % side) + 1;

  it("reaches each cell at the sill that a search from it finds", () => {
    fc.assert(
      fc.property(heights, spot, (values, at) => {
        const grid = gridFrom({ columns: side, rows: side, heightM: Float32Array.from(values) });
        const cell = framed(at);
        fc.pre(Number.isFinite(grid.heightM[cell]!));
        expect(risingWater(grid, EDGE, 100)[cell]).toBe(
          sillSearch(grid, EDGE, null).find([cell]).levelM,
        );
      }),
      { seed: 5, numRuns: 300 },
    );
  });

  it("passes open pipes, from outside too, as connected water does", () => {
    const pipe = fc.record({ a: fc.option(spot), b: spot, levelM: fc.integer({ min: 0, max: 7 }) });
    const pipes = fc.array(pipe, { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(heights, pipes, fc.boolean(), fc.integer({ min: 1, max: 7 }), (...given) => {
        const [values, drawn, edge, levelM] = given;
        const grid = gridFrom({ columns: side, rows: side, heightM: Float32Array.from(values) });
        const source = (grid.width + 1) * Math.ceil(side / 2);
        const links = drawn.map(({ a, b, levelM: passesM }) => ({
          ...{ pipeId: "p", b: framed(b), levelM: passesM },
          a: a !== null ? framed(a) : edge ? 0 : source,
        }));
        const from = edge ? { ...EDGE, links } : { edge: false, cells: [source], links };
        setEdge(grid, from.edge);
        const levels = inner(grid, risingWater(grid, from, 100));
        const codes = inner(grid, connectedWater(grid, from, levelM));
        const known = inner(grid, grid.heightM).map((heightM) => Number.isFinite(heightM));
        const wet = levels.map((level, k) => known[k]! && level < levelM);
        expect(wet).toEqual(codes.map((code, k) => known[k]! && code === WATER));
      }),
      { seed: 6, numRuns: 400 },
    );
  });
});
