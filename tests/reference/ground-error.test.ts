import { LuDecomposition, Matrix } from "ml-matrix";
import { describe, expect, it } from "vitest";
import { layLine } from "../../shared/alignment.ts";
import type { ErrorModel } from "../../shared/ground-uncertainty/error-model.ts";
import { type LineErrors, lineErrors } from "../../shared/ground-uncertainty/line-errors.ts";
import { openLine, PLANE, rectangle, ring } from "../helpers/grounds.ts";

const LENGTH_M = 300;
const STRAIGHT = layLine(
  openLine([
    [0, 0],
    [LENGTH_M, 0],
  ]),
  PLANE,
);
const DRAWS = 4000;
/** A variance estimated from n draws is off by a share of sqrt(2 / n) (normal theory); four times that. */
const TOLERANCE = 4 * Math.sqrt(2 / DRAWS);

const ALIKE: ErrorModel = { rmseM: 0.1, biasShare: 0, correlatedShare: 1, rangeM: 90 };
const MIXED: ErrorModel = { rmseM: 0.1, biasShare: 0.3, correlatedShare: 0.5, rangeM: 90 };

function drawer(model: ErrorModel, line = STRAIGHT, readings: readonly [number, number][] = []) {
  return lineErrors({
    ...{ line, model, cellM: 1, reachM: 2, seed: 7 },
    readings: readings.map(([chainageM, errorM]) => ({ chainageM, errorM })),
  });
}

/** The estimate and the departure that was drawn, at a chainage under the line. */
function errorAt(errors: LineErrors, drawn: LineErrors["mean"], chainageM: number): number {
  const half = (errors.across - 1) / 2;
  const along = errors.correlatedAt(chainageM);
  const own = errors.localAt(chainageM);
  return (
    drawn.bias +
    along.fromWeight * drawn.correlated[along.from]! +
    along.toWeight * drawn.correlated[along.to]! +
    errors.localSdAt(chainageM) *
      (own.fromWeight * drawn.local[own.from * errors.across + half]! +
        own.toWeight * drawn.local[own.to * errors.across + half]!)
  );
}

/** Values at places in many draws: a row for each draw. */
function drawnAt(errors: LineErrors, places: readonly number[]): number[][] {
  return Array.from({ length: DRAWS }, () => {
    const drawn = errors.draw();
    return places.map((atM) => errorAt(errors, drawn, atM));
  });
}

function covariance(rows: readonly (readonly number[])[], a: number, b: number): number {
  return rows.reduce((sum, row) => sum + row[a]! * row[b]!, 0) / rows.length;
}

const evenly = (count: number) =>
  Array.from({ length: count }, (_, k) => ((k + 0.5) * LENGTH_M) / count);
const meanOf = (values: readonly number[]) =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/**
 * Variance of the mean over a length of an error with exponential correlation exp(-d / scale), as a share of the
 * error's own. Source: Vanmarcke, Random Fields (1983), the variance function of the first-order autoregressive
 * process, from memory; it is the double integral of the correlation over the length.
 */
function varianceFunction(lengthM: number, scaleM: number): number {
  const t = lengthM / scaleM;
  return (2 * (t - 1 + Math.exp(-t))) / t ** 2;
}

describe("the mean of correlated errors along a line", () => {
  it("has the variance of the closed form", () => {
    const means = drawnAt(drawer(ALIKE), evenly(300)).map((row) => [meanOf(row)]);
    const closedM2 = 0.1 ** 2 * varianceFunction(LENGTH_M, ALIKE.rangeM / 3);
    expect(Math.abs(covariance(means, 0, 0) / closedM2 - 1)).toBeLessThan(TOLERANCE);
    // Errors twice as far alike would be told from these.
    const fartherM2 = 0.1 ** 2 * varianceFunction(LENGTH_M, (2 * ALIKE.rangeM) / 3);
    expect(Math.abs(covariance(means, 0, 0) / fartherM2 - 1)).toBeGreaterThan(TOLERANCE);
  });

  it("is that of the bias where all errors are the same", () => {
    const same = drawer({ ...MIXED, biasShare: 1, correlatedShare: 0 });
    for (const row of drawnAt(same, [0, 111, 300]).slice(0, 50)) {
      expect(row[1]).toBeCloseTo(row[0]!, 12);
      expect(row[2]).toBeCloseTo(row[0]!, 12);
    }
  });
});

describe("errors that are drawn", () => {
  // Between nodes and at them, near and far, on a line that turns back on itself.
  const bent = layLine(ring(rectangle(40, 10)), PLANE);
  const places = [0, 1.3, 12.7, 40, 95.5, 140.25, 199.9];
  const xy = [
    [-40, -10],
    [-38.7, -10],
    [-27.3, -10],
    [0, -10],
    [40, 5.5],
    [-0.25, 10],
    [-40, -9.9],
  ] as const;
  const rows = drawnAt(drawer(MIXED, bent), places);

  it("have at every place the variance of the RMSE", () => {
    for (const k of places.keys()) {
      expect(Math.abs(covariance(rows, k, k) / 0.1 ** 2 - 1)).toBeLessThan(TOLERANCE);
    }
  });

  it("are as alike as the model has it, by distance in the plane and not along the line", () => {
    for (const a of places.keys()) {
      for (let b = a + 1; b < places.length; b++) {
        const apartM = Math.hypot(xy[a]![0] - xy[b]![0], xy[a]![1] - xy[b]![1]);
        if (apartM < 2) continue;
        const modelM2 = 0.1 ** 2 * (0.3 + 0.5 * Math.exp((-3 * apartM) / 90));
        // Standard error of a covariance of normal values: sqrt((s^4 + c^2) / n).
        const errorM2 = Math.sqrt((0.1 ** 4 + modelM2 ** 2) / DRAWS);
        expect(Math.abs(covariance(rows, a, b) - modelM2)).toBeLessThan(4 * errorM2);
      }
    }
  });
});

describe("kriging through readings", () => {
  // Seven readings, differences of ground less elevation data, on 300 m.
  const readings: readonly [number, number][] = [
    [3, 0.08],
    [27, 0.11],
    [49.5, 0.02],
    [120, -0.04],
    [131.5, -0.05],
    [222, 0.15],
    [299, 0.03],
  ];
  const atM = [10, 27, 80, 125.5, 180, 260, 300];
  /** Covariance of the model between two places; a reading has its own cell, and 3 mm of the rod, to itself. */
  const model = (a: number, b: number) =>
    0.1 ** 2 * (0.3 + 0.5 * Math.exp((-3 * Math.abs(a - b)) / 90) + (a === b ? 0.2 : 0)) +
    (a === b ? 0.003 ** 2 : 0);
  const among = new Matrix(readings.map(([a]) => readings.map(([b]) => model(a, b))));
  const toPlaces = (atM: number) =>
    Matrix.columnVector(readings.map(([a]) => model(a, atM) - (a === atM ? 0.003 ** 2 : 0)));
  const solver = new LuDecomposition(among);

  it("estimates what a linear solver that is not ours gives", () => {
    const errors = drawer(MIXED, STRAIGHT, readings);
    const weights = solver.solve(Matrix.columnVector(readings.map(([, errorM]) => errorM)));
    for (const m of atM) {
      const expected = toPlaces(m).transpose().mmul(weights).get(0, 0);
      // What the interpolation between nodes a twentieth of the range apart leaves.
      expect(Math.abs(errors.estimateAt(m) - expected)).toBeLessThan(0.001);
    }
  });

  it("leaves the variance that the solver gives, and no other", () => {
    const errors = drawer(MIXED, STRAIGHT, readings);
    const rows = drawnAt(errors, atM);
    for (const [k, m] of atM.entries()) {
      const c = toPlaces(m);
      const told = c.transpose().mmul(solver.solve(c)).get(0, 0);
      const leftM2 = 0.1 ** 2 - told;
      if (leftM2 > 1e-4) {
        expect(Math.abs(covariance(rows, k, k) / leftM2 - 1)).toBeLessThan(TOLERANCE + 0.02);
      } else {
        // At a reading, what the rod leaves.
        expect(Math.sqrt(covariance(rows, k, k))).toBeLessThan(0.0035);
      }
    }
  });
});
