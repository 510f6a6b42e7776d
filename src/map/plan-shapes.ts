import type { Feature, FeatureCollection, Position } from "geojson";
import { middleOf } from "../../shared/geo-box.ts";
import { letterOf } from "../../shared/line-letter.ts";
import type { Alignment, LonLat, Plan, WorkPlace } from "../../shared/plan.ts";
import { directionOf, type LabelReach } from "../drawing/line/label-offset.ts";

/** Distance of a letter from its line. */
export const LETTER: LabelReach = { em: 1.1, spreadEm: 0 };

export interface PlanShown {
  readonly plan: Plan;
  readonly chosenId: string | null;
  /** Other alternatives than the chosen one are drawn too. */
  readonly showAll: boolean;
}

/**
 * What the person drew, except the chosen alternative: `structure`, `no-go`, `other` (an alternative that
 * is not chosen), `gauge`, `source`, `culvert`, `drain`, `truck-way`, `work-place` and `flow`, each with points for their names (`label-...`).
 */
export function planShapes({ plan, chosenId, showAll }: PlanShown): FeatureCollection {
  const features: Feature[] = [];
  for (const structure of plan.structures) {
    features.push(polygon("structure", structure.outline, { id: structure.id }));
    features.push(point("label-structure", middleOf(structure.outline), structure.name));
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
    const corner = ownCorner(other, apart);
    features.push(
      point("label-other", other.corners[corner]!, letterOf(plan.alignments.indexOf(other)), {
        id: other.id,
        direction: offLine(other, corner),
      }),
    );
  }
  if (plan.gauge?.at) features.push(point("gauge", plan.gauge.at, plan.gauge.name || "Gauge"));
  for (const source of plan.sources ?? []) {
    features.push(point("source", source.at, source.name));
  }
  for (const { id, path } of plan.roads ?? []) features.push(line("road", path, { id }));
  for (const { id, path, plugged } of plan.culverts ?? []) {
    features.push(line("culvert", path, { id }));
    for (const end of [path[0]!, path.at(-1)!]) {
      features.push(point("culvert-end", end, "", { id, icon: pipeIcon("pipe", plugged) }));
    }
  }
  for (const { id, at, plugged } of plan.drains ?? []) {
    features.push(point("drain", at, "", { id, icon: pipeIcon("drain", plugged) }));
  }
  for (const { id, kind, path } of plan.workPlaces ?? [])
    features.push(...workShapes(id, kind, path));
  if (plan.flow) {
    features.push(line("flow", [plan.flow.from, plan.flow.to]));
    features.push(
      point("flow-head", plan.flow.to, "", { bearing: bearing(plan.flow.from, plan.flow.to) }),
    );
  }
  return { type: "FeatureCollection", features };
}

/** A pile or pumps as their symbol; a truck way with its arrow where trucks unload. */
function workShapes(id: string, of: WorkPlace["kind"], path: readonly LonLat[]): Feature[] {
  if (of !== "truck-way") return [point("work-place", path[0]!, "", { id, icon: of })];
  const turn = bearing(path.at(-2)!, path.at(-1)!);
  return [
    line("truck-way", path, { id }),
    point("work-place", path.at(-1)!, "", { id, icon: "truck-head", bearing: turn }),
  ];
}

/** The symbol of an end of a pipe, or of a drain: crossed out where it is plugged. */
function pipeIcon(of: "pipe" | "drain", plugged: boolean): string {
  return `${of}-${plugged ? "plugged" : "open"}`;
}

function polygon(kind: string, outline: readonly LonLat[], more: object = {}): Feature {
  const ring = outline.map((at): Position => [at[0], at[1]]);
  return {
    type: "Feature",
    properties: { kind, ...more },
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

/** Index of the corner of a line that lies furthest from the corners of the others: where its letter is not mistaken. */
function ownCorner(line: Alignment, others: readonly Alignment[]): number {
  const foreign = others.flatMap((each) => each.corners);
  const apart = line.corners.map((at) => Math.min(...foreign.map((each) => distance2(at, each))));
  return apart.indexOf(Math.max(...apart));
}

/** The direction in which a letter stands clear of the corner it names: the outer side of the bend. */
function offLine({ kind, corners }: Alignment, index: number): number {
  const at = corners[index]!;
  const count = corners.length;
  const beside = [index - 1, index + 1].flatMap((i) => {
    const each = kind === "ring" ? corners[(i + count) % count] : corners[i];
    return each ? [unit(at, each)] : [];
  });
  const east = -beside.reduce((sum, each) => sum + each[0], 0);
  const north = -beside.reduce((sum, each) => sum + each[1], 0);
  if (Math.hypot(east, north) > 0.05) return directionOf(east, north);
  const [e, n] = beside[0] ?? [0, 1];
  return directionOf(-n, e);
}

/** Direction from one place to another, east and north. */
function unit(from: LonLat, to: LonLat): [number, number] {
  const east = (to[0] - from[0]) * Math.cos((from[1] * Math.PI) / 180);
  const north = to[1] - from[1];
  const long = Math.hypot(east, north) || 1;
  return [east / long, north / long];
}

function distance2(a: LonLat, b: LonLat): number {
  const east = (a[0] - b[0]) * Math.cos((a[1] * Math.PI) / 180);
  return east * east + (a[1] - b[1]) ** 2;
}

/** Degrees clockwise from north on the map. */
export function bearing(from: LonLat, to: LonLat): number {
  const east = (to[0] - from[0]) * Math.cos((from[1] * Math.PI) / 180);
  return (Math.atan2(east, to[1] - from[1]) * 180) / Math.PI;
}
