import { type PlaneLine, placeAt } from "../alignment.ts";
import {
  type AlongNodes,
  alongNodes,
  type Between,
  between,
  keepsVariance,
} from "./along-nodes.ts";
import { cholesky, solveCholesky, timesLower } from "./cholesky.ts";
import { correlation, type ErrorModel, errorVariances } from "./error-model.ts";
import { normals } from "./normals.ts";

/** Nodes of the correlated part in its range, where the line is short enough for that. */
const NODES_IN_RANGE = 20;
/** Most nodes of the correlated part: the work rises with their cube. */
const MOST_NODES = 400;
/** Most readings that errors are made to pass through; more are thinned evenly. */
const MOST_CONDITIONS = 400;
/** Standard deviation of a leveled reading, metres: a rod is read to 0.01 ft. Source: common practice, no source. */
const READING_SD_M = 0.003;
/** The same for elevation data that are hardly worse: this share of their RMSE. */
const READING_SD_SHARE = 0.03;

/** Ground read on the line: true ground less elevation data there, metres. */
export interface ErrorReading {
  readonly chainageM: number;
  /** Where it was read beside the line, metres to the left; left out on it. */
  readonly offsetM?: number;
  readonly errorM: number;
}

/** Errors of the ground's heights in the parts they are drawn in. True ground = elevation data + error. */
export interface ErrorParts {
  /** Metres. */
  bias: number;
  /** At the nodes along the line, metres. */
  readonly correlated: Float64Array;
  /** Of cells beside the line, in standard deviations: `along` times `across` values, row by row along it. */
  readonly local: Float64Array;
}

export interface LineErrorInputs {
  readonly line: PlaneLine;
  readonly model: ErrorModel;
  /** Size of a cell of the elevation data, metres. */
  readonly cellM: number;
  /** Farthest from the line on either side that a cell has an error of its own, metres. */
  readonly reachM: number;
  readonly readings: readonly ErrorReading[];
  readonly seed: number;
}

/** Errors along one line, given what was read there. */
export interface LineErrors {
  /** Nodes of the correlated part, and those of cells, beside a chainage. */
  correlatedAt(chainageM: number): Between;
  localAt(chainageM: number): Between;
  /**
   * Standard deviation of what is a place's own, metres: the cells' own part, and what the correlated part loses
   * between its nodes, so that the variance is the RMSE squared everywhere.
   */
  localSdAt(chainageM: number): number;
  /** Cells across the line; the middle one is under it. */
  readonly across: number;
  readonly cellM: number;
  /** The best estimate: simple kriging of the readings with the model's covariance; 0 without readings. */
  readonly mean: ErrorParts;
  /** The estimate at a chainage of the line, metres. */
  estimateAt(chainageM: number): number;
  /** Draws a departure from the estimate; its negative is as likely. Overwrites the one drawn before. */
  draw(): ErrorParts;
}

interface Condition {
  readonly correlated: Between;
  readonly local: Between;
  /** Cells across the line; without weight where none is held that far out. */
  readonly across: Between;
  readonly localSdM: number;
  /** Variance of what only this place has, and no node tells of, m2. */
  readonly ownM2: number;
}

/**
 * Prepares errors of a line's ground that pass through its readings: drawn without them, then moved by the kriged
 * difference (conditioning by kriging). Source: Journel and Huijbregts, Mining Geostatistics (1978), from memory.
 */
export function lineErrors(inputs: LineErrorInputs): LineErrors {
  const { line, model, cellM, reachM, seed } = inputs;
  const { rmseM, rangeM } = model;
  const { biasM2, correlatedM2, localM2 } = errorVariances(model);
  const spacingM = Math.max(rangeM / NODES_IN_RANGE, line.lengthM / (MOST_NODES - 1));
  const correlatedNodes = alongNodes(line, spacingM);
  const localNodes = alongNodes(line, cellM);
  const half = Math.max(1, Math.ceil(reachM / cellM));
  const across = 2 * half + 1;
  const { count } = correlatedNodes;
  const correlations = nodeCorrelations(line, correlatedNodes, rangeM);
  const correlatedAt = (chainageM: number) => between(correlatedNodes, chainageM);
  const localAt = (chainageM: number): Between => {
    const { from, to, fromWeight, toWeight } = between(localNodes, chainageM);
    const scale = keepsVariance(toWeight);
    return { from, to, fromWeight: scale * fromWeight, toWeight: scale * toWeight };
  };
  const localSdAt = (chainageM: number): number => {
    const { from, to, fromWeight, toWeight } = correlatedAt(chainageM);
    const lost = 2 * fromWeight * toWeight * (1 - correlations[from * count + to]!);
    return Math.sqrt(localM2 + correlatedM2 * lost);
  };
  const lower = cholesky(correlations, count);
  const readings = thinned(inputs.readings);
  /** Beside the line the correlated part follows that of the line as far as the two are alike. */
  const conditionAt = (chainageM: number, offsetM = 0): Condition => {
    const alike = correlation(Math.abs(offsetM), rangeM);
    const { from, to, fromWeight, toWeight } = correlatedAt(chainageM);
    const localSdM = localSdAt(chainageM);
    const cells = acrossAt(offsetM / cellM, half);
    const isHeld = cells.fromWeight + cells.toWeight > 0;
    return {
      correlated: { from, to, fromWeight: alike * fromWeight, toWeight: alike * toWeight },
      local: localAt(chainageM),
      across: cells,
      localSdM,
      ownM2: (1 - alike ** 2) * correlatedM2 + (isHeld ? 0 : localSdM ** 2),
    };
  };
  const conditions = readings.map(({ chainageM, offsetM }) => conditionAt(chainageM, offsetM));
  const m = conditions.length;
  // Covariance of each node of the correlated part with each reading.
  const toNodes = new Float64Array(count * m);
  for (let j = 0; j < m; j++) {
    const { from, to, fromWeight, toWeight } = conditions[j]!.correlated;
    for (let n = 0; n < count; n++) {
      const row = n * count;
      toNodes[n * m + j] =
        correlatedM2 *
        (fromWeight * correlations[row + from]! + toWeight * correlations[row + to]!);
    }
  }
  const readingSdM = Math.min(READING_SD_M, READING_SD_SHARE * rmseM);
  const among = new Float64Array(m * m);
  for (let i = 0; i < m; i++) {
    const here = conditions[i]!;
    const { from, to, fromWeight, toWeight } = here.correlated;
    for (let j = 0; j < m; j++) {
      among[i * m + j] =
        biasM2 +
        fromWeight * toNodes[from * m + j]! +
        toWeight * toNodes[to * m + j]! +
        here.localSdM *
          conditions[j]!.localSdM *
          shared(here.local, conditions[j]!.local) *
          shared(here.across, conditions[j]!.across) +
        (i === j ? readingSdM ** 2 + here.ownM2 : 0);
    }
  }
  const amongLower = cholesky(among, m);
  const weights = new Float64Array(m);

  /** The cells that a condition lies between, with the share of each. */
  const eachCell = (
    { local, across: cells }: Condition,
    take: (cell: number, share: number) => void,
  ): void => {
    take(local.from * across + cells.from, local.fromWeight * cells.fromWeight);
    take(local.to * across + cells.from, local.toWeight * cells.fromWeight);
    if (cells.toWeight === 0) return;
    take(local.from * across + cells.to, local.fromWeight * cells.toWeight);
    take(local.to * across + cells.to, local.toWeight * cells.toWeight);
  };

  /** Moves errors by what their readings are off by: `off` is reading less error, and is overwritten. */
  const moveBy = (parts: ErrorParts, off: Float64Array): void => {
    solveCholesky(amongLower, m, off, weights);
    for (let j = 0; j < m; j++) {
      const weight = weights[j]!;
      const { localSdM } = conditions[j]!;
      parts.bias += biasM2 * weight;
      eachCell(conditions[j]!, (cell, share) => {
        parts.local[cell]! += localSdM * share * weight;
      });
    }
    for (let n = 0; n < count; n++) {
      let sum = 0;
      for (let j = 0; j < m; j++) sum += toNodes[n * m + j]! * weights[j]!;
      parts.correlated[n]! += sum;
    }
  };
  const errorAt = (parts: ErrorParts, condition: Condition): number => {
    const { correlated, localSdM } = condition;
    let own = 0;
    eachCell(condition, (cell, share) => {
      own += share * parts.local[cell]!;
    });
    return (
      parts.bias +
      correlated.fromWeight * parts.correlated[correlated.from]! +
      correlated.toWeight * parts.correlated[correlated.to]! +
      localSdM * own
    );
  };

  const noErrors = (): ErrorParts => ({
    bias: 0,
    correlated: new Float64Array(count),
    local: new Float64Array(localNodes.count * across),
  });
  const mean = noErrors();
  if (m > 0)
    moveBy(
      mean,
      Float64Array.from(readings, ({ errorM }) => errorM),
    );

  const estimateAt = (chainageM: number) => errorAt(mean, conditionAt(chainageM));

  const normal = normals(seed);
  const drawn = noErrors();
  const white = new Float64Array(count);
  const off = new Float64Array(m);
  const biasSdM = Math.sqrt(biasM2);
  const correlatedSdM = Math.sqrt(correlatedM2);
  const draw = (): ErrorParts => {
    drawn.bias = biasSdM * normal();
    for (let n = 0; n < count; n++) white[n] = correlatedSdM * normal();
    timesLower(lower, count, white, drawn.correlated);
    for (let n = 0; n < drawn.local.length; n++) drawn.local[n] = normal();
    if (m > 0) {
      for (let j = 0; j < m; j++) {
        const sdM = Math.sqrt(readingSdM ** 2 + conditions[j]!.ownM2);
        off[j] = sdM * normal() - errorAt(drawn, conditions[j]!);
      }
      moveBy(drawn, off);
    }
    return drawn;
  };
  return { correlatedAt, localAt, localSdAt, across, cellM, mean, draw, estimateAt };
}

/** The cells across a line beside a place so many cells to its left; without weight beyond the last. */
function acrossAt(cells: number, half: number): Between {
  const place = cells + half;
  const from = Math.min(Math.max(Math.floor(place), 0), 2 * half - 1);
  if (place < 0 || place > 2 * half) return { from, to: from + 1, fromWeight: 0, toWeight: 0 };
  const share = place - from;
  const scale = keepsVariance(share);
  return { from, to: from + 1, fromWeight: scale * (1 - share), toWeight: scale * share };
}

function nodeCorrelations(
  line: PlaneLine,
  { count, spacingM }: AlongNodes,
  rangeM: number,
): Float64Array {
  const places = Array.from({ length: count }, (_, n) => placeAt(line, n * spacingM));
  const correlations = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j <= i; j++) {
      const [a, b] = [places[i]!, places[j]!];
      const value = correlation(Math.hypot(a.xM - b.xM, a.yM - b.yM), rangeM);
      correlations[i * count + j] = value;
      correlations[j * count + i] = value;
    }
  }
  return correlations;
}

/** Sum over the nodes that two places have in common of the products of their weights. */
function shared(a: Between, b: Between): number {
  return (
    (a.from === b.from ? a.fromWeight * b.fromWeight : 0) +
    (a.from === b.to ? a.fromWeight * b.toWeight : 0) +
    (a.to === b.from ? a.toWeight * b.fromWeight : 0) +
    (a.to === b.to ? a.toWeight * b.toWeight : 0)
  );
}

function thinned(readings: readonly ErrorReading[]): readonly ErrorReading[] {
  if (readings.length <= MOST_CONDITIONS) return readings;
  const every = readings.length / MOST_CONDITIONS;
  return Array.from({ length: MOST_CONDITIONS }, (_, k) => readings[Math.floor(k * every)]!);
}
