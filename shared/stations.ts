import { cornerChainages, type PlaneLine, placeAt } from "./alignment.ts";
import { type Stretch, stretchesOf } from "./checks/stretch.ts";
import { cutReach } from "./cut-reach.ts";
import { builtAt, type CutWalk, leastHeight } from "./cut-walk.ts";
import type { GroundSampler } from "./ground.ts";
import { HEIGHT_CLASSES, heightClass } from "./height-class.ts";
import { breaksInside, type LineSamples } from "./line-samples.ts";
import type { Plan } from "./plan.ts";
import type { PlanPlane } from "./plan-plane.ts";
import { bagsAcrossFor, bagsPlacedFor, coursesFor } from "./quantities.ts";
import { type Cut, emptyCut } from "./section.ts";
import { reachAt, reserveM } from "./sections/built-reach.ts";
import type { Station, StationReason } from "./sizing-types.ts";
import type { SurfaceAt } from "./stage.ts";
import { groundFrom, type SurveyedGround, surveyRaises } from "./survey/surveyed-ground.ts";
import { turnsOf } from "./turns.ts";

/** The ground turns where it rises or falls by more than this from a local low or high. Source: judgement. */
const TURN_M = 0.1;
/** Stations closer than this are one; the reason that comes first in this order stays. */
const SAME_M = 0.01;
/** The highest place, an end of what is over the limit, or a reading this near to another station is that one, metres. */
const NEAR_M = 0.3;
const NEAR: ReadonlySet<StationReason> = new Set(["highest", "over", "reading"]);
/** Higher than the limit by less is at it. */
const SLACK_M = 1e-9;
const RANK: readonly StationReason[] = [
  ...(["start", "end", "corner", "reach", "gap"] as const),
  ...(["highest", "over", "turn", "interval", "reading"] as const),
];

interface Mark {
  readonly chainageM: number;
  readonly reason: StationReason;
}

/** Everything stations are made from. */
export interface StationInputs {
  readonly plan: Plan;
  readonly line: PlaneLine;
  readonly breaksM: readonly number[];
  readonly samples: LineSamples;
  readonly cuts: CutWalk;
  readonly ground: GroundSampler;
  readonly plane: PlanPlane;
  readonly surface: SurfaceAt;
  /** Side the water stands on: left (+1) or right (-1) of chainage. */
  readonly waterSide: 1 | -1;
  /** Which of the ground was read in the field. */
  readonly surveyed: SurveyedGround | null;
}

/**
 * Stations at the interval, at every corner and reach break, where the ground turns or was read in the field, where
 * the line is highest, at both ends of every stretch over its height limit and at its highest place, and at both edges
 * of every gap in the ground, be it at the centre line or under the base only; a ring has its closing station at the
 * length. Each has its own cut across, on the leg and in the section that leave it.
 */
export function stationsOf(inputs: StationInputs): Station[] {
  const cut = emptyCut();
  const raiseM = surveyRaises(inputs.surveyed);
  const over = overStretches(inputs);
  const overEndsM = over.flatMap(({ parts }) => parts.flatMap(({ fromM, toM }) => [fromM, toM]));
  const isOverEnd = ({ chainageM }: Mark) =>
    overEndsM.some((endM) => Math.abs(endM - chainageM) < NEAR_M);
  return marksOf(inputs, over, overEndsM).map((mark) => {
    const station = stationAt(mark, inputs, cut, raiseM);
    return isOverEnd(mark) && station.heightM !== null
      ? { ...station, isOverLimit: true }
      : station;
  });
}

/** Stretches over the limit of what is built there, as the checks have them. */
function overStretches({ plan, line, samples, cuts }: StationInputs): Stretch[] {
  const excessM = (i: number) => leastHeight(cuts, i) - builtAt(cuts, i).limitM - SLACK_M;
  return stretchesOf(samples, line.closed, plan.practice.stationIntervalM, excessM);
}

function marksOf(
  { plan, line, breaksM, samples, cuts, surveyed }: StationInputs,
  over: readonly Stretch[],
  overEndsM: readonly number[],
): Mark[] {
  const marks: Mark[] = [
    { chainageM: 0, reason: "start" },
    { chainageM: line.lengthM, reason: "end" },
  ];
  const add = (chainageM: number, reason: StationReason) => marks.push({ chainageM, reason });
  for (const chainageM of cornerChainages(line)) add(chainageM, "corner");
  for (const chainageM of breaksInside(line, breaksM)) add(chainageM, "reach");
  for (const turn of turnsOf(cuts.groundM, TURN_M, line.closed)) {
    add(samples.chainageM[turn.index]!, "turn");
  }
  for (const values of [cuts.groundM, cuts.areaM2]) {
    for (const sample of gapEdges(values)) add(samples.chainageM[sample]!, "gap");
  }
  for (const endM of overEndsM) add(endM, "over");
  for (const sample of [highestSample(cuts), ...over.map(({ worst }) => worst)]) {
    if (sample >= 0) add(samples.chainageM[sample]!, "highest");
  }
  for (const { chainageM } of surveyed?.readings ?? []) add(chainageM, "reading");
  const { stationIntervalM } = plan.practice;
  const steps = Math.floor(line.lengthM / stationIntervalM + 1e-9);
  for (let k = 1; k <= steps; k++) add(k * stationIntervalM, "interval");
  return withoutDoubles(marks);
}

/** Where the line is highest; -1 where nothing is built. */
function highestSample({ greatestHeightM }: CutWalk): number {
  let highest = -1;
  greatestHeightM.forEach((m, i) => {
    if (m > (highest < 0 ? 0 : greatestHeightM[highest]!)) highest = i;
  });
  return highest;
}

/** First and last index of every run of values that are not known. */
function gapEdges(values: Float64Array): number[] {
  const edges: number[] = [];
  for (let i = 0; i < values.length; i++) {
    if (!Number.isNaN(values[i]!)) continue;
    const isFirst = i === 0 || !Number.isNaN(values[i - 1]!);
    const isLast = i + 1 === values.length || !Number.isNaN(values[i + 1]!);
    if (isFirst || isLast) edges.push(i);
  }
  return edges;
}

function withoutDoubles(marks: Mark[]): Mark[] {
  const kept: Mark[] = [];
  for (const mark of marks.sort((a, b) => a.chainageM - b.chainageM)) {
    const before = kept.at(-1);
    const isNear = NEAR.has(mark.reason) || (before !== undefined && NEAR.has(before.reason));
    const sameM = isNear ? NEAR_M : SAME_M;
    const same = before !== undefined && mark.chainageM - before.chainageM < sameM;
    if (!same) kept.push(mark);
    else if (RANK.indexOf(mark.reason) < RANK.indexOf(before.reason)) kept.splice(-1, 1, mark);
  }
  return kept;
}

function stationAt(
  { chainageM, reason }: Mark,
  inputs: StationInputs,
  cut: Cut,
  raiseM: (chainageM: number) => number,
): Station {
  const { plan, line, plane, ground, surface, waterSide, breaksM, cuts, surveyed } = inputs;
  const { section } = plan;
  const reach = cuts.reaches[reachAt(breaksM, chainageM)]!;
  const { xM, yM, leftX, leftY } = placeAt(line, chainageM);
  const waterM = surface(xM, yM);
  const crestM = waterM + plan.water.freeboardM;
  const shiftM = raiseM(chainageM);
  cutReach(cut, ground, reach, waterSide, { xM, yM, leftX, leftY, crestM, shiftM });
  const [lon, lat] = plane.toLonLat(xM, yM);
  const from = groundFrom(surveyed, chainageM);
  const base = {
    ...{ chainageM, lon, lat, reason, waterM, crestM },
    ...(from === null ? {} : { groundFrom: from }),
  };
  const groundM = known(cut.groundM);
  const heightM = known(cut.heightM);
  if (Number.isNaN(cut.areaM2)) return { ...base, ...UNKNOWN, groundM, heightM };
  const greatestHeightM = cut.heightM > 0 ? crestM - cut.lowestM : 0;
  const baseM = cut.toeLeftM + cut.toeRightM;
  const [toeWatersideM, toeLandsideM] =
    waterSide === 1 ? [cut.toeLeftM, cut.toeRightM] : [cut.toeRightM, cut.toeLeftM];
  const isOfBags = reach.section.fill === "bags";
  return {
    ...base,
    groundM,
    heightM,
    lowestGroundM: cut.lowestM,
    greatestHeightM,
    baseM,
    toeWatersideM,
    toeLandsideM,
    isOverLimit: heightClass(greatestHeightM, reach.limitM) === HEIGHT_CLASSES - 1,
    sectionAreaM2: cut.areaM2,
    courses: isOfBags ? coursesFor(cut.heightM, section) : null,
    coursesAtLowToe: isOfBags ? coursesFor(greatestHeightM, section) : null,
    bagsAcrossBase: isOfBags ? bagsAcrossFor(baseM, section) : null,
    bagsPerM: isOfBags ? bagsPlacedFor(cut.areaM2, section) : 0,
    raiseToM: known(reserveM(reach, cut.heightM, greatestHeightM, plan)),
  };
}

const UNKNOWN = {
  lowestGroundM: null,
  greatestHeightM: null,
  baseM: null,
  toeWatersideM: null,
  toeLandsideM: null,
  isOverLimit: null,
  sectionAreaM2: null,
  courses: null,
  coursesAtLowToe: null,
  bagsAcrossBase: null,
  bagsPerM: null,
  raiseToM: null,
};

function known(value: number): number | null {
  return Number.isNaN(value) ? null : value;
}
