import type { LineSamples } from "../line-samples.ts";

interface Part {
  readonly fromM: number;
  readonly toM: number;
}

/** A run of samples a rule objects to. */
export interface Stretch {
  /** One part; two, the second from 0, when it runs over a ring's closing point. */
  readonly parts: readonly Part[];
  /** Length of what is objected to itself, without the short gaps in it, metres. */
  readonly lengthM: number;
  /** True when it is the whole line. */
  readonly whole: boolean;
  /** Sample where it is worst. */
  readonly worst: number;
}

interface Run {
  first: number;
  last: number;
  lengthM: number;
  worst: number;
}

/** How far an excess at a sample reaches toward the next: to where it ends, straight between the two; metres. */
export function reachToward(here: number, there: number, stepM: number): number {
  return there < 0 ? (stepM * here) / (here - there) : stepM / 2;
}

/**
 * Gathers samples whose severity is above zero into stretches. Stretches nearer than `gapM` are one: nobody
 * acts on less than the distance between two stakes. On a ring a stretch may run over the closing point.
 */
export function stretchesOf(
  samples: LineSamples,
  closed: boolean,
  gapM: number,
  severityAt: (sample: number) => number,
): Stretch[] {
  const { chainageM, count } = samples;
  const severity = new Float64Array(count);
  for (let i = 0; i < count; i++) severity[i] = severityAt(i);
  const reachM = (i: number, next: number) =>
    next < 0 || next >= count
      ? 0
      : reachToward(severity[i]!, severity[next]!, Math.abs(chainageM[next]! - chainageM[i]!));
  const runs: Run[] = [];
  for (let i = 0; i < count; i++) {
    if (!(severity[i]! > 0)) continue;
    const ownM = reachM(i, i - 1) + reachM(i, i + 1);
    const run = runs.at(-1);
    if (run && chainageM[i]! - chainageM[run.last]! <= gapM) {
      run.last = i;
      run.lengthM += ownM;
      if (severity[i]! > severity[run.worst]!) run.worst = i;
    } else {
      runs.push({ first: i, last: i, lengthM: ownM, worst: i });
    }
  }
  return joinEnds(runs, severity, samples, closed, gapM);
}

function joinEnds(
  runs: readonly Run[],
  severity: Float64Array,
  samples: LineSamples,
  closed: boolean,
  gapM: number,
): Stretch[] {
  const lengthM = samples.chainageM[samples.count - 1]!;
  const asStretch = (run: Run): Stretch => {
    const part = partOf(run, samples);
    const whole = part.fromM === 0 && part.toM === lengthM;
    return { parts: [part], lengthM: run.lengthM, whole, worst: run.worst };
  };
  const head = runs[0];
  const tail = runs.at(-1);
  if (!closed || !head || !tail || head === tail) return runs.map(asStretch);
  const acrossM = samples.chainageM[head.first]! + lengthM - samples.chainageM[tail.last]!;
  if (acrossM > gapM) return runs.map(asStretch);
  const joined: Stretch = {
    parts: [
      { fromM: partOf(tail, samples).fromM, toM: lengthM },
      { fromM: 0, toM: partOf(head, samples).toM },
    ],
    lengthM: head.lengthM + tail.lengthM,
    whole: false,
    worst: severity[tail.worst]! >= severity[head.worst]! ? tail.worst : head.worst,
  };
  return [...runs.slice(1, -1).map(asStretch), joined];
}

/** From and to of a run: half a step beyond its first and last sample, as its length is counted. */
function partOf({ first, last }: Run, { chainageM, count }: LineSamples): Part {
  const beforeM = chainageM[Math.max(0, first - 1)]!;
  const afterM = chainageM[Math.min(count - 1, last + 1)]!;
  return { fromM: (beforeM + chainageM[first]!) / 2, toM: (chainageM[last]! + afterM) / 2 };
}
