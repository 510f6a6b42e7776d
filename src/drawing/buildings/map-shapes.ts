import type { Feature, FeatureCollection, Position } from "geojson";
import type { BuildingRow } from "../../../shared/buildings/rows.ts";
import type { ShownState } from "../../../shared/buildings/shown-states.ts";
import type { Building, FoundShape } from "../../../shared/buildings/types.ts";
import { middleOf } from "../../../shared/geo-box.ts";
import { heightClass } from "../../../shared/height-class.ts";
import type { LonLat } from "../../../shared/plan.ts";
import { crossOf } from "./cross.ts";

/** Degrees: west, south, east, north. */
export type Box = readonly [number, number, number, number];

/** Footprints with their state (`unchecked` before they are), and the crosses of those without room. */
export function buildingShapes(
  buildings: readonly Building[],
  states: ReadonlyMap<string, ShownState>,
): FeatureCollection {
  const features = buildings.flatMap(({ id, parts }, index): Feature[] => {
    const state = states.get(id) ?? "unchecked";
    const properties = { kind: "building", index, state };
    const outlines = parts.map((part): Feature => polygon(part, properties));
    if (state !== "no-room") return outlines;
    const crosses = parts.flatMap(crossOf);
    return [...outlines, { ...lines(crosses), properties: { kind: "cross", index, state } }];
  });
  return { type: "FeatureCollection", features };
}

/** Signs in the middle of footprints whose state is no fill: a clock, a question mark. */
export function signShapes(
  buildings: readonly Building[],
  states: ReadonlyMap<string, ShownState>,
): FeatureCollection {
  const features = buildings.flatMap(({ id, parts }): Feature[] => {
    const state = states.get(id);
    if (state !== "too-late" && state !== "no-data") return [];
    return [point(middleOf(parts[0]!), { state })];
  });
  return { type: "FeatureCollection", features };
}

/** The chosen lines with their height class, what lies inside them, their numbers and names. */
export function lineShapes(rows: readonly BuildingRow[], limitM: number): FeatureCollection {
  const features = rows.flatMap(({ id, mark, line, name, members, priority }): Feature[] => {
    if (mark === null || line === null) return [];
    const properties = { id, class: Math.max(0, heightClass(line.greatestHeightM, limitM)) };
    const top = northmost(line.coordinates);
    const text = { text: String(mark), name: members.length > 1 ? "" : name };
    return [
      ...(line.kind === "ring"
        ? [polygon(line.coordinates, { ...properties, kind: "inside" })]
        : []),
      { ...pathOf(line), properties: { ...properties, kind: "line" } },
      point(top, { kind: "mark", id, ...text, rank: priority === "first" ? 0 : mark }),
    ];
  });
  return { type: "FeatureCollection", features };
}

/** The own rings of a group's members, for a picked group. */
export function ownLineShapes(shapes: readonly FoundShape[]): FeatureCollection {
  const features = shapes.map((shape): Feature => ({ ...pathOf(shape), properties: {} }));
  return { type: "FeatureCollection", features };
}

function northmost(places: readonly LonLat[]): LonLat {
  return places.reduce((best, at) => (at[1] > best[1] ? at : best));
}

function polygon(corners: readonly LonLat[], properties: Feature["properties"]): Feature {
  const closed = [...corners, corners[0]!].map(position);
  return { type: "Feature", properties, geometry: { type: "Polygon", coordinates: [closed] } };
}

function pathOf({ kind, coordinates }: FoundShape): Feature {
  const path = kind === "ring" ? [...coordinates, coordinates[0]!] : coordinates;
  return lines([path]);
}

function lines(paths: readonly (readonly LonLat[])[]): Feature {
  const coordinates = paths.map((path) => path.map(position));
  return {
    type: "Feature",
    properties: {},
    geometry: { type: "MultiLineString", coordinates },
  };
}

function point(at: LonLat, properties: Feature["properties"]): Feature {
  return { type: "Feature", properties, geometry: { type: "Point", coordinates: position(at) } };
}

function position([lon, lat]: LonLat): Position {
  return [lon, lat];
}
