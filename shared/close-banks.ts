import type { CutWalk } from "./cut-walk.ts";
import type { LineSamples } from "./line-samples.ts";

/**
 * Ground that takes the place of levee, or that an open line ends on, and that is above the top of levee by no more
 * than the accuracy of the ground.
 */
export interface CloseBank {
  /** Where along the line; on a ring a bank may run over the closing point as two. Metres. */
  readonly fromM: number;
  readonly toM: number;
  /** Sample that decides: the lowest of a dip, the highest of a bank that is nowhere surely high enough. */
  readonly sample: number;
  /** How far the ground there is above the top of levee, metres, 0 or more. */
  readonly aboveM: number;
  /** An open line ends on it. */
  readonly isEnd: boolean;
}

/** A run of samples on which nothing is built. */
interface Run {
  readonly first: number;
  readonly last: number;
}

/**
 * Close banks of a line. A bank rises from the top of levee at its edges, so that it is always close there: these
 * edges count only where they are longer than `edgeM`, or where the bank has no place that is surely high enough.
 * @param accuracyM root mean square error of the ground's heights
 * @param edgeM longest edge of a bank that is not worth a word: the distance between two stakes
 */
export function closeBanks(
  samples: LineSamples,
  cuts: CutWalk,
  closed: boolean,
  accuracyM: number,
  edgeM: number,
): CloseBank[] {
  const aboveM = (i: number) => cuts.groundM[i]! - samples.crestM[i]!;
  return runsOfBank(samples, aboveM).flatMap((run) => {
    const isEnd = !closed && (run.first === 0 || run.last === samples.count - 1);
    return closeParts(run, samples, aboveM, accuracyM, edgeM).map((part): CloseBank => {
      const [fromM, toM] = [samples.chainageM[part.first]!, samples.chainageM[part.last]!];
      return { fromM, toM, sample: part.sample, aboveM: aboveM(part.sample), isEnd };
    });
  });
}

function runsOfBank({ count }: LineSamples, aboveM: (i: number) => number): Run[] {
  const runs: { first: number; last: number }[] = [];
  for (let i = 0; i < count; i++) {
    if (!(aboveM(i) >= 0)) continue;
    const before = runs.at(-1);
    if (before?.last === i - 1) before.last = i;
    else runs.push({ first: i, last: i });
  }
  return runs;
}

function closeParts(
  { first, last }: Run,
  { chainageM }: LineSamples,
  aboveM: (i: number) => number,
  accuracyM: number,
  edgeM: number,
): (Run & { readonly sample: number })[] {
  const indices = Array.from({ length: last - first + 1 }, (_, k) => first + k);
  const pick = (of: readonly number[], better: (a: number, b: number) => boolean) =>
    of.reduce((best, i) => (better(aboveM(i), aboveM(best)) ? i : best));
  const sure = indices.filter((i) => aboveM(i) >= accuracyM);
  if (sure.length === 0) {
    return [{ first, last, sample: pick(indices, (a, b) => a > b) }];
  }
  const close: { first: number; last: number }[] = [];
  for (const i of indices) {
    if (aboveM(i) >= accuracyM) continue;
    const before = close.at(-1);
    if (before?.last === i - 1) before.last = i;
    else close.push({ first: i, last: i });
  }
  return close
    .filter((part) => {
      const isEdge = part.first === first || part.last === last;
      return !isEdge || chainageM[part.last]! - chainageM[part.first]! > edgeM;
    })
    .map((part) => {
      const own = indices.slice(part.first - first, part.last - first + 1);
      return { ...part, sample: pick(own, (a, b) => a < b) };
    });
}
