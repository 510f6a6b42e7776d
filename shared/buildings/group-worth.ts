import { hullPerimeterM } from "./hull-perimeter.ts";
import type { Building, CheckedBuilding, CheckedGroup } from "./types.ts";

/** Some buildings by their indices, rising. */
export type Members = readonly number[];

/** What is known of lines around buildings, and around groups that are worth it, by their members. */
export interface Known {
  readonly buildings: readonly Building[];
  readonly checked: readonly CheckedBuilding[];
  readonly worth: Map<string, CheckedGroup>;
}

/** A group that may be worth it. */
export interface Hope {
  readonly members: Members;
  /** Bags that it may save; Infinity where that cannot be told, because one of them has no line. */
  readonly savesBags: number;
}

/** A group is searched for when its ring may take up to this much more than what it must beat. */
const HOPE = 1.05;

/** How far a line is from being one that can be built; nothing for a building that needs none or is not known. */
const RANK: { readonly [State in CheckedBuilding["state"]]?: number } = {
  "can-be-ringed": 0,
  "too-late": 1,
  "over-limit": 2,
  "no-room": 3,
};

/** That of a checked building; null for one that needs no line or is not known. */
export function rankOf({ state }: Pick<CheckedBuilding, "state">): number | null {
  return RANK[state] ?? null;
}

/** What a group may save, going by the hull of the walls; null where that leaves no hope of fewer bags. */
export function hopeOf(known: Known, members: Members): Hope | null {
  const { buildings, checked } = known;
  const rival = rivalBags(known, members, 0);
  const lines = members.flatMap((index) => checked[index]!.line ?? []);
  if (rival === Number.POSITIVE_INFINITY || lines.length < members.length) {
    return { members, savesBags: Number.POSITIVE_INFINITY };
  }
  const sum = (pick: (line: (typeof lines)[number], k: number) => number) =>
    lines.reduce((total, line, k) => total + pick(line, k), 0);
  const hullM = (of: Members) =>
    hullPerimeterM(of.flatMap((index) => buildings[index]!.parts.flat()));
  const aroundM =
    sum(({ lengthM }, k) => Math.max(0, lengthM - hullM([members[k]!]))) / lines.length;
  const bagsPerM = sum(({ bags }) => bags) / sum(({ lengthM }) => lengthM);
  const bags = bagsPerM * (hullM(members) + aroundM);
  return bags <= HOPE * rival ? { members, savesBags: rival - bags } : null;
}

/** Whether a group takes fewer bags than all that is no farther from being built, and is no worse than its worst member. */
export function isWorth(known: Known, members: Members, { state, line }: CheckedGroup): boolean {
  const rank = RANK[state]!;
  const worst = Math.max(...members.map((index) => RANK[known.checked[index]!.state]!));
  return rank <= worst && line.bags < rivalBags(known, members, rank);
}

/** Bags that one ring round buildings that can all be ringed must stay below; null where that is not all it takes. */
export function bagsToBeat(known: Known, members: Members): number | null {
  const canBe = members.every((index) => RANK[known.checked[index]!.state] === 0);
  return canBe ? rivalBags(known, members, 0) : null;
}

/** One line of the rings that a group must beat. */
interface Unit {
  readonly rank: number;
  readonly bags: number;
}

function unitOf({ checked, worth }: Known, members: Members): Unit | null {
  const { state, line } =
    members.length === 1 ? checked[members[0]!]! : (worth.get(members.join()) ?? NONE);
  const rank = RANK[state];
  return rank === undefined || !line ? null : { rank, bags: line.bags };
}

const NONE = { state: "no-data", line: null } as const;

/** Fewest bags of lines round parts of a group that are no farther from being built; Infinity without such. */
function rivalBags(known: Known, members: Members, rank: number): number {
  const [first, ...others] = members;
  if (first === undefined) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (let mask = 0; mask < 2 ** others.length; mask++) {
    const inside = others.filter((_, k) => (mask >> k) & 1);
    const unit = unitOf(known, [first, ...inside]);
    if (!unit || unit.rank > rank) continue;
    const left = others.filter((_, k) => !((mask >> k) & 1));
    least = Math.min(least, unit.bags + rivalBags(known, left, rank));
  }
  return least;
}
