import type { GroundSampler } from "../ground.ts";
import type { LineSamples } from "../line-samples.ts";
import { type Between, keepsVariance } from "./along-nodes.ts";
import type { ErrorParts, LineErrors } from "./line-errors.ts";
import type { StripGround } from "./strip-ground.ts";

/** {@link keepsVariance} of every share there is, in steps so small that no height changes by 1 in 1,000 of the error. */
const KEPT = 1024;
const KEEPS = Float64Array.from({ length: KEPT + 1 }, (_, k) => keepsVariance(k / KEPT));

/** A ground with one drawn error added, cut across at the samples of a line. */
export interface FieldGround {
  /** Error at the centre of every sample, but for the cell's own part, metres: what the whole cut is raised by. */
  readonly raiseM: Float64Array;
  /** Sets the error: estimate plus `sign` times the departure. */
  set(departure: ErrorParts, sign: 1 | -1): void;
  /** The ground with the cells' own errors for the cut at a sample, until the next call; a hole stays NaN. */
  at(sample: number): GroundSampler;
}

/** @param strip the same ground, held across the samples of a line */
export function fieldGround(
  samples: LineSamples,
  ground: GroundSampler,
  strip: StripGround,
  errors: LineErrors,
): FieldGround {
  const { count, chainageM, xM, yM, leftNormal } = samples;
  const { mean, across, cellM } = errors;
  const correlated = sampleWeights(chainageM, errors.correlatedAt);
  const local = sampleWeights(chainageM, errors.localAt);
  const localSdM = chainageM.map(errors.localSdAt);
  const raiseM = new Float64Array(count);
  const cells = new Float64Array(mean.local.length);
  const row = new Float64Array(across);
  const half = (across - 1) / 2;
  const cellsPerM = 1 / cellM;
  const last = across - 1;
  const held = strip.heightsM;
  const lastHeld = strip.across - 1;
  const { perMetre } = strip;
  /** Of the sample that is cut: x, y, its normal to the left, and where its heights begin. */
  const here = new Float64Array(5);

  const heightAt = (x: number, y: number): number => {
    const offsetM = (x - here[0]!) * here[2]! + (y - here[1]!) * here[3]!;
    const place = Math.min(Math.max(offsetM * cellsPerM + half, 0), last);
    const from = place < last ? place | 0 : last - 1;
    const share = place - from;
    const weight = KEEPS[(share * KEPT + 0.5) | 0]!;
    const between = weight * (row[from]! + share * (row[from + 1]! - row[from]!));
    const heldAt = offsetM * perMetre + lastHeld / 2;
    if (heldAt >= 0 && heldAt < lastHeld) {
      const right = heldAt | 0;
      const at = here[4]! + right;
      const rightM = held[at]!;
      const heightM = rightM + (heldAt - right) * (held[at + 1]! - rightM);
      if (!Number.isNaN(heightM)) return heightM + between;
    }
    return ground.heightAt(x, y) + between;
  };
  const sampler: GroundSampler = {
    heightAt,
    cellM: ground.cellM,
    longCellM: ground.longCellM ?? ground.cellM,
  };

  return {
    raiseM,
    set(departure, sign) {
      const bias = mean.bias + sign * departure.bias;
      for (let i = 0; i < count; i++) {
        const from = correlated.from[i]!;
        const to = correlated.to[i]!;
        raiseM[i] =
          bias +
          correlated.fromWeight[i]! *
            (mean.correlated[from]! + sign * departure.correlated[from]!) +
          correlated.toWeight[i]! * (mean.correlated[to]! + sign * departure.correlated[to]!);
      }
      for (let n = 0; n < cells.length; n++) {
        cells[n] = mean.local[n]! + sign * departure.local[n]!;
      }
    },
    at(sample) {
      here[0] = xM[sample]!;
      here[1] = yM[sample]!;
      here[2] = leftNormal[2 * sample]!;
      here[3] = leftNormal[2 * sample + 1]!;
      here[4] = sample * strip.across;
      const from = local.from[sample]! * across;
      const to = local.to[sample]! * across;
      const fromWeight = localSdM[sample]! * local.fromWeight[sample]!;
      const toWeight = localSdM[sample]! * local.toWeight[sample]!;
      for (let k = 0; k < across; k++) {
        row[k] = fromWeight * cells[from + k]! + toWeight * cells[to + k]!;
      }
      return sampler;
    },
  };
}

function sampleWeights(chainageM: Float64Array, at: (chainageM: number) => Between) {
  const from = new Uint32Array(chainageM.length);
  const to = new Uint32Array(chainageM.length);
  const fromWeight = new Float64Array(chainageM.length);
  const toWeight = new Float64Array(chainageM.length);
  for (const [i, atM] of chainageM.entries()) {
    const beside = at(atM);
    from[i] = beside.from;
    to[i] = beside.to;
    fromWeight[i] = beside.fromWeight;
    toWeight[i] = beside.toWeight;
  }
  return { from, to, fromWeight, toWeight };
}
