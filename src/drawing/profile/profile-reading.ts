import { HEIGHT_CLASSES, heightClass } from "../../../shared/height-class.ts";
import type { Plan } from "../../../shared/plan.ts";
import { isStandard, reachAt } from "../../../shared/reaches.ts";
import type { SizedLine, Station } from "../../../shared/sizing-types.ts";
import type { BuiltAs, PlaceHeights } from "../../../shared/words/reading.ts";
import { nearestSample } from "./picked-samples.ts";

/** What the walk says at one of its samples. */
export interface Reading extends PlaceHeights {
  readonly index: number;
}

/**
 * The sample nearest to a chainage, kept inside the line; null for a line without samples. A corner has two, across the
 * leg that ends and the one that starts: the higher counts, as it does for the line's greatest height.
 */
export function readingAt({ walk }: SizedLine, chainageM: number): Reading | null {
  const index = higherOf(walk, nearestSample(walk.chainageM, chainageM));
  if (index < 0) return null;
  return {
    index,
    chainageM: walk.chainageM[index]!,
    heightM: known(walk.heightM[index]!),
    greatestHeightM: known(walk.greatestHeightM[index]!),
  };
}

function higherOf({ chainageM, greatestHeightM }: SizedLine["walk"], index: number): number {
  return [index - 1, index + 1]
    .filter((other) => chainageM[other] === chainageM[index])
    .reduce((best, other) => {
      return greatestHeightM[other]! > (greatestHeightM[best]! || 0) ? other : best;
    }, index);
}

/** True where the levee is over the limit of its reach. */
export function isOverAt(line: SizedLine, chainageM: number): boolean {
  const heightM = readingAt(line, chainageM)?.greatestHeightM ?? 0;
  return heightClass(heightM, reachAt(line, chainageM).limitM) === HEIGHT_CLASSES - 1;
}

function known(heightM: number): number | null {
  return Number.isNaN(heightM) ? null : heightM;
}

/** What a line is built as at a chainage. */
export function builtAt(line: SizedLine, chainageM: number, { section }: Plan): BuiltAs {
  const reach = reachAt(line, chainageM);
  return isStandard(reach) ? section : reach.sectionName;
}

/** One sample on (+1) or back (-1) from a chainage, metres. */
export function nextSampleM({ walk }: SizedLine, chainageM: number, way: 1 | -1): number {
  const { chainageM: samples } = walk;
  const here = nearestSample(samples, chainageM);
  let next = here + way;
  while (samples[next] === samples[here]) next += way;
  return samples[next] ?? samples[here] ?? 0;
}

/** The next station after (+1) or before (-1) a chainage, metres; the line's end beyond the last. */
export function nextStationM(line: SizedLine, chainageM: number, way: 1 | -1): number {
  const stations: readonly Station[] = line.stations;
  const beyond = stations
    .map((station) => station.chainageM)
    .filter((each) => (each - chainageM) * way > 1e-6);
  const nearest = way > 0 ? Math.min(...beyond) : Math.max(...beyond);
  if (Number.isFinite(nearest)) return nearest;
  return way > 0 ? line.totals.lengthM : 0;
}
