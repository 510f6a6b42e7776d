import { describe, expect, it } from "vitest";
import { searchRing } from "../../workers/search/search-ring.ts";
import type { Outline } from "../../workers/search/types.ts";
import { LEVEL_SECTION, rectangle, requestFor, SETBACK_M } from "../helpers/search-terrain.ts";

const HEIGHT_M = 0.8;
const CLEAR_M = SETBACK_M + 1.5 * HEIGHT_M;
const AREA_M2 = LEVEL_SECTION.areaAt(HEIGHT_M);
const flat = { heightAt: () => 0, cellM: 1 };

function ringsRound(structures: readonly Outline[]) {
  const request = requestFor(flat, structures[0]!, HEIGHT_M, {
    structures,
    window: { reachM: 20 },
  });
  return searchRing(request, { timeCapMs: 60_000 });
}

/** Shortest ring round a hull of the given perimeter on level ground (Steiner), as a volume. */
function roundHull(perimeterM: number): number {
  return AREA_M2 * (perimeterM + 2 * Math.PI * CLEAR_M);
}

describe("several structures", () => {
  const row = (gapM: number, count: number) =>
    Array.from({ length: count }, (_, k) => rectangle(8, 8, 0, [k * (8 + gapM), 0]));

  it("standing close together get one ring: within 1.5 % of the hull's", () => {
    const { rings, volumeM3 } = ringsRound(row(4, 2));
    expect(rings).toHaveLength(1);
    expect(rings[0]!.encloses).toEqual([0, 1]);
    expect(volumeM3).toBeLessThan(roundHull(2 * (20 + 8)) * 1.015);
  });

  it("standing far apart get one ring each", () => {
    const { rings, volumeM3 } = ringsRound(row(60, 2));
    expect(rings.map((ring) => ring.encloses)).toEqual([[0], [1]]);
    expect(volumeM3).toBeLessThan(2 * roundHull(32) * 1.015);
  });

  /** Two rings round 32 m hulls against one round a hull longer by twice the gap: equal where 2 gap = 32 - 16 + 2 pi d. */
  it("change from one ring to two where that becomes cheaper", () => {
    const equalM = (16 + 2 * Math.PI * CLEAR_M) / 2;
    expect(ringsRound(row(equalM - 2, 2)).rings).toHaveLength(1);
    expect(ringsRound(row(equalM + 2, 2)).rings).toHaveLength(2);
  });

  it("three of which two belong together get two rings", () => {
    const { rings } = ringsRound([...row(3, 2), rectangle(8, 8, 0, [75, 5])]);
    expect(rings.map((ring) => ring.encloses)).toEqual([[0, 1], [2]]);
  });

  it("get separate rings that keep off each other", () => {
    const { rings } = ringsRound(row(26, 3));
    const [one, two] = rings;
    const gap =
      Math.min(...two!.corners.map(([x]) => x)) - Math.max(...one!.corners.map(([x]) => x));
    expect(rings).toHaveLength(3);
    expect(gap).toBeGreaterThan(3 * HEIGHT_M - 0.01);
  });

  it("more than four are joined by neighbours, and the answer says that it is not exact", () => {
    const { rings, notes } = ringsRound(row(3, 5));
    expect(rings).toHaveLength(1);
    expect(rings[0]!.encloses).toEqual([0, 1, 2, 3, 4]);
    expect(notes).toContainEqual({ kind: "groups-not-compared", most: 4 });
  });
});
