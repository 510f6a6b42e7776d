import { type CutWalk, leastHeight } from "../cut-walk.ts";
import type { LineSamples } from "../line-samples.ts";
import { averageEndVolume } from "../volume.ts";

/** The samples of a line by the station that is nearest along the line. */
export interface Stretches {
  /** Stations. */
  readonly count: number;
  /** Station of each sample. */
  readonly stationOf: Uint32Array;
}

/** A height that equals the limit is not over it. */
const SLACK_M = 1e-9;

/** @param stationsM chainages of the stations, rising */
export function stretchesAround(
  stationsM: readonly number[],
  { chainageM }: LineSamples,
): Stretches {
  const stationOf = new Uint32Array(chainageM.length);
  let station = 0;
  for (let i = 0; i < chainageM.length; i++) {
    while (
      station + 1 < stationsM.length &&
      chainageM[i]! > (stationsM[station]! + stationsM[station + 1]!) / 2
    ) {
      station++;
    }
    stationOf[i] = station;
  }
  return { count: stationsM.length, stationOf };
}

/** Whether the levee is over its height limit anywhere in each stretch. */
export function whereOver({ count, stationOf }: Stretches, cuts: CutWalk): Uint8Array {
  const over = new Uint8Array(count);
  for (let i = 0; i < stationOf.length; i++) {
    const { limitM } = cuts.reaches[cuts.reach[i]!]!;
    if (leastHeight(cuts, i) > limitM + SLACK_M) over[stationOf[i]!] = 1;
  }
  return over;
}

/** Fill of each stretch by average end areas, m3; what is not known counts for nothing. */
export function volumesOf(
  { count, stationOf }: Stretches,
  { pieces, chainageM }: LineSamples,
  { areaM2 }: CutWalk,
): Float64Array {
  const volumesM3 = new Float64Array(count);
  for (const { first, last } of pieces) {
    for (let i = first; i < last; i++) {
      const stepM = chainageM[i + 1]! - chainageM[i]!;
      const m3 = averageEndVolume(areaM2[i]!, areaM2[i + 1]!, stepM);
      if (m3 > 0) volumesM3[stationOf[i]!]! += m3;
    }
  }
  return volumesM3;
}
