import { describe, expect, it } from "vitest";
import { DEFAULT_WATER } from "../../shared/defaults.ts";
import type { Flow, Gauge, Water } from "../../shared/plan.ts";
import { waterElevationAtGauge, waterSurface } from "../../shared/stage.ts";
import { PLANE } from "../helpers/grounds.ts";

const water = (changes: Partial<Water>): Water => ({ ...DEFAULT_WATER, ...changes });
const flow = (from: [number, number], to: [number, number]): Flow => ({
  from: PLANE.toLonLat(...from),
  to: PLANE.toLonLat(...to),
});
const gauge = (x: number, y: number): Gauge => ({ name: "Mill bridge", at: PLANE.toLonLat(x, y) });

describe("water-surface elevation", () => {
  it("is gauge zero plus stage plus the datum offset (NWS-D, USGS-D)", () => {
    const byStage = water({ by: "stage", gaugeZeroM: 255.4, stageM: 6.1, elevationM: 99 });
    expect(waterElevationAtGauge(byStage)).toBeCloseTo(261.5, 12);
    expect(waterElevationAtGauge({ ...byStage, datumOffsetM: -0.35 })).toBeCloseTo(261.15, 12);
  });

  it("is the elevation as typed when that rules", () => {
    const typed = water({ by: "elevation", elevationM: 262.5, stageM: 9, datumOffsetM: 4 });
    expect(waterElevationAtGauge(typed)).toBe(262.5);
  });
});

describe("the water surface over the site", () => {
  const falling = water({ by: "elevation", elevationM: 100, fallPerM: 0.001 });

  it("is level without a fall, and without a direction", () => {
    const level = waterSurface(
      water({ by: "elevation", elevationM: 100 }),
      flow([0, 0], [1, 0]),
      null,
      PLANE,
    );
    expect(level(5000, -200)).toBe(100);
    expect(waterSurface(falling, null, gauge(0, 0), PLANE)(5000, 0)).toBe(100);
  });

  it("falls along the flow from the gauge, rises above it, and is level across", () => {
    const surface = waterSurface(falling, flow([0, 0], [30, 40]), gauge(100, 0), PLANE);
    expect(surface(100, 0)).toBeCloseTo(100, 6);
    expect(surface(160, 80)).toBeCloseTo(99.9, 6);
    expect(surface(40, -80)).toBeCloseTo(100.1, 6);
    expect(surface(180, -60)).toBeCloseTo(100, 6);
  });

  it("falls from the start of the arrow when there is no gauge", () => {
    const surface = waterSurface(falling, flow([10, 10], [10, 90]), null, PLANE);
    expect(surface(10, 10)).toBeCloseTo(100, 6);
    expect(surface(-70, 510)).toBeCloseTo(99.5, 6);
  });

  it("falls as published between two reaches: 825 ft to 805 ft over a mile (USGS-F)", () => {
    const ft = 0.3048;
    const steep = water({ by: "elevation", elevationM: 825 * ft, fallPerM: 20 / 5280 });
    const surface = waterSurface(steep, flow([0, 0], [1, 0]), gauge(0, 0), PLANE);
    expect(surface(5280 * ft, 0) / ft).toBeCloseTo(805, 4);
  });
});
