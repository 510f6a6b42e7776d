import type { FoundShape, ShapeFile } from "../imports/found-shapes.ts";
import type { LonLat } from "../plan.ts";
import { path } from "../plan-geometry.ts";
import { areaM2, crossesItself, isSliver, outlineKey } from "./footprint-shape.ts";
import type { LaidOutFeature, LaidOutShapes } from "./from-shapes-types.ts";

/**
 * The outlines of a file where they are on Earth; outlines of one feature are parts of one building.
 * @param places longitude and latitude of what `cornersInTurn` gives; null = the file has them so
 * @throws Refusal `plan/bad-geometry` where a place is none
 */
export function layOutShapes(
  { outlines, paths, others, leftOut }: ShapeFile,
  places: readonly LonLat[] | null,
): LaidOutShapes {
  let next = 0;
  const found = new Map<number, { shape: FoundShape; parts: LonLat[][]; holes: number }>();
  for (const shape of outlines) {
    const at = places ? places.slice(next, next + shape.corners.length) : shape.corners;
    next += shape.corners.length;
    const part = path(at, { of: "structure" }, true);
    const same = found.get(shape.feature);
    if (same) {
      same.parts.push(part);
      same.holes += shape.holes;
    } else {
      found.set(shape.feature, { shape, parts: [part], holes: shape.holes });
    }
  }
  const features = [...found.values()].map((each): LaidOutFeature => {
    const crosses = each.parts.some(crossesItself);
    return {
      ...each,
      crossesItself: crosses,
      sliverM2: !crosses && isSliver(each.parts) ? areaM2(each.parts) : null,
      outlineKey: outlineKey(each.parts),
    };
  });
  return { features, leftOut, noOutline: others + paths.length };
}
