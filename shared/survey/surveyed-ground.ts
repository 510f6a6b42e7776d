import { type PlaneLine, placeAt } from "../alignment.ts";
import type { GroundSampler } from "../ground.ts";
import type { Plan } from "../plan.ts";
import type { PlanPlane } from "../plan-plane.ts";
import { surveyOf } from "./leveling.ts";

/** A reading counts for a line that passes within this of it, metres (2 ft). Source: judgement, two bag lengths. */
const ON_LINE_M = 0.61;
/** A reading farther from the line says too little of it, metres (50 ft). Source: judgement. */
const BESIDE_LINE_M = 15.24;
/** Between two readings the ground is theirs where no more than this many station intervals part them. Source: judgement. */
const MOST_INTERVALS = 2;
const SLACK_M = 0.02;

/** Ground read at a station of a line, beside the elevation data there, metres. */
interface UsedReading {
  readonly chainageM: number;
  readonly readM: number;
  readonly dataM: number;
}

/** The same beside the line: it tells of the elevation data's error there, and changes no height. */
interface BesideReading extends UsedReading {
  /** Positive to the left of rising chainage, metres. */
  readonly offsetM: number;
}

/** Which ground of a line was read in the field. Plain data. */
export interface SurveyedGround {
  /** By chainage, each once. */
  readonly readings: readonly UsedReading[];
  /** Where readings follow on one another closely enough; on a ring the last may end beyond the length. */
  readonly stretches: readonly { readonly fromM: number; readonly toM: number }[];
  /** Near the line but not on it. */
  readonly beside?: readonly BesideReading[];
  /** Readings of the plan that no stake of this line is near, those beside it too. */
  readonly offLine: number;
  /** Chainages of readings where there is no elevation data beside them, so that they change nothing. */
  readonly withoutDataM: readonly number[];
  /** Farthest apart that two readings may be for the ground between them to be theirs, metres. */
  readonly mostApartM: number;
  /** Length of a ring, on which the last reading is followed by the first; null for a line with two ends. */
  readonly aroundM: number | null;
}

interface SurveyedInputs {
  readonly plan: Plan;
  readonly line: PlaneLine;
  readonly plane: PlanPlane;
  readonly ground: GroundSampler;
}

/** The readings of the plan that belong to a line; null where the plan has none. */
export function surveyedGround(inputs: SurveyedInputs): SurveyedGround | null {
  const { plan, line, plane, ground } = inputs;
  const { readings } = surveyOf(plan);
  if (readings.length === 0) return null;
  const found = new Map<number, UsedReading>();
  const withoutDataM: number[] = [];
  const beside: BesideReading[] = [];
  let offLine = 0;
  for (const { at, groundM } of readings) {
    const [x, y] = plane.toPlane(at);
    const near = nearestOn(line, x, y);
    if (near.awayM > ON_LINE_M) {
      offLine++;
      const here = placeAt(line, near.chainageM);
      const dataM = ground.heightAt(x, y);
      if (near.awayM <= BESIDE_LINE_M && !Number.isNaN(dataM)) {
        const offsetM = (x - here.xM) * here.leftX + (y - here.yM) * here.leftY;
        beside.push({ chainageM: near.chainageM, offsetM, readM: groundM, dataM });
      }
      continue;
    }
    const place = placeAt(line, near.chainageM);
    const dataM = ground.heightAt(place.xM, place.yM);
    const chainageM = onRing(near.chainageM, line);
    if (Number.isNaN(dataM)) withoutDataM.push(chainageM);
    else found.set(Math.round(chainageM / SLACK_M), { chainageM, readM: groundM, dataM });
  }
  const used = [...found.values()].sort((a, b) => a.chainageM - b.chainageM);
  const mostApartM = MOST_INTERVALS * plan.practice.stationIntervalM + SLACK_M;
  const rules = { mostApartM, aroundM: line.closed ? line.lengthM : null };
  return {
    ...{ readings: used, beside, offLine, withoutDataM, ...rules },
    stretches: stretchesOf(used, rules),
  };
}

/**
 * By how much the ground of the elevation data is raised at a chainage, metres: at a reading by its difference,
 * between two that are near enough by a straight line from one difference to the other, elsewhere not at all.
 */
export function surveyRaises(surveyed: SurveyedGround | null): (chainageM: number) => number {
  if (!surveyed) return () => 0;
  const { aroundM } = surveyed;
  const pairs = pairsOf(surveyed.readings, surveyed);
  const between = (atM: number): number | null => {
    const pair = pairs.find(([from, to]) => atM >= from.chainageM && atM <= to.chainageM);
    if (!pair) return null;
    const [from, to] = pair;
    const share = (atM - from.chainageM) / (to.chainageM - from.chainageM);
    return raiseOf(from) + share * (raiseOf(to) - raiseOf(from));
  };
  return (chainageM) => {
    const own = between(chainageM) ?? (aroundM === null ? null : between(chainageM + aroundM));
    if (own !== null) return own;
    const here = readingAt(surveyed, chainageM);
    return here ? raiseOf(here) : 0;
  };
}

/** Where the ground at a chainage comes from: null where it is the elevation data's. */
export function groundFrom(
  surveyed: SurveyedGround | null,
  chainageM: number,
): "reading" | "between" | null {
  if (!surveyed) return null;
  if (readingAt(surveyed, chainageM)) return "reading";
  const { stretches, aroundM } = surveyed;
  const isIn = (atM: number) => stretches.some(({ fromM, toM }) => atM >= fromM && atM <= toM);
  const isBetween = isIn(chainageM) || (aroundM !== null && isIn(chainageM + aroundM));
  return isBetween ? "between" : null;
}

function readingAt({ readings, aroundM }: SurveyedGround, chainageM: number): UsedReading | null {
  const isHere = (m: number) =>
    Math.abs(m - chainageM) < SLACK_M ||
    (aroundM !== null && Math.abs(m + aroundM - chainageM) < SLACK_M);
  return readings.find((each) => isHere(each.chainageM)) ?? null;
}

function raiseOf({ readM, dataM }: UsedReading): number {
  return readM - dataM;
}

type Rules = Pick<SurveyedGround, "mostApartM" | "aroundM">;

function pairsOf(
  used: readonly UsedReading[],
  { mostApartM, aroundM }: Rules,
): readonly (readonly [UsedReading, UsedReading])[] {
  const first = used[0];
  const again =
    first && aroundM !== null && used.length > 1
      ? [{ ...first, chainageM: first.chainageM + aroundM }]
      : [];
  const around = [...used, ...again];
  return around.slice(1).flatMap((to, i) => {
    const from = around[i]!;
    return to.chainageM - from.chainageM <= mostApartM ? [[from, to] as const] : [];
  });
}

function stretchesOf(used: readonly UsedReading[], rules: Rules): SurveyedGround["stretches"] {
  const stretches: { fromM: number; toM: number }[] = [];
  for (const [from, to] of pairsOf(used, rules)) {
    const last = stretches.at(-1);
    if (last && last.toM === from.chainageM) last.toM = to.chainageM;
    else stretches.push({ fromM: from.chainageM, toM: to.chainageM });
  }
  return stretches;
}

/** A ring's end is its start. */
function onRing(chainageM: number, line: PlaneLine): number {
  return line.closed && line.lengthM - chainageM < SLACK_M ? 0 : chainageM;
}

function nearestOn(line: PlaneLine, x: number, y: number) {
  let near = { chainageM: 0, awayM: Number.POSITIVE_INFINITY };
  for (let leg = 0; leg < line.legs; leg++) {
    const [aX, aY] = [line.xM[leg]!, line.yM[leg]!];
    const [alongX, alongY] = [line.xM[leg + 1]! - aX, line.yM[leg + 1]! - aY];
    const lengthM = Math.hypot(alongX, alongY);
    if (lengthM === 0) continue;
    const raw = ((x - aX) * alongX + (y - aY) * alongY) / lengthM ** 2;
    const share = Math.min(1, Math.max(0, raw));
    const awayM = Math.hypot(x - aX - share * alongX, y - aY - share * alongY);
    if (awayM < near.awayM) near = { chainageM: line.chainageM[leg]! + share * lengthM, awayM };
  }
  return near;
}
