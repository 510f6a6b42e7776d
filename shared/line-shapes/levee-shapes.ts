import type { Feature, FeatureCollection, Position } from "geojson";
import { classOnReach, reachAt } from "../reaches.ts";
import type { SizedLine, Walk } from "../sizing-types.ts";
import { moved } from "./offset.ts";
import { corners, cornerWedge, type LegRun, legRuns, place } from "./walk-legs.ts";

/** What a stretch of the line is: a height class 0..4, free ground where nothing is built, or no ground data. */
type Kind = number | "free" | "no-data";
/** Height class of a greatest height at a chainage. */
type ClassAt = (greatestHeightM: number, chainageM: number) => number;

/**
 * The levee as it lies on the ground: strips between the toes, one MultiPolygon for each height class
 * (`kind: "strip"`, `heightClass` 0..4), and as lines the stretches where nothing is built (`free`) or
 * where ground data is missing (`no-data`). A stretch between two samples takes the higher one's class; over
 * the limit is over that of its own reach.
 * @param limitM the plan's limit, whose quarters are the classes
 */
export function leveeShapes(line: SizedLine, limitM: number): FeatureCollection {
  const { walk } = line;
  const strips: Position[][][][] = [[], [], [], [], []];
  const free: Position[][] = [];
  const noData: Position[][] = [];
  const classAt = classesOf(line, limitM);
  for (const run of legRuns(walk, (i) => kindBetween(walk, i, classAt))) {
    if (run.kind === "free") free.push(center(walk, run));
    else if (run.kind === "no-data") noData.push(center(walk, run));
    else strips[run.kind]!.push([strip(walk, run)]);
  }
  for (const [before, after] of corners(walk, line.kind === "ring")) {
    const height = classAt(
      Math.max(walk.greatestHeightM[before]!, walk.greatestHeightM[after]!),
      walk.chainageM[after]!,
    );
    const wedge = height < 0 ? null : cornerWedge(walk, before, after);
    if (wedge) strips[height]!.push([wedge]);
  }
  const features: Feature[] = strips.flatMap((polygons, heightClass) =>
    polygons.length === 0 ? [] : [multiPolygon(polygons, heightClass)],
  );
  if (free.length > 0) features.push(multiLine(free, { kind: "free" }));
  if (noData.length > 0) features.push(multiLine(noData, { kind: "no-data" }));
  return { type: "FeatureCollection", features };
}

/**
 * The center lines of the levee's strips (`kind: "core"`, `heightClass`), to be drawn where a strip is too narrow to
 * be seen.
 * @param limitM as for {@link leveeShapes}
 */
export function leveeCores(line: SizedLine, limitM: number): FeatureCollection {
  const { walk } = line;
  const cores: Position[][][] = [[], [], [], [], []];
  const classAt = classesOf(line, limitM);
  for (const run of legRuns(walk, (i) => kindBetween(walk, i, classAt))) {
    if (typeof run.kind === "number") cores[run.kind]!.push(center(walk, run));
  }
  const features = cores.flatMap((lines, heightClass) =>
    lines.length === 0 ? [] : [multiLine(lines, { kind: "core", heightClass })],
  );
  return { type: "FeatureCollection", features };
}

function classesOf(line: SizedLine, limitM: number): ClassAt {
  return (heightM, chainageM) => classOnReach(heightM, limitM, reachAt(line, chainageM).limitM);
}

function kindBetween(walk: Walk, i: number, classAt: ClassAt): Kind {
  const [a, b] = [walk.greatestHeightM[i]!, walk.greatestHeightM[i + 1]!];
  if (Number.isNaN(a) || Number.isNaN(b)) return "no-data";
  const middleM = (walk.chainageM[i]! + walk.chainageM[i + 1]!) / 2;
  const height = classAt(Math.max(a, b), middleM);
  return height < 0 ? "free" : height;
}

function center(walk: Walk, run: LegRun<Kind>): Position[] {
  const line: Position[] = [];
  for (let i = run.from; i <= run.to; i++) line.push(place(walk, i));
  return line;
}

function strip(walk: Walk, run: LegRun<Kind>): Position[] {
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

function multiPolygon(polygons: Position[][][], heightClass: number): Feature {
  return {
    type: "Feature",
    properties: { kind: "strip", heightClass },
    geometry: { type: "MultiPolygon", coordinates: polygons },
  };
}

function multiLine(lines: Position[][], properties: Feature["properties"]): Feature {
  return {
    type: "Feature",
    properties,
    geometry: { type: "MultiLineString", coordinates: lines },
  };
}
