import type { Position } from "geojson";
import { HEIGHT_CLASSES } from "../height-class.ts";
import { leveeShapes } from "../line-shapes/levee-shapes.ts";
import type { LonLat, Plan } from "../plan.ts";
import type { SizedLine } from "../sizing-types.ts";

/** A part of the base between its toes. */
interface Strip {
  /** The first corner is not repeated. */
  readonly outline: readonly LonLat[];
  /** True where the levee is higher than what is built there may be. */
  readonly isOver: boolean;
}

/** A line as it lies on the ground. */
interface Base {
  readonly strips: readonly Strip[];
  /** Stretches without elevation data under the base, along the center line. */
  readonly gaps: readonly (readonly LonLat[])[];
}

/** The base of a line between its toes, by leg and height, and the stretches of which nothing is known. */
export function baseOf({ practice }: Plan, line: SizedLine): Base {
  const strips: Strip[] = [];
  const gaps: (readonly LonLat[])[] = [];
  for (const { geometry, properties } of leveeShapes(line, practice.limitM).features) {
    if (geometry.type === "MultiPolygon") {
      const isOver = properties?.heightClass === HEIGHT_CLASSES - 1;
      const outlines = geometry.coordinates.map(([outer]) => places(outer!).slice(0, -1));
      strips.push(...outlines.map((outline) => ({ outline, isOver })));
    }
    if (geometry.type === "MultiLineString" && properties?.kind === "no-data") {
      gaps.push(...geometry.coordinates.map(places));
    }
  }
  return { strips, gaps };
}

function places(positions: readonly Position[]): LonLat[] {
  return positions.map(([lon, lat]) => [lon!, lat!]);
}
