import { describe, expect, it } from "vitest";
import { heldWindows, MOST_WINDOWS } from "../../workers/raster/held-windows.ts";
import { type CellWindow, MOST_CELLS } from "../../workers/raster/window.ts";

function counted() {
  const read: CellWindow[] = [];
  const cellsOf = heldWindows(async (window) => {
    read.push(window);
    return window;
  });
  return { read, cellsOf };
}

const at = (k: number): CellWindow => ({ column: 300 * k, row: 0, columns: 200, rows: 200 });

describe("windows of a raster that are held", () => {
  it("are few, however many were asked for: the last ones", async () => {
    const { read, cellsOf } = counted();
    for (let k = 0; k < 500; k++) await cellsOf(at(k));
    expect(read).toHaveLength(500);
    for (let k = 0; k < MOST_WINDOWS; k++) await cellsOf(at(499 - k));
    expect(read).toHaveLength(500);
    for (let k = 0; k < 500 - MOST_WINDOWS; k++) await cellsOf(at(k));
    expect(read).toHaveLength(1000 - MOST_WINDOWS);
  });

  it("answer for smaller ones inside them, and stay while they are used", async () => {
    const { read, cellsOf } = counted();
    const inside = { column: 10, row: 10, columns: 50, rows: 50 };
    for (let k = 0; k < 50; k++) {
      await cellsOf(at(k));
      expect(await cellsOf(k === 0 ? inside : at(0))).toEqual(at(0));
    }
    expect(read).toHaveLength(50);
  });

  it("are one alone where that is as large as may be held, and none after a failed read", async () => {
    const { read, cellsOf } = counted();
    await cellsOf(at(0));
    await cellsOf({ column: 0, row: 1000, columns: MOST_CELLS / 1000, rows: 1000 });
    await cellsOf(at(0));
    expect(read).toHaveLength(3);
    let tries = 0;
    const failing = heldWindows(async () => {
      tries++;
      throw new Error("unreadable");
    });
    await expect(failing(at(0))).rejects.toThrow("unreadable");
    await expect(failing(at(0))).rejects.toThrow("unreadable");
    expect(tries).toBe(2);
  });
});
