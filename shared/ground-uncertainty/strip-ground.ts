import type { GroundSampler } from "../ground.ts";
import type { LineSamples } from "../line-samples.ts";
import { stepFor } from "../section.ts";

/** Heights are held at every so many parts of the step that cuts go across in. */
const PARTS = 2;

/** Heights across a line at each sample of a line, held so that they can be read again and again. */
export interface StripGround {
  /** Metres, `across` of them for each sample, from right to left; NaN in a hole. */
  readonly heightsM: Float64Array;
  readonly across: number;
  /** How many of them there are to a metre. */
  readonly perMetre: number;
}

/**
 * Reads the ground across every sample once, as far out as `reachM`; between what is held it is taken as straight.
 * A hole, and what is beside one, is not held.
 */
export function stripGround(
  samples: LineSamples,
  ground: GroundSampler,
  reachM: number,
): StripGround {
  const { count, xM, yM, leftNormal } = samples;
  const stepM = stepFor(ground) / PARTS;
  const half = Math.ceil(reachM / stepM) + 1;
  const across = 2 * half + 1;
  const heightsM = new Float64Array(count * across);
  for (let i = 0; i < count; i++) {
    const leftX = leftNormal[2 * i]! * stepM;
    const leftY = leftNormal[2 * i + 1]! * stepM;
    for (let k = 0; k < across; k++) {
      const out = k - half;
      heightsM[i * across + k] = ground.heightAt(xM[i]! + out * leftX, yM[i]! + out * leftY);
    }
  }
  return { heightsM, across, perMetre: 1 / stepM };
}
