import type { GroundSettings } from "../plan.ts";

/**
 * How the error of elevation data is made up. Its variance at any one place is `rmseM` squared: a part that is the same
 * over the whole survey, a part that is alike within a distance, and a part of each cell's own.
 */
export interface ErrorModel {
  readonly rmseM: number;
  /** Shares of the variance, 0 to 1; what the two leave is each cell's own. */
  readonly biasShare: number;
  readonly correlatedShare: number;
  /** Distance at which the correlation of the correlated part is down to 5 %, metres. */
  readonly rangeM: number;
}

/** Variances of the three parts, m2; they add up to the RMSE squared. */
export interface ErrorVariances {
  readonly biasM2: number;
  readonly correlatedM2: number;
  readonly localM2: number;
}

/** @param rmseM accuracy the elevation data are taken to have */
export function errorModel(settings: GroundSettings, rmseM: number): ErrorModel {
  const { biasShare, correlatedShare, rangeM } = settings;
  return { rmseM, biasShare, correlatedShare, rangeM };
}

export function errorVariances({ rmseM, biasShare, correlatedShare }: ErrorModel): ErrorVariances {
  const wholeM2 = rmseM ** 2;
  return {
    biasM2: biasShare * wholeM2,
    correlatedM2: correlatedShare * wholeM2,
    localM2: Math.max(0, 1 - biasShare - correlatedShare) * wholeM2,
  };
}

/**
 * Correlation of the correlated part between two places: exp(-3 d / range), the exponential model with its practical
 * range, which is valid in the plane. Source: Isaaks and Srivastava, An Introduction to Applied Geostatistics (1989),
 * from memory.
 */
export function correlation(distanceM: number, rangeM: number): number {
  return distanceM === 0 ? 1 : Math.exp((-3 * distanceM) / rangeM);
}
