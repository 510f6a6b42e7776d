import { type PlaneLine, placeAt } from "../alignment.ts";
import { correlation, type ErrorModel, errorVariances } from "./error-model.ts";
import type { ErrorReading } from "./line-errors.ts";
import type { StationChance, SurveyFirst } from "./types.ts";

/** Most stations that are named. */
const MOST = 6;
/** Whether a place is over its limit is open where the share of grounds on which it is lies between these. Source: judgement. */
const OPEN = { least: 0.05, most: 0.95 } as const;
/** A station that tells less than this share of what is open about the bags is not named. Source: judgement. */
const LEAST_LEARNED = 0.05;

interface WhereInputs {
  readonly line: PlaneLine;
  readonly model: ErrorModel;
  readonly readings: readonly ErrorReading[];
  /** In the order of the line. */
  readonly chances: readonly StationChance[];
  /** Whether there is ground to level at each, not read yet. */
  readonly canSurvey: readonly boolean[];
  /** Fill that each station's stretch takes more for each metre that its ground is lower. */
  readonly m3PerM: Float64Array;
}

/**
 * Where to send the level first: the place of each stretch where it is most open whether the levee is over its
 * limit, then one by one the station that takes the most off the variance of the line's fill, given those before it
 * (the fill taken as straight in the errors of the ground).
 */
export function whereToSurvey(inputs: WhereInputs): SurveyFirst[] {
  const { chances, canSurvey, m3PerM } = inputs;
  const known = stationCovariance(inputs);
  const places = chances.map(({ chainageM }) => chainageM);
  for (const { chainageM } of inputs.readings) known.read(nearest(places, chainageM));
  const chosen: SurveyFirst[] = [];
  const choose = (k: number, because: SurveyFirst["because"]): void => {
    const { chainageM, overLimit } = chances[k]!;
    chosen.push({ chainageM, because, overLimit });
    known.read(k);
  };
  for (const k of openPlaces(chances, canSurvey).slice(0, MOST / 2)) choose(k, "limit");
  while (chosen.length < MOST) {
    const openM6 = known.varianceOf(m3PerM);
    const best = bestOf(canSurvey, (k) => known.learned(k, m3PerM));
    if (best < 0 || !(known.learned(best, m3PerM) > LEAST_LEARNED * openM6)) break;
    choose(best, "bags");
  }
  return chosen;
}

/** Of every run of stations where the limit is open, the one where it is most open; the most open first. */
function openPlaces(chances: readonly StationChance[], canSurvey: readonly boolean[]): number[] {
  const openness = ({ overLimit }: StationChance) => overLimit * (1 - overLimit);
  const found: number[] = [];
  let best = -1;
  for (let k = 0; k <= chances.length; k++) {
    const here = chances[k];
    const isOpen = here && here.overLimit > OPEN.least && here.overLimit < OPEN.most;
    if (!isOpen) {
      if (best >= 0) found.push(best);
      best = -1;
    } else if (canSurvey[k] && (best < 0 || openness(here) > openness(chances[best]!))) {
      best = k;
    }
  }
  return found.sort((a, b) => openness(chances[b]!) - openness(chances[a]!));
}

/** Covariance of the ground's errors at the stations, which narrows with every one that is read. */
function stationCovariance({ line, model, chances }: WhereInputs) {
  const n = chances.length;
  const { biasM2, correlatedM2, localM2 } = errorVariances(model);
  const places = chances.map(({ chainageM }) => placeAt(line, chainageM));
  const covariance = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const apartM = Math.hypot(places[i]!.xM - places[j]!.xM, places[i]!.yM - places[j]!.yM);
      covariance[i * n + j] = biasM2 + correlatedM2 * correlation(apartM, model.rangeM);
    }
  }
  const withWeights = (k: number, weights: Float64Array): number => {
    let sum = 0;
    for (let j = 0; j < n; j++) sum += covariance[k * n + j]! * weights[j]!;
    return sum;
  };
  /** Variance of a reading: what it tells of, and the cell's own error, which it cannot tell apart. */
  const readingM2 = (k: number): number => covariance[k * n + k]! + localM2;
  return {
    /** Takes the station as read. */
    read(k: number): void {
      const row = covariance.slice(k * n, (k + 1) * n);
      const m2 = readingM2(k);
      if (!(m2 > 0)) return;
      for (let i = 0; i < n; i++) {
        for (let j = 0; j < n; j++) covariance[i * n + j]! -= (row[i]! * row[j]!) / m2;
      }
    },
    /** How much of the variance of a weighted sum of the errors reading one station takes off. */
    learned: (k: number, weights: Float64Array) => withWeights(k, weights) ** 2 / readingM2(k),
    varianceOf: (weights: Float64Array) =>
      weights.reduce((sum, weight, k) => sum + weight * withWeights(k, weights), 0),
  };
}

function bestOf(canBe: readonly boolean[], scoreOf: (k: number) => number): number {
  let best = -1;
  let most = 0;
  for (let k = 0; k < canBe.length; k++) {
    const score = canBe[k] ? scoreOf(k) : 0;
    if (score > most) [best, most] = [k, score];
  }
  return best;
}

function nearest(placesM: readonly number[], atM: number): number {
  return bestOf(
    placesM.map(() => true),
    (k) => 1 / (1 + Math.abs(placesM[k]! - atM)),
  );
}
