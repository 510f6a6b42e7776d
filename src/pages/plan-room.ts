import type { Exported } from "../../shared/exports/exported.ts";
import type { LonLat, Plan } from "../../shared/plan.ts";
import {
  isInside,
  type PlanePolygon,
  piecesMeet,
  pieceTouches,
} from "../../shared/plane-polygon.ts";
import { surveyOf } from "../../shared/survey/leveling.ts";
import { beside, spotAt } from "../drawing/line/along.ts";
import { waterSideIn } from "../drawing/line/water-side.ts";
import type { Box, Obstacle } from "../drawing/place-labels.ts";
import type { PlanFrame } from "./plan-frame.ts";
import { ALONE, matchEnds, type OtherPages } from "./plan-match.ts";
import type { Spot } from "./plan-paths.ts";
import { nameBoxes } from "./plan-reaches.tsx";
import { truckLegs, WORK_PLACE_MM, workPlaceSpots } from "./plan-work-places.tsx";

/** A line from a point of the drawing to its words. */
export type Leader = readonly [from: Spot, to: Spot];

/** What no clear label and no leader of one may run over, on the drawing. */
interface Barred {
  readonly buildings: readonly PlanePolygon[];
  /** The middle of the levee. */
  readonly line: readonly Spot[];
}

/** What is on a plan before its words. */
export interface PlanRoom {
  readonly obstacles: readonly Obstacle[];
  readonly barred: Barred;
}

/** Room of the corners of the drawing that north arrow and scale take, millimetres. */
const NORTH = { left: 0, top: 0, right: 11, bottom: 17 };
const FLOW_MM = { width: 34, height: 12 };
/** Room that scale bar and its words take in the lower right corner, millimetres. */
export const SCALE_MM = { width: 48, height: 10 };
/** Most places between two spots. */
const MOST_STEPS = 2000;
/** A leader begins beside its own toe, which it does not cross, millimetres. */
const OFF_TOE_MM = 0.5;

/** What no label may cover: the levee, corner marks, sump, benchmark, the reaches' names, arrows and scale. */
export function planRoom(
  { plan, line }: Exported,
  frame: PlanFrame,
  pages: OtherPages = ALONE,
): PlanRoom {
  const { widthMm, heightMm, toSpot } = frame;
  const levee: Obstacle[] = [];
  const middle: Spot[] = [];
  const { chainageM } = line.walk;
  const stepM = 0.8 * frame.scale.mPerMm;
  let lastM = -Infinity;
  for (const m of chainageM) {
    if (m - lastM < stepM && m !== chainageM.at(-1)) continue;
    lastM = m;
    const spot = spotAt(line.walk, m)!;
    middle.push(toSpot(spot.at));
    for (const across of [spot.toeLeftM, 0, -spot.toeRightM]) {
      levee.push(obstacleAt(toSpot(beside(spot, across)), 0.5));
    }
  }
  const outlines = plan.structures.map(({ outline }) => outline.map(toSpot));
  const marks = [line.holding?.inside?.lowestAt, surveyOf(plan).benchmark?.at].filter(Boolean);
  const names = nameBoxes({ line, side: waterSideIn(plan, line.id), frame });
  return {
    obstacles: [
      ...levee,
      ...outlines.flatMap(wallSpots).map((spot) => obstacleAt(spot, 0.5, 40)),
      ...outlines.flat().map((spot) => obstacleAt(spot, 0.8)),
      ...marks.map((at) => obstacleAt(toSpot(at!), 1.8)),
      ...workPlaceSpots(plan, frame).map((spot) => obstacleAt(spot, WORK_PLACE_MM)),
      ...truckLegs(plan, frame)
        .flatMap(([from, to]) => between(from, to))
        .map((spot) => obstacleAt(spot, 0.8, 60)),
      ...matchSpots({ plan, line, frame }, pages).map((spot) => obstacleAt(spot, 0.6)),
      ...waySpots(plan, frame).map(({ spot, halfMm, cost }) => obstacleAt(spot, halfMm, cost)),
      ...names.map((box) => ({ ...box, cost: Infinity })),
      { ...NORTH, cost: Infinity },
      {
        ...{ left: 0, right: FLOW_MM.width, top: heightMm - FLOW_MM.height, bottom: heightMm },
        cost: Infinity,
      },
      {
        ...{ left: widthMm - SCALE_MM.width, right: widthMm },
        ...{ top: heightMm - SCALE_MM.height, bottom: heightMm, cost: Infinity },
      },
    ],
    barred: { buildings: outlines.map(polygonOf), line: middle },
  };
}

/** What a square millimetre of exit road under words costs: less than a wall. */
const OVER_ROAD = 20;

/** Pipes, their openings, drains, places to look at, and exit roads, spot by spot along them. */
function waySpots(
  { culverts = [], drains = [], possibleCulverts = [], roads = [] }: Plan,
  frame: PlanFrame,
) {
  const along = (path: readonly LonLat[]) => spotsAlong(path.map(frame.toSpot), frame);
  const at = (spots: readonly Spot[], halfMm: number, cost = Infinity) =>
    spots.map((spot) => ({ spot, halfMm, cost }));
  const ends = culverts.flatMap(({ path }) => [path[0]!, path.at(-1)!].map(frame.toSpot));
  const looks = possibleCulverts.filter(({ answer }) => answer === "look");
  return [
    ...at(
      culverts.flatMap(({ path }) => along(path)),
      0.5,
    ),
    ...at([...ends, ...drains.map((each) => frame.toSpot(each.at))], 1.4),
    ...at(
      looks.map(({ path }) => frame.toSpot(path[0]!)),
      2.1,
    ),
    ...at(
      roads.flatMap(({ path }) => along(path)),
      0.8,
      OVER_ROAD,
    ),
  ];
}

interface Other {
  readonly box: Box;
  readonly leader: Leader | null;
}

/** Whether words cover no building, and their leader runs over no levee, building, leader or other words. */
export function isClear(
  box: Box,
  leader: Leader | null,
  barred: Barred,
  others: readonly Other[],
): boolean {
  const { buildings } = barred;
  if (buildings.some((building) => covers(box, building))) return false;
  if (leader === null) return true;
  const [start, to] = offToe(leader);
  return !(
    buildings.some((each) => pieceTouches(each, ...start, ...to)) ||
    meetsLine(leader, barred) ||
    meetsOthers(leader, others)
  );
}

/** Whether a leader runs through other words, or over their leaders. */
export function meetsOthers(leader: Leader, others: readonly Other[]): boolean {
  const own = offToe(leader);
  return others.some((other) => meetsBox(own, other.box) || meet(own, other.leader));
}

/** Whether a leader runs over the middle of the levee. */
export function meetsLine(leader: Leader, { line }: Barred): boolean {
  const own = offToe(leader);
  return line.some((spot, i) => i > 0 && meet(own, [line[i - 1]!, spot]));
}

/** The leader from a little off its toe on. */
function offToe([from, to]: Leader): Leader {
  const lengthMm = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const share = lengthMm > 0 ? Math.min(1, OFF_TOE_MM / lengthMm) : 0;
  return [[from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share], to];
}

/** Whether a line runs into a box. */
export function meetsBox([from, to]: Leader, box: Box): boolean {
  if (isBeside([from, to], box)) return false;
  return pieceTouches(polygonOf(cornersOf(box)), ...from, ...to);
}

/** Whether a line is all on one side of a box: most are, and that is told at once. */
function isBeside([[ax, ay], [bx, by]]: Leader, { left, right, top, bottom }: Box): boolean {
  return (
    (ax < left && bx < left) ||
    (ax > right && bx > right) ||
    (ay < top && by < top) ||
    (ay > bottom && by > bottom)
  );
}

function boxOf([[ax, ay], [bx, by]]: Leader): Box {
  return {
    ...{ left: Math.min(ax, bx), right: Math.max(ax, bx) },
    ...{ top: Math.min(ay, by), bottom: Math.max(ay, by) },
  };
}

/** Whether a box lies on a part of an outline. */
function covers(box: Box, outline: PlanePolygon): boolean {
  const corners = cornersOf(box);
  const own = polygonOf(corners);
  return (
    outline.xM.some((x, i) => isInside(own, x, outline.yM[i]!)) ||
    corners.some((corner, i) => pieceTouches(outline, ...corner, ...corners[(i + 1) % 4]!))
  );
}

function meet([a, b]: Leader, other: Leader | null): boolean {
  if (other === null || isBeside([a, b], boxOf(other))) return false;
  return piecesMeet(...a, ...b, ...other[0], ...other[1]) !== null;
}

function cornersOf({ left, right, top, bottom }: Box): readonly Spot[] {
  return [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
}

function polygonOf(spots: readonly Spot[]): PlanePolygon {
  return { xM: spots.map(([x]) => x), yM: spots.map(([, y]) => y) };
}

/** Places along the match lines of a drawing. */
function matchSpots(on: Parameters<typeof matchEnds>[0], { before, after }: OtherPages): Spot[] {
  return [
    ...(before === null ? [] : [on.frame.fromM]),
    ...(after === null ? [] : [on.frame.toM]),
  ].flatMap((atM) => {
    const ends = matchEnds(on, atM);
    return ends ? between(...ends) : [];
  });
}

function obstacleAt([x, y]: Spot, halfMm: number, cost = Infinity): Obstacle {
  return { left: x - halfMm, right: x + halfMm, top: y - halfMm, bottom: y + halfMm, cost };
}

function wallSpots(spots: readonly Spot[]): Spot[] {
  return spots.flatMap((from, i) => between(from, spots[(i + 1) % spots.length]!));
}

/** What a drawing shows of a path, a spot each millimetre. */
function spotsAlong(spots: readonly Spot[], { widthMm, heightMm }: PlanFrame): Spot[] {
  const isOn = ([x, y]: Spot) => x > 0 && y > 0 && x < widthMm && y < heightMm;
  return spots.slice(1).flatMap((to, i) => between(spots[i]!, to).filter(isOn));
}

/** Places a millimetre apart from one to before another; of what runs far off the drawing, so many. */
function between(from: Spot, to: Spot): Spot[] {
  const steps = Math.min(MOST_STEPS, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1])));
  return Array.from({ length: steps }, (_, k): Spot => {
    const share = k / steps;
    return [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
  });
}
