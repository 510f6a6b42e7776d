import type { LonLat } from "../../shared/plan.ts";

/** A place on the drawing, millimetres from its upper left corner. */
export type Spot = readonly [xMm: number, yMm: number];
export type ToSpot = (at: LonLat) => Spot;

/** A path through corners in longitude and latitude. */
export function pathOf(corners: readonly LonLat[], toSpot: ToSpot, closed: boolean): string {
  const steps = corners.map((at, i) => {
    const [x, y] = toSpot(at);
    return `${i === 0 ? "M" : "L"}${x.toFixed(2)} ${y.toFixed(2)}`;
  });
  return steps.join("") + (closed ? "Z" : "");
}

interface Shape {
  readonly type: string;
  readonly coordinates?: unknown;
}

/** The path of a GeoJSON MultiPolygon or MultiLineString; empty for other geometry. */
export function pathOfShape(shape: Shape, toSpot: ToSpot): string {
  if (shape.type === "MultiPolygon") {
    const polygons = shape.coordinates as LonLat[][][];
    return polygons
      .flat()
      .map((ring) => pathOf(ring.slice(0, -1), toSpot, true))
      .join("");
  }
  if (shape.type === "MultiLineString") {
    return (shape.coordinates as LonLat[][]).map((path) => pathOf(path, toSpot, false)).join("");
  }
  return "";
}
