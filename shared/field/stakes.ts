import type { SizedLine, Station } from "../sizing-types.ts";

/** The line as a crew goes along it: its stakes in order. */
export interface Staked {
  readonly isRing: boolean;
  readonly lengthM: number;
  /** Rising chainage; the closing station of a ring is its first stake, and is left out. */
  readonly stakes: readonly Station[];
}

/** Levee from one stake to the next, metres of chainage. */
export interface StakedStretch {
  readonly fromM: number;
  readonly toM: number;
}

/** The stakes of a line. */
export function stakedLine({
  kind,
  stations,
  totals,
}: Pick<SizedLine, "kind" | "stations" | "totals">): Staked {
  const isRing = kind === "ring";
  const stakes = isRing ? stations.filter(({ reason }) => reason !== "end") : stations;
  return { isRing, lengthM: totals.lengthM, stakes };
}

/** Index of the stake nearest to a chainage; on a ring over its closing point too. -1 without stakes. */
export function stakeNear({ isRing, lengthM, stakes }: Staked, chainageM: number): number {
  let nearest = -1;
  let leastM = Number.POSITIVE_INFINITY;
  for (const [index, stake] of stakes.entries()) {
    const straightM = Math.abs(stake.chainageM - chainageM);
    const awayM = isRing ? Math.min(straightM, lengthM - straightM) : straightM;
    if (awayM >= leastM) continue;
    leastM = awayM;
    nearest = index;
  }
  return nearest;
}

/** Index of the stake after (+1) or before (-1) one; null at an end of a line that does not close. */
export function stakeBeside({ isRing, stakes }: Staked, index: number, way: 1 | -1): number | null {
  const next = index + way;
  if (next >= 0 && next < stakes.length) return next;
  return isRing && stakes.length > 1 ? (next + stakes.length) % stakes.length : null;
}

/** The stretch that begins at a stake; null at the last one of a line that does not close. */
export function stretchFrom(
  { isRing, lengthM, stakes }: Staked,
  index: number,
): StakedStretch | null {
  const fromM = stakes[index]?.chainageM;
  if (fromM === undefined) return null;
  const toM = stakes[index + 1]?.chainageM ?? (isRing ? lengthM : null);
  return toM === null ? null : { fromM, toM };
}

/** Every stretch of a line, in order. */
export function stretchesOfStakes(staked: Staked): readonly StakedStretch[] {
  return staked.stakes.flatMap((_, index) => stretchFrom(staked, index) ?? []);
}

/** Distance on along the line from one chainage to another, metres; on a ring the shorter way, below 0 = back. */
export function alongM(
  { isRing, lengthM }: Pick<Staked, "isRing" | "lengthM">,
  fromM: number,
  toM: number,
): number {
  const straightM = toM - fromM;
  if (!isRing || Math.abs(straightM) <= lengthM / 2) return straightM;
  return straightM - Math.sign(straightM) * lengthM;
}
