import type { Feature, FeatureCollection } from "geojson";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { beside, spotAt, stretch } from "../drawing/line/along.ts";
import { isOverAt } from "../drawing/profile/profile-reading.ts";

/** How far the cut line runs on beyond the toes, CSS pixels. */
const BEYOND_PX = 16;

/** The marked station: the line that the cross-section is cut along (`isOver`: the levee is over its limit there). */
export function markedShapes(
  line: SizedLine | null,
  chainageM: number | null,
  metresPerPx: number,
): FeatureCollection {
  const spot = line && chainageM !== null ? spotAt(line.walk, chainageM) : null;
  if (!line || chainageM === null || !spot) return { type: "FeatureCollection", features: [] };
  const beyondM = BEYOND_PX * metresPerPx;
  const coordinates = [
    beside(spot, spot.toeLeftM + beyondM),
    beside(spot, -spot.toeRightM - beyondM),
  ];
  const properties = { isOver: isOverAt(line, chainageM) };
  const cut: Feature = {
    type: "Feature",
    properties,
    geometry: { type: "LineString", coordinates },
  };
  return { type: "FeatureCollection", features: [cut] };
}

/** The stretch a pointed check speaks of, over the closing point of a ring too; or nothing. */
export function pointedShape(
  line: SizedLine | null,
  pointed: { readonly fromM: number; readonly toM: number } | null,
): FeatureCollection {
  if (!line || !pointed || pointed.fromM === pointed.toM)
    return { type: "FeatureCollection", features: [] };
  const { fromM, toM } = pointed;
  const endM = line.walk.chainageM.at(-1) ?? 0;
  const parts =
    toM > fromM
      ? [[fromM, toM]]
      : [
          [fromM, endM],
          [0, toM],
        ];
  const coordinates = parts.map(([from, to]) => stretch(line.walk, from!, to!));
  return {
    type: "FeatureCollection",
    features: [
      { type: "Feature", properties: {}, geometry: { type: "MultiLineString", coordinates } },
    ],
  };
}
