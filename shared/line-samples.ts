import type { PlaneLine } from "./alignment.ts";
import { refusal } from "./failure.ts";
import type { PlanPlane } from "./plan-plane.ts";
import type { SurfaceAt } from "./stage.ts";

/**
 * Where the fine walk along a line goes, before any ground is read. Every corner and every reach break is
 * hit exactly. A corner is there twice, with the normal of the leg that ends and of the leg that starts,
 * so that no sample cuts across on a bisector and the line may be walked either way with the same result.
 */
export interface LineSamples {
  readonly count: number;
  readonly chainageM: Float64Array;
  readonly xM: Float64Array;
  readonly yM: Float64Array;
  /** Unit normal to the left, interleaved east, north. */
  readonly leftNormal: Float64Array;
  readonly leg: Uint16Array;
  readonly waterM: Float64Array;
  readonly crestM: Float64Array;
  /** By how much the ground was read higher in the field than the elevation data have it; 0 where it was not read. */
  readonly surveyRaiseM: Float64Array;
  /** Straight pieces between corners and reach breaks, each an even number of equal steps. */
  readonly pieces: readonly SamplePiece[];
  /** Longest step, metres. */
  readonly stepM: number;
}

/** Samples `first` to `last` of a line, both included; `reach` counts the reaches from 0. */
export interface SamplePiece {
  readonly first: number;
  readonly last: number;
  readonly reach: number;
}

interface PiecePlan {
  readonly leg: number;
  readonly fromM: number;
  readonly toM: number;
  readonly steps: number;
  readonly reach: number;
  /** True where the piece goes on from the last sample of the one before. */
  readonly joined: boolean;
}

const MOST_SAMPLES = 400_000;
/** Pieces shorter than this have no samples of their own. */
const LEAST_PIECE_M = 1e-6;

/** Whether a reach, counted from 0, is built otherwise than the one before it. */
export type Parted = (reach: number) => boolean;

/**
 * Lays out the walk with steps no longer than `stepM`. Breaks outside the line are left out. The sample at a
 * break is there twice, like a corner's, where the reach that begins is `parted` from the one that ends.
 * Throws a `Refusal` where the line is too long to be walked at that step.
 */
export function sampleLine(
  line: PlaneLine,
  breaksM: readonly number[],
  stepM: number,
  surface: SurfaceAt,
  freeboardM: number,
  parted: Parted = () => false,
): LineSamples {
  const plans = planPieces(line, breaksM, stepM, parted);
  const count = plans.reduce((sum, piece) => sum + piece.steps + (piece.joined ? 0 : 1), 0);
  const samples = {
    count,
    chainageM: new Float64Array(count),
    xM: new Float64Array(count),
    yM: new Float64Array(count),
    leftNormal: new Float64Array(2 * count),
    leg: new Uint16Array(count),
    waterM: new Float64Array(count),
    crestM: new Float64Array(count),
    surveyRaiseM: new Float64Array(count),
    pieces: [] as SamplePiece[],
    stepM: plans.reduce((most, each) => Math.max(most, (each.toM - each.fromM) / each.steps), 0),
  };
  let next = 0;
  for (const piece of plans) {
    const first = piece.joined ? next - 1 : next;
    layPiece(samples, line, piece, first);
    next = first + piece.steps + 1;
    samples.pieces.push({ first, last: next - 1, reach: piece.reach });
  }
  for (let i = 0; i < count; i++) {
    const waterM = surface(samples.xM[i]!, samples.yM[i]!);
    samples.waterM[i] = waterM;
    samples.crestM[i] = waterM + freeboardM;
  }
  return samples;
}

/** Breaks that lie strictly inside the line, in order. */
export function breaksInside(line: PlaneLine, breaksM: readonly number[]): number[] {
  const inside = breaksM.filter((m) => m > LEAST_PIECE_M && m < line.lengthM - LEAST_PIECE_M);
  return [...new Set(inside)].sort((a, b) => a - b);
}

function planPieces(
  line: PlaneLine,
  breaksM: readonly number[],
  stepM: number,
  parted: Parted,
): PiecePlan[] {
  const needed = line.lengthM / stepM;
  if (!(needed < MOST_SAMPLES)) {
    const { lengthM } = line;
    throw refusal("line/too-long", { mostM: MOST_SAMPLES * stepM, lengthM });
  }
  const breaks = breaksInside(line, breaksM);
  const pieces: PiecePlan[] = [];
  for (let leg = 0; leg < line.legs; leg++) {
    const startM = line.chainageM[leg]!;
    const endM = line.chainageM[leg + 1]!;
    const within = breaks.filter((m) => m > startM + LEAST_PIECE_M && m < endM - LEAST_PIECE_M);
    const marks = [startM, ...within, endM];
    for (let i = 0; i + 1 < marks.length; i++) {
      const fromM = marks[i]!;
      const toM = marks[i + 1]!;
      if (toM - fromM < LEAST_PIECE_M) continue;
      const middleM = (fromM + toM) / 2;
      const reach = breaks.filter((m) => m < middleM).length;
      pieces.push({
        leg,
        fromM,
        toM,
        steps: 2 * Math.ceil((toM - fromM) / (2 * stepM) - 1e-9),
        reach,
        joined: i > 0 && !parted(reach),
      });
    }
  }
  return pieces;
}

function layPiece(samples: LineSamples, line: PlaneLine, piece: PiecePlan, first: number): void {
  const { leg, fromM, toM, steps } = piece;
  const legStartM = line.chainageM[leg]!;
  const legM = line.chainageM[leg + 1]! - legStartM;
  const eastward = (line.xM[leg + 1]! - line.xM[leg]!) / legM;
  const northward = (line.yM[leg + 1]! - line.yM[leg]!) / legM;
  for (let k = 0; k <= steps; k++) {
    const i = first + k;
    const chainageM = k === steps ? toM : fromM + ((toM - fromM) * k) / steps;
    const alongM = chainageM - legStartM;
    samples.chainageM[i] = chainageM;
    samples.xM[i] = line.xM[leg]! + eastward * alongM;
    samples.yM[i] = line.yM[leg]! + northward * alongM;
    samples.leftNormal[2 * i] = -northward;
    samples.leftNormal[2 * i + 1] = eastward;
    samples.leg[i] = leg;
  }
}

/** Longest stretch whose longitudes and latitudes are filled in by straight lines: off by < 1 mm. */
const CONVERT_EVERY_M = 100;

/** Longitudes and latitudes of a line, interleaved: 2 n values. */
export function samplesLonLat(samples: LineSamples, plane: PlanPlane): Float64Array {
  const lonLat = new Float64Array(2 * samples.count);
  const every = Math.max(1, Math.floor(CONVERT_EVERY_M / samples.stepM));
  for (const { first, last } of samples.pieces) {
    let from = plane.toLonLat(samples.xM[first]!, samples.yM[first]!);
    for (let start = first; start < last; start += every) {
      const end = Math.min(last, start + every);
      const to = plane.toLonLat(samples.xM[end]!, samples.yM[end]!);
      fillBetween(lonLat, start, end, from, to);
      from = to;
    }
  }
  return lonLat;
}

function fillBetween(
  lonLat: Float64Array,
  start: number,
  end: number,
  from: readonly [number, number],
  to: readonly [number, number],
): void {
  const acrossDateLine = Math.abs(to[0] - from[0]) > 180;
  const east = acrossDateLine ? Math.sign(from[0]) * 360 + to[0] : to[0];
  for (let i = start; i <= end; i++) {
    const share = (i - start) / (end - start);
    const lon = from[0] + (east - from[0]) * share;
    lonLat[2 * i] = lon > 180 ? lon - 360 : lon < -180 ? lon + 360 : lon;
    lonLat[2 * i + 1] = from[1] + (to[1] - from[1]) * share;
  }
}
