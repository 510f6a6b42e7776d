import { difference, featureCollection, polygon } from "@turf/turf";
import type { Feature, FeatureCollection } from "geojson";
import type { Alignment } from "../../shared/plan.ts";

/** Ground between two rings: inside the first alone (`taken-in`) and inside the second alone (`left-out`). */
export function differenceShapes(one: Alignment, other: Alignment): FeatureCollection {
  const features: Feature[] = [];
  const put = (kind: string, inside: Alignment, outside: Alignment) => {
    const rest = difference(featureCollection([areaOf(inside), areaOf(outside)]));
    if (rest) features.push({ ...rest, properties: { kind } });
  };
  if (one.kind === "ring" && other.kind === "ring") {
    put("taken-in", one, other);
    put("left-out", other, one);
  }
  return { type: "FeatureCollection", features };
}

function areaOf({ corners }: Alignment) {
  const path = corners.map(([longitude, latitude]) => [longitude, latitude]);
  return polygon([[...path, path[0]!]]);
}
