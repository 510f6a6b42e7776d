/** GeoKeys by name, as geotiff.js gives them. */
export type KeyValues = Readonly<Record<string, unknown>>;

const SHAPE_KEYS = [
  "ProjectedCSTypeGeoKey",
  "GeographicTypeGeoKey",
  "ProjectionGeoKey",
  "ProjCoordTransGeoKey",
];

/** True when the GeoKeys say anything about the horizontal reference. */
export function statesReference(keys: KeyValues): boolean {
  return SHAPE_KEYS.some((key) => typeof keys[key] === "number");
}
