import type { BuildState, ProgressMark } from "../plan.ts";
import { BUILD_STATES } from "../plan-schema.ts";
import type { StakedStretch } from "./stakes.ts";

/** Chainages are compared to the centimetre: a stretch keeps its name through a file and a code. */
const PER_M = 100;

/** A chainage as marks have it, metres. */
export function toCentimetre(m: number): number {
  return Math.round(m * PER_M) / PER_M;
}

function stretchKey({
  lineId,
  fromM,
  toM,
}: Pick<ProgressMark, "lineId" | "fromM" | "toM">): string {
  return `${Math.round(fromM * PER_M)} ${Math.round(toM * PER_M)} ${lineId}`;
}

/** What decides between two marks of a stretch, in this order; the greater stays. */
function mergeOrder(mark: ProgressMark): readonly (number | string)[] {
  const { atS, state, planNumber, by, clearedBy, note, photoId } = mark;
  return [atS, rankOf(state), planNumber, by, clearedBy, note, photoId];
}

/** Place of a state in the order of building, from 0. */
function rankOf(state: BuildState): number {
  return BUILD_STATES.indexOf(state);
}

function isLater(one: ProgressMark, other: ProgressMark): boolean {
  const [a, b] = [mergeOrder(one), mergeOrder(other)];
  const k = a.findIndex((value, i) => value !== b[i]);
  return k >= 0 && a[k]! > b[k]!;
}

/**
 * What two plans say is built, as one: of each stretch the mark made last. In whichever order and however often
 * plans are put together, the outcome is the same.
 */
export function mergedProgress(
  one: readonly ProgressMark[],
  other: readonly ProgressMark[],
): readonly ProgressMark[] {
  const kept = new Map<string, ProgressMark>();
  for (const mark of [...one, ...other]) {
    const key = stretchKey(mark);
    const there = kept.get(key);
    if (!there || isLater(mark, there)) kept.set(key, mark);
  }
  return [...kept].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, mark]) => mark);
}

/** The mark of a stretch; null where it has none. */
export function markOf(
  progress: readonly ProgressMark[],
  lineId: string,
  { fromM, toM }: StakedStretch,
): ProgressMark | null {
  const key = stretchKey({ lineId, fromM, toM });
  return progress.find((mark) => stretchKey(mark) === key) ?? null;
}

/** How far a stretch is built by the plan as it is. */
export interface Built {
  readonly state: BuildState;
  /** The mark it follows from; null where there is none. */
  readonly mark: ProgressMark | null;
  /** Whether that mark is of another plan: the stretch is begun then, and no more is known. */
  readonly isOfOtherPlan: boolean;
}

/** How far a stretch is built; what was built by another plan's heights is begun and no more. */
export function builtOf(mark: ProgressMark | null, planNumber: string): Built {
  if (!mark) return { state: "not-begun", mark, isOfOtherPlan: false };
  const isOfOtherPlan = mark.planNumber !== planNumber;
  const isBegun = mark.state !== "not-begun";
  return { state: isOfOtherPlan && isBegun ? "begun" : mark.state, mark, isOfOtherPlan };
}

/** Whether a stretch is up to height, and perhaps further. */
export function isToHeight(state: BuildState): boolean {
  return rankOf(state) >= rankOf("to-height");
}

/** A moment for a new mark of a stretch that comes after the one it has, whatever the clock it was made by. */
export function markMomentS(nowS: number, before: ProgressMark | null): number {
  return Math.max(Math.floor(nowS), before ? before.atS + 1 : 0);
}
