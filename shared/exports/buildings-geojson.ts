import type { Position } from "geojson";
import type { FoundShape } from "../buildings/types.ts";
import type { LonLat } from "../plan.ts";
import {
  aboutRecord,
  buildingCautions,
  buildingRecords,
  type ExportedBuildings,
  lineRecords,
} from "./buildings-records.ts";
import { closedLeft, roundedPosition } from "./positions.ts";

/**
 * All checked buildings as a GeoJSON FeatureCollection (RFC 7946, WGS 84). `feature` says what each is: a `line` that
 * is chosen, or a `building` with its state and the figures of its own best line; units are in the names.
 */
export function buildingsGeoJson(exported: ExportedBuildings): string {
  const about = {
    ...aboutRecord(exported),
    cautions: buildingCautions(exported),
  };
  const lines = lineRecords(exported).flatMap(({ row, record }) =>
    row.line ? [feature("line", shapeOf(row.line), { ...record, ...about })] : [],
  );
  const buildings = buildingRecords(exported).map(({ building, record }) =>
    feature("building", areas(building.parts), { ...record, ...about }),
  );
  const features = [...lines, ...buildings];
  return `${JSON.stringify({ type: "FeatureCollection", features }, null, 1)}\n`;
}

function shapeOf({ kind, coordinates }: FoundShape) {
  return kind === "ring"
    ? { type: "Polygon", coordinates: [outlineOf(coordinates)] }
    : { type: "LineString", coordinates: coordinates.map(roundedPosition) };
}

function areas(parts: readonly (readonly LonLat[])[]) {
  return parts.length === 1
    ? { type: "Polygon", coordinates: [outlineOf(parts[0]!)] }
    : { type: "MultiPolygon", coordinates: parts.map((part) => [outlineOf(part)]) };
}

function outlineOf(corners: readonly LonLat[]): Position[] {
  return closedLeft(corners.map(roundedPosition));
}

function feature(what: string, geometry: object, properties: object) {
  return { type: "Feature", geometry, properties: { feature: what, ...properties } };
}
