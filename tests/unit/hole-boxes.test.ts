import { describe, expect, it } from "vitest";
import { holeBoxes, noteHoles } from "../../src/map/hole-boxes.ts";

const SIDE = 256;

/** A tile's picture with one painted rectangle, cells. */
function painted(left: number, top: number, right: number, bottom: number): Uint8ClampedArray {
  const rgba = new Uint8ClampedArray(SIDE * SIDE * 4);
  for (let row = top; row < bottom; row++) {
    for (let column = left; column < right; column++) rgba[4 * (row * SIDE + column) + 3] = 200;
  }
  return rgba;
}

describe("places with missing data on the map", () => {
  it("are where a tile's picture shows them, and go with the elevation data", () => {
    // Tile 1/1/0 is the world's north east quarter: 0 to 180 degrees east, the equator to 85.0511 degrees north.
    noteHoles({ z: 1, x: 1, y: 0, turn: 1 }, painted(64, 128, 128, 256));
    const [west, south, east, north] = holeBoxes.value[0]!;
    expect([west, east]).toEqual([45, 90]);
    expect(south).toBeCloseTo(0, 9);
    // The middle of a tile that ends at 85.0511: latitude 66.51326, as in the tile scheme's published tables.
    expect(north).toBeCloseTo(66.51326, 5);

    noteHoles({ z: 1, x: 1, y: 0, turn: 0 }, painted(0, 0, 1, 1));
    expect(holeBoxes.value).toHaveLength(1);

    noteHoles({ z: 1, x: 0, y: 0, turn: 2 }, painted(0, 0, 0, 0));
    expect(holeBoxes.value).toEqual([]);
  });
});
