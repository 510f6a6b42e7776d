import type { Feature, FeatureCollection } from "geojson";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { beside, type Spot, spotAt, stretch } from "../drawing/line/along.ts";

/** How far the cut line runs on beyond the toes, CSS pixels. */
const BEYOND_PX = 26;

/** The marked station: a point (`crosshair`) and the line the section is cut along (`cut`). */
export function markedShapes(
  line: SizedLine | null,
  chainageM: number | null,
  metresPerPx: number,
): FeatureCollection {
  const spot = line && chainageM !== null ? spotAt(line.walk, chainageM) : null;
  return { type: "FeatureCollection", features: spot ? shapes(spot, BEYOND_PX * metresPerPx) : [] };
}

function shapes(spot: Spot, beyondM: number): Feature[] {
  const cut = [beside(spot, spot.toeLeftM + beyondM), beside(spot, -spot.toeRightM - beyondM)];
  return [
    {
      type: "Feature",
      properties: { kind: "cut" },
      geometry: { type: "LineString", coordinates: cut },
    },
    {
      type: "Feature",
      properties: { kind: "crosshair" },
      geometry: { type: "Point", coordinates: spot.at },
    },
  ];
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
