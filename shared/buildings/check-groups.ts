import { FOOT_M } from "../constants.ts";
import { Refusal } from "../failure.ts";
import type { Check } from "./check-buildings.ts";
import { hullPerimeterM } from "./hull-perimeter.ts";
import { inPool } from "./in-pool.ts";
import type { CheckedBuilding, CheckedGroup } from "./types.ts";

/** Neighbors are closer than this, meters. */
const NEIGHBORS_M = 70 * FOOT_M;
const MOST_MEMBERS = 4;
/** Nearest neighbors of each that are tried. */
const MOST_NEIGHBORS = 3;
/** A group is searched for when its ring may take up to this much more than what it must beat. */
const HOPE = 1.1;

type Indices = readonly number[];

/**
 * Two to four flooded neighbors for which one ring takes fewer bags than any rings round parts of them, or which
 * makes ringed a building that cannot be alone. Larger groups are tried where a smaller one was worth it; one whose
 * ring would be too long by the hull of its walls is not searched for.
 */
export async function checkGroups(
  check: Check,
  checked: readonly CheckedBuilding[],
): Promise<CheckedGroup[]> {
  const { engine, atOnce, buildings, waters, taskFor, options } = check;
  const neighbors = neighborsOf(check, checked);
  const worth = new Map<string, CheckedGroup>();
  const tried = new Set<string>();
  let smaller: Indices[] = [...neighbors.keys()].map((index) => [index]);
  for (let size = 2; size <= MOST_MEMBERS && smaller.length > 0; size++) {
    const larger = extended(smaller, neighbors).filter((indices) => !tried.has(indices.join()));
    for (const indices of larger) tried.add(indices.join());
    const hopeful = larger.filter((indices) => mayBeWorth(check, checked, worth, indices));
    const found: Indices[] = [];
    await inPool(atOnce, hopeful, async (indices) => {
      const { signal } = options;
      const members = indices.map((index) => buildings[index]!);
      const request = {
        ...taskFor(indices),
        members,
        waters: indices.map((index) => waters[index]!),
      };
      const group = await engine.checkGroup(request, signal && { signal }).catch(unlessCancelled);
      if (!group || !isWorth(checked, worth, indices, group)) return;
      found.push(indices);
      worth.set(indices.join(), group);
      options.onGroup?.(group);
    });
    smaller = found.sort(byIndices);
  }
  options.onProgress?.(1, "Looking for rings around neighbors");
  return [...worth.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
}

function unlessCancelled(thrown: unknown): null {
  if (thrown instanceof Refusal && thrown.code === "cancelled") throw thrown;
  return null;
}

/** The nearest flooded neighbors of each flooded building, by indices. */
function neighborsOf(
  { near }: Check,
  checked: readonly CheckedBuilding[],
): ReadonlyMap<number, Indices> {
  const isFlooded = (index: number) => RANK[checked[index]!.state] !== undefined;
  const neighbors = new Map<number, Indices>();
  for (const index of checked.keys()) {
    if (!isFlooded(index)) continue;
    const close = near
      .within(index, NEIGHBORS_M)
      .filter(isFlooded)
      .map((other) => ({ other, apartM: near.apartM(index, other) }))
      .filter(({ apartM }) => apartM < NEIGHBORS_M)
      .sort((a, b) => a.apartM - b.apartM || a.other - b.other);
    neighbors.set(
      index,
      close.slice(0, MOST_NEIGHBORS).map(({ other }) => other),
    );
  }
  return neighbors;
}

/** Groups with one neighbor more, each once. */
function extended(groups: readonly Indices[], neighbors: ReadonlyMap<number, Indices>): Indices[] {
  const found = new Map<string, Indices>();
  for (const indices of groups) {
    for (const next of indices.flatMap((index) => neighbors.get(index) ?? [])) {
      if (indices.includes(next)) continue;
      const larger = [...indices, next].sort((a, b) => a - b);
      found.set(larger.join(), larger);
    }
  }
  return [...found.values()].sort(byIndices);
}

function byIndices(a: Indices, b: Indices): number {
  const k = a.findIndex((index, i) => index !== b[i]);
  return k < 0 ? 0 : a[k]! - b[k]!;
}

/** How far a line is from being one that can be built; nothing for a building that needs none or is not known. */
const RANK: { readonly [State in CheckedBuilding["state"]]?: number } = {
  "can-be-ringed": 0,
  "too-late": 1,
  "over-limit": 2,
  "no-room": 3,
};

/** One line of the rings that a group must beat. */
interface Unit {
  readonly rank: number;
  readonly bags: number;
}

function unitOf(
  checked: readonly CheckedBuilding[],
  worth: ReadonlyMap<string, CheckedGroup>,
  indices: Indices,
): Unit | null {
  const { state, line } =
    indices.length === 1 ? checked[indices[0]!]! : (worth.get(indices.join()) ?? NONE);
  const rank = RANK[state];
  return rank === undefined || !line ? null : { rank, bags: line.bags };
}

const NONE = { state: "no-data", line: null } as const;

/** Fewest bags of lines round parts of a group that are no farther from being built; Infinity without such. */
function rivalBags(
  checked: readonly CheckedBuilding[],
  worth: ReadonlyMap<string, CheckedGroup>,
  indices: Indices,
  rank: number,
): number {
  const [first, ...others] = indices;
  if (first === undefined) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (let mask = 0; mask < 2 ** others.length; mask++) {
    const inside = others.filter((_, k) => (mask >> k) & 1);
    const unit = unitOf(checked, worth, [first, ...inside]);
    if (!unit || unit.rank > rank) continue;
    const left = others.filter((_, k) => !((mask >> k) & 1));
    least = Math.min(least, unit.bags + rivalBags(checked, worth, left, rank));
  }
  return least;
}

/** Whether the hull of the walls leaves any hope of fewer bags. */
function mayBeWorth(
  { buildings }: Check,
  checked: readonly CheckedBuilding[],
  worth: ReadonlyMap<string, CheckedGroup>,
  indices: Indices,
): boolean {
  const rival = rivalBags(checked, worth, indices, 0);
  if (rival === Number.POSITIVE_INFINITY) return true;
  const lines = indices.flatMap((index) => checked[index]!.line ?? []);
  if (lines.length < indices.length) return true;
  const sum = (pick: (line: (typeof lines)[number], k: number) => number) =>
    lines.reduce((total, line, k) => total + pick(line, k), 0);
  const hullM = (of: Indices) =>
    hullPerimeterM(of.flatMap((index) => buildings[index]!.parts.flat()));
  const aroundM =
    sum(({ lengthM }, k) => Math.max(0, lengthM - hullM([indices[k]!]))) / lines.length;
  const bagsPerM = sum(({ bags }) => bags) / sum(({ lengthM }) => lengthM);
  return bagsPerM * (hullM(indices) + aroundM) <= HOPE * rival;
}

/** Whether a group takes fewer bags than all that is no farther from being built, and is no worse than its worst member. */
function isWorth(
  checked: readonly CheckedBuilding[],
  worth: ReadonlyMap<string, CheckedGroup>,
  indices: Indices,
  { state, line }: CheckedGroup,
): boolean {
  const rank = RANK[state]!;
  const worst = Math.max(...indices.map((index) => RANK[checked[index]!.state]!));
  return rank <= worst && line.bags < rivalBags(checked, worth, indices, rank);
}
