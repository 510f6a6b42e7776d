import type { Feature, FeatureCollection, Position } from "geojson";
import { letterOf } from "../../shared/line-letter.ts";
import type { Alignment, LonLat, Plan } from "../../shared/plan.ts";
import { formatElevation, type UnitSystem } from "../../shared/units.ts";

export interface PlanShown {
  readonly plan: Plan;
  readonly chosenId: string | null;
  /** Other alternatives than the chosen one are drawn too. */
  readonly showAll: boolean;
  readonly system: UnitSystem;
}

/**
 * What the person drew, except the chosen alternative: `structure`, `no-go`, `other` (an alternative that
 * is not chosen), `gauge`, `source` and `flow`, each with points for their names (`label-...`).
 */
export function planShapes({ plan, chosenId, showAll, system }: PlanShown): FeatureCollection {
  const features: Feature[] = [];
  for (const structure of plan.structures) {
    const floor =
      structure.floorM === null ? "" : `, floor ${formatElevation(structure.floorM, system)}`;
    features.push(polygon("structure", structure.outline));
    features.push(point("label-structure", middleOf(structure.outline), structure.name + floor));
  }
  for (const area of plan.noGo) {
    features.push(polygon("no-go", area.outline));
    features.push(point("label-no-go", middleOf(area.outline), area.name));
  }
  const others = showAll ? plan.alignments.filter((each) => each.id !== chosenId) : [];
  for (const other of others) {
    const ends = other.kind === "ring" ? other.corners.slice(0, 1) : [];
    features.push(line("other", [...other.corners, ...ends], { id: other.id }));
    const apart = plan.alignments.filter((each) => each !== other);
    features.push(
      point("label-other", ownCorner(other, apart), letterOf(plan.alignments.indexOf(other)), {
        id: other.id,
      }),
    );
  }
  if (plan.gauge) features.push(point("gauge", plan.gauge.at, plan.gauge.name || "Gauge"));
  for (const source of plan.sources ?? []) {
    features.push(point("source", source.at, source.name));
  }
  if (plan.flow) {
    features.push(line("flow", [plan.flow.from, plan.flow.to]));
    features.push(
      point("flow-head", plan.flow.to, "", { bearing: bearing(plan.flow.from, plan.flow.to) }),
    );
  }
  return { type: "FeatureCollection", features };
}

function polygon(kind: string, outline: readonly LonLat[]): Feature {
  const ring = outline.map((at): Position => [at[0], at[1]]);
  return {
    type: "Feature",
    properties: { kind },
    geometry: { type: "Polygon", coordinates: [[...ring, ring[0]!]] },
  };
}

function line(kind: string, path: readonly LonLat[], more: object = {}): Feature {
  return {
    type: "Feature",
    properties: { kind, ...more },
    geometry: { type: "LineString", coordinates: path.map((at) => [at[0], at[1]]) },
  };
}

function point(kind: string, at: LonLat, text: string, more: object = {}): Feature {
  return {
    type: "Feature",
    properties: { kind, text, ...more },
    geometry: { type: "Point", coordinates: [at[0], at[1]] },
  };
}

/** Middle of the box round an outline. */
function middleOf(outline: readonly LonLat[]): LonLat {
  const [west, south, east, north] = boxOf(outline);
  return [(west + east) / 2, (south + north) / 2];
}

/** The corner of a line that lies furthest from the corners of the others: where its letter is not mistaken. */
function ownCorner(line: Alignment, others: readonly Alignment[]): LonLat {
  const foreign = others.flatMap((each) => each.corners);
  const apart = (at: LonLat) => Math.min(...foreign.map((each) => distance2(at, each)));
  return line.corners.reduce((best, at) => (apart(at) > apart(best) ? at : best));
}

function distance2(a: LonLat, b: LonLat): number {
  const east = (a[0] - b[0]) * Math.cos((a[1] * Math.PI) / 180);
  return east * east + (a[1] - b[1]) ** 2;
}

/** West, south, east, north of some places. */
function boxOf(places: readonly LonLat[]): [number, number, number, number] {
  const lons = places.map((at) => at[0]);
  const lats = places.map((at) => at[1]);
  return [Math.min(...lons), Math.min(...lats), Math.max(...lons), Math.max(...lats)];
}

/** Degrees clockwise from north on the map. */
function bearing(from: LonLat, to: LonLat): number {
  const east = (to[0] - from[0]) * Math.cos((from[1] * Math.PI) / 180);
  return (Math.atan2(east, to[1] - from[1]) * 180) / Math.PI;
}
