import { Refusal } from "../failure.ts";
import type { Check } from "./check-buildings.ts";
import type { GroupsTried } from "./check-types.ts";
import { bagsToBeat, type Hope, hopeOf, isWorth, type Known, type Members } from "./group-worth.ts";
import { inPool } from "./in-pool.ts";
import { MOST_NEIGHBORS, neighborsOf, WITHOUT_LINE_M } from "./neighbors.ts";
import type { CheckedBuilding, CheckedGroup } from "./types.ts";

const MOST_MEMBERS = 4;
/** Groups for which a ring is looked for, for each flooded building, and where there are few of these. */
const MOST_TRIED_EACH = 1;
const FEWEST_TRIED = 20;
/** Share of the groups that may still be tried that goes to those of one size, before larger ones. */
const SIZE_SHARE = 0.6;
/** Larger groups to come after those of one size, as a share of these: for the progress alone. */
const LARGER_SHARE = 0.8;
const DOING = "Looking for rings around neighbors";

/** What the groups come to. */
interface FoundGroups {
  readonly groups: readonly CheckedGroup[];
  readonly tried: GroupsTried;
}

/**
 * Two to four flooded neighbors for which one ring takes fewer bags than any rings round parts of them, or which
 * makes ringed a building that cannot be alone. A ring is looked for only where the hull of the walls leaves hope of
 * fewer bags, around larger groups only where a smaller one was worth it, those that promise to save the most first,
 * and around no more groups than there are flooded buildings.
 */
export async function checkGroups(
  check: Check,
  checked: readonly CheckedBuilding[],
): Promise<FoundGroups> {
  const { engine, atOnce, buildings, waters, taskFor, options, progress } = check;
  const neighbors = neighborsOf(check, checked);
  const known: Known = { buildings, checked, worth: new Map<string, CheckedGroup>() };
  const seen = new Set<string>();
  let [tried, left] = [0, 0];
  const most = mostTried(neighbors.size);
  let smaller: Members[] = [...neighbors.keys()].map((index) => [index]);
  for (let size = 2; size <= MOST_MEMBERS && smaller.length > 0; size++) {
    const larger = extended(smaller, neighbors).filter((members) => !seen.has(members.join()));
    for (const members of larger) seen.add(members.join());
    const hopeful = larger.flatMap((members) => hopeOf(known, members) ?? []).sort(bySaving);
    const share = size === MOST_MEMBERS ? 1 : SIZE_SHARE;
    const trying = hopeful.slice(0, Math.ceil(share * (most - tried)));
    left += hopeful.length - trying.length;
    tried += trying.length;
    const later = size === MOST_MEMBERS ? 0 : Math.min(most - tried, LARGER_SHARE * trying.length);
    progress.expect(trying.length + later);
    const found: Members[] = [];
    await inPool(atOnce, trying, async ({ members }) => {
      const { signal } = options;
      const request = {
        ...taskFor(members),
        members: members.map((index) => buildings[index]!),
        waters: members.map((index) => waters[index]!),
        mostBags: bagsToBeat(known, members),
      };
      const group = await engine.checkGroup(request, signal && { signal }).catch((thrown) => {
        if (thrown instanceof Refusal && thrown.code === "cancelled") throw thrown;
        left++;
        return null;
      });
      progress.did(DOING);
      if (!group || !isWorth(known, members, group)) return;
      found.push(members);
      known.worth.set(members.join(), group);
      options.onGroup?.(group);
    });
    smaller = found.sort(byMembers);
  }
  options.onProgress?.(1, DOING);
  const groups = [...known.worth.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
  return { groups, tried: { tried, left } };
}

/** Groups that will be tried, as far as that can be told before anything is known of lines. */
export function expectedGroups({ near, waters }: Pick<Check, "near" | "waters">): number {
  const flooded = [...waters.keys()].filter((index) => waters[index]!.state === "flooded");
  const pairs = new Set<string>();
  for (const index of flooded) {
    const others = near
      .within(index, WITHOUT_LINE_M)
      .filter((other) => waters[other]!.state === "flooded");
    for (const other of others.slice(0, MOST_NEIGHBORS)) pairs.add([index, other].sort().join());
  }
  return Math.min(mostTried(flooded.length), pairs.size);
}

function mostTried(flooded: number): number {
  return Math.max(FEWEST_TRIED, MOST_TRIED_EACH * flooded);
}

/** Groups with one neighbor more, each once. */
function extended(groups: readonly Members[], neighbors: ReadonlyMap<number, Members>): Members[] {
  const found = new Map<string, Members>();
  for (const members of groups) {
    for (const next of members.flatMap((index) => neighbors.get(index) ?? [])) {
      if (members.includes(next)) continue;
      const larger = [...members, next].sort((a, b) => a - b);
      found.set(larger.join(), larger);
    }
  }
  return [...found.values()];
}

function bySaving(a: Hope, b: Hope): number {
  if (a.savesBags !== b.savesBags) return a.savesBags > b.savesBags ? -1 : 1;
  return byMembers(a.members, b.members);
}

function byMembers(a: Members, b: Members): number {
  const k = a.findIndex((index, i) => index !== b[i]);
  return k < 0 ? 0 : a[k]! - b[k]!;
}
