import type { Feature, FeatureCollection, Position } from "geojson";
import { heightClass } from "../../shared/height-class.ts";
import type { SizedLine, Walk } from "../../shared/sizing-types.ts";
import { moved, type Place } from "./offset.ts";

/** Turn of one facet of a rounded outer corner, radians. */
const FACET = Math.PI / 12;
/** What a stretch of the line is: a height class 0..4, free ground where nothing is built, or no ground data. */
type Kind = number | "free" | "no-data";

/**
 * The levee as it lies on the ground: strips between the toes, one MultiPolygon for each height class
 * (`kind: "strip"`, `heightClass` 0..4), and as lines the stretches where nothing is built (`free`) or
 * where ground data is missing (`no-data`). A stretch between two samples takes the higher one's class.
 */
export function leveeShapes(line: SizedLine, limitM: number): FeatureCollection {
  const { walk } = line;
  const strips: Position[][][][] = [[], [], [], [], []];
  const free: Position[][] = [];
  const noData: Position[][] = [];
  for (const run of runs(walk, limitM)) {
    if (run.kind === "free") free.push(centre(walk, run));
    else if (run.kind === "no-data") noData.push(centre(walk, run));
    else strips[run.kind]!.push([strip(walk, run)]);
  }
  for (const [before, after] of corners(walk, line.kind === "ring")) {
    const height = heightClass(
      Math.max(walk.greatestHeightM[before]!, walk.greatestHeightM[after]!),
      limitM,
    );
    const wedge = height < 0 ? null : cornerWedge(walk, before, after);
    if (wedge) strips[height]!.push([wedge]);
  }
  const features: Feature[] = strips.flatMap((polygons, index) =>
    polygons.length === 0 ? [] : [multiPolygon(polygons, index)],
  );
  if (free.length > 0) features.push(multiLine(free, "free"));
  if (noData.length > 0) features.push(multiLine(noData, "no-data"));
  return { type: "FeatureCollection", features };
}

interface Run {
  readonly kind: Kind;
  readonly from: number;
  readonly to: number;
  /** Index of the sample whose leg, and so whose normal, the run lies on. */
  readonly normalOf: number;
}

/** Stretches of one kind on one leg; samples `from` to `to`, both included. */
function runs(walk: Walk, limitM: number): Run[] {
  const found: Run[] = [];
  for (let i = 0; i + 1 < walk.chainageM.length; i++) {
    if (!(walk.chainageM[i + 1]! > walk.chainageM[i]!)) continue;
    const normalOf = legOf(walk, i);
    const kind = kindBetween(walk, i, limitM);
    const last = found.at(-1);
    const goesOn =
      last !== undefined &&
      last.to === i &&
      last.kind === kind &&
      walk.leg[last.normalOf] === walk.leg[normalOf];
    if (goesOn) found[found.length - 1] = { ...last, to: i + 1 };
    else found.push({ kind, from: i, to: i + 1, normalOf });
  }
  return found;
}

/** The sample of a pair that lies on the leg between them: the one whose normal stands square to it. */
function legOf(walk: Walk, i: number): number {
  if (walk.leg[i] === walk.leg[i + 1]) return i;
  const alongEast = (walk.lonLat[2 * i + 2]! - walk.lonLat[2 * i]!) * Math.cos(latitude(walk, i));
  const alongNorth = walk.lonLat[2 * i + 3]! - walk.lonLat[2 * i + 1]!;
  const skew = (k: number) =>
    Math.abs(walk.leftNormal[2 * k]! * alongEast + walk.leftNormal[2 * k + 1]! * alongNorth);
  return skew(i) <= skew(i + 1) ? i : i + 1;
}

function latitude(walk: Walk, i: number): number {
  return (walk.lonLat[2 * i + 1]! * Math.PI) / 180;
}

function kindBetween(walk: Walk, i: number, limitM: number): Kind {
  const [a, b] = [walk.greatestHeightM[i]!, walk.greatestHeightM[i + 1]!];
  if (Number.isNaN(a) || Number.isNaN(b)) return "no-data";
  const height = heightClass(Math.max(a, b), limitM);
  return height < 0 ? "free" : height;
}

function place(walk: Walk, i: number): Place {
  return [walk.lonLat[2 * i]!, walk.lonLat[2 * i + 1]!];
}

function centre(walk: Walk, run: Run): Position[] {
  const line: Position[] = [];
  for (let i = run.from; i <= run.to; i++) line.push(place(walk, i));
  return line;
}

function strip(walk: Walk, run: Run): Position[] {
  const east = walk.leftNormal[2 * run.normalOf]!;
  const north = walk.leftNormal[2 * run.normalOf + 1]!;
  const left: Position[] = [];
  const right: Position[] = [];
  for (let i = run.from; i <= run.to; i++) {
    const [leftM, rightM] = [walk.toeLeftM[i]! || 0, walk.toeRightM[i]! || 0];
    left.push(moved(place(walk, i), east * leftM, north * leftM));
    right.push(moved(place(walk, i), -east * rightM, -north * rightM));
  }
  return [...left, ...right.reverse(), left[0]!];
}

/** Pairs of samples on either side of a corner, a ring's closing corner included. */
function corners(walk: Walk, ring: boolean): [number, number][] {
  const pairs: [number, number][] = [];
  const count = walk.chainageM.length;
  for (let i = 0; i + 1 < count; i++) {
    if (walk.leg[i] !== walk.leg[i + 1]) pairs.push([i, i + 1]);
  }
  if (ring && count > 2) pairs.push([count - 1, 0]);
  return pairs;
}

/** The outer gap that two straight strips leave at a corner, filled by a fan between their normals. */
function cornerWedge(walk: Walk, before: number, after: number): Position[] | null {
  const at = cornerPlace(walk, before, after);
  const from = Math.atan2(walk.leftNormal[2 * before + 1]!, walk.leftNormal[2 * before]!);
  const to = Math.atan2(walk.leftNormal[2 * after + 1]!, walk.leftNormal[2 * after]!);
  const turn = Math.atan2(Math.sin(to - from), Math.cos(to - from));
  if (Math.abs(turn) < 0.01) return null;
  const toes = turn < 0 ? walk.toeLeftM : walk.toeRightM;
  const side = turn < 0 ? 1 : -1;
  const [fromM, toM] = [toes[before]! || 0, toes[after]! || 0];
  if (!(fromM + toM > 0)) return null;
  const facets = Math.max(1, Math.ceil(Math.abs(turn) / FACET));
  const fan: Position[] = [at];
  for (let k = 0; k <= facets; k++) {
    const angle = from + (turn * k) / facets;
    const outM = side * (fromM + ((toM - fromM) * k) / facets);
    fan.push(moved(at, Math.cos(angle) * outM, Math.sin(angle) * outM));
  }
  return [...fan, at];
}

/** The corner itself: the sample of the pair that stands on it is the one whose leg does not hold the way between them. */
function cornerPlace(walk: Walk, before: number, after: number): Place {
  if (after < before || walk.chainageM[before] === walk.chainageM[after]) return place(walk, after);
  return legOf(walk, before) === before ? place(walk, after) : place(walk, before);
}

function multiPolygon(polygons: Position[][][], index: number): Feature {
  return {
    type: "Feature",
    properties: { kind: "strip", heightClass: index },
    geometry: { type: "MultiPolygon", coordinates: polygons },
  };
}

function multiLine(lines: Position[][], kind: "free" | "no-data"): Feature {
  return {
    type: "Feature",
    properties: { kind },
    geometry: { type: "MultiLineString", coordinates: lines },
  };
}
