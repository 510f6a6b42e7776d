import { FOOT_M } from "../constants.ts";
import type { Check } from "./check-buildings.ts";
import type { Members } from "./group-worth.ts";
import { rankOf } from "./group-worth.ts";
import type { CheckedBuilding } from "./types.ts";

/** A building without a line of its own is tried with those closer than this, meters. Source: judgement. */
export const WITHOUT_LINE_M = 70 * FOOT_M;
/** Nearest neighbors of each that are tried. */
export const MOST_NEIGHBORS = 3;

/**
 * The nearest flooded neighbors of each flooded building, by indices. A ring around two runs across the gap between
 * them twice: where that alone is as long as their own rings the two are no neighbors.
 */
export function neighborsOf(
  { near }: Pick<Check, "near">,
  checked: readonly CheckedBuilding[],
): ReadonlyMap<number, Members> {
  const halfM = checked.map(({ line }) => (line ? line.lengthM / 2 : null));
  const longestM = halfM.reduce<number>((most, each) => Math.max(most, each ?? 0), 0);
  const isFlooded = (index: number) => rankOf(checked[index]!) !== null;
  const reachOf = (one: number, other: number) => {
    const [a, b] = [halfM[one] ?? null, halfM[other] ?? null];
    return a === null || b === null ? WITHOUT_LINE_M : a + b;
  };
  const neighbors = new Map<number, Members>();
  for (const index of checked.keys()) {
    if (!isFlooded(index)) continue;
    const own = halfM[index] ?? null;
    const widestM = own === null ? WITHOUT_LINE_M : Math.max(WITHOUT_LINE_M, own + longestM);
    const close = near
      .within(index, widestM)
      .filter(isFlooded)
      .map((other) => ({ other, apartM: near.apartM(index, other) }))
      .filter(({ other, apartM }) => apartM < reachOf(index, other))
      .sort((a, b) => a.apartM - b.apartM || a.other - b.other);
    neighbors.set(
      index,
      close.slice(0, MOST_NEIGHBORS).map(({ other }) => other),
    );
  }
  return neighbors;
}
