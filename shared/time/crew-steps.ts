import { FOOT_M, HOUR_S } from "../constants.ts";
import { isApart } from "./even-stretches.ts";
import type { LiftedStretch } from "./stretches.ts";

/** A person on foot with a shovel, on wet ground. Source: common practice, no source. */
export const WALK_M_PER_S = 3 * FOOT_M;
/** To set up where a crew has walked to: cord and level, planks, the file of people. Source: common practice, no source. */
export const MOVE_H = 1 / 6;

/** What a crew lays in one go: a run of stretches of its part, up to one level. Levels are metres above the design water. */
export interface CrewStep {
  /** By index, in the order of the part. */
  readonly stretches: readonly number[];
  readonly topM: number;
  /** Not rounded. */
  readonly bags: number;
  /** Water at which it must be done. */
  readonly needM: number;
  /** Metres from the start of the line; on a ring counted on past the closing point. */
  readonly fromM: number;
  readonly toM: number;
  /** Bags of the crew's steps up to this one and with it, not rounded. */
  readonly bagsUpTo: number;
  /** Hours that the crew has walked and set up between its steps, up to this one. */
  readonly movedH: number;
}

/** A step before it has its place among the others. */
type LooseStep = Omit<CrewStep, "bagsUpTo" | "movedH">;

/** Everything steps are made from. */
export interface StepInputs {
  readonly stretches: readonly LiftedStretch[];
  /** Group of each stretch. */
  readonly groups: readonly number[];
  /** Height kept above the water, metres. */
  readonly marginM: number;
  readonly lengthM: number;
}

/** Fewer bags than this are laid with the next lift of their stretches. Source: judgement. */
const FEW_BAGS = 150;
const SAME_M = 1e-6;
const TOUCH_M = 0.01;

/**
 * Steps of the part of `count` stretches from `first` on, in the order of the water that needs them, lower lifts
 * first. A lift must be done when the water comes to the ground under it, or within the margin of what is laid
 * before it. The stretches of a group are one step a lift, as early as the first of them is needed; neighbors
 * that the same water needs are one step, too. On HOLD there is no step.
 */
export function crewSteps(inputs: StepInputs, first: number, count: number): CrewStep[] {
  const steps = groupRuns(inputs, first, count).flatMap((run) =>
    withoutFew(liftSteps(inputs, run)),
  );
  const sorted = joinNeighbors(steps).sort(
    (a, b) => a.needM - b.needM || a.topM - b.topM || a.fromM - b.fromM,
  );
  return walked(sorted);
}

/**
 * A crew's steps one after another. It walks to the nearer end of the next one, sets up, and lays to the other end;
 * where a step begins at the end of the one before, it goes on at once.
 */
function walked(steps: readonly LooseStep[]): CrewStep[] {
  let [bagsUpTo, movedH, atM] = [0, 0, Number.NaN];
  return steps.map((step) => {
    const { fromM, toM, bags } = step;
    const isFromStart = !(Math.abs(fromM - atM) > Math.abs(toM - atM));
    const walkM = Math.abs((isFromStart ? fromM : toM) - atM);
    if (walkM > TOUCH_M) movedH += MOVE_H + walkM / WALK_M_PER_S / HOUR_S;
    bagsUpTo += bags;
    atM = isFromStart ? toM : fromM;
    return { ...step, bagsUpTo, movedH };
  });
}

/** Places in the part, counted on past the closing point, of stretches that are built together. */
function groupRuns({ stretches, groups }: StepInputs, first: number, count: number): number[][] {
  const runs: number[][] = [];
  for (let place = first; place < first + count; place++) {
    const index = place % stretches.length;
    const stretch = stretches[index]!;
    if (stretch.isOnHold) continue;
    const last = runs.at(-1)?.at(-1);
    const before = last === undefined ? -1 : last % stretches.length;
    const joins =
      last === place - 1 &&
      groups[before] === groups[index] &&
      (index === 0 || !isApart(stretches[before]!, stretch));
    if (joins) runs.at(-1)!.push(place);
    else runs.push([place]);
  }
  return runs;
}

/** A run's lifts, lowest first, each over those of its stretches that have it. */
function liftSteps(
  { stretches, marginM, lengthM }: StepInputs,
  run: readonly number[],
): LooseStep[] {
  const found: LooseStep[] = [];
  const at = (place: number) => stretches[place % stretches.length]!;
  const lapM = (place: number) => (place >= stretches.length ? lengthM : 0);
  const most = run.reduce((count, place) => Math.max(count, at(place).lifts.length), 0);
  for (let fromTop = most; fromTop >= 1; fromTop--) {
    const places = run.filter((place) => at(place).lifts.length >= fromTop);
    const [from, to] = [places[0]!, places.at(-1)!];
    let bags = 0;
    let needM = Number.POSITIVE_INFINITY;
    for (const place of places) {
      const { lifts, lowestM, standsM = lowestM } = at(place);
      bags += lifts.at(-fromTop)!.bags;
      const laidM = lifts.at(-fromTop - 1)?.topM ?? standsM;
      needM = Math.min(needM, Math.max(lowestM, laidM - marginM));
    }
    found.push({
      stretches: places.map((place) => place % stretches.length),
      topM: at(from).lifts.at(-fromTop)!.topM,
      bags,
      needM,
      fromM: at(from).fromM + lapM(from),
      toM: at(to).toM + lapM(to),
    });
  }
  return found;
}

/** A lift of few bags is laid with the one above it. */
function withoutFew(lifts: readonly LooseStep[]): LooseStep[] {
  const kept: LooseStep[] = [];
  for (const lift of lifts) {
    const below = kept.at(-1);
    if (!below || below.bags >= FEW_BAGS) kept.push(lift);
    else kept.splice(-1, 1, { ...lift, bags: lift.bags + below.bags, needM: below.needM });
  }
  return kept;
}

/** Joins steps to one level that touch and that the same water needs. */
function joinNeighbors(steps: readonly LooseStep[]): LooseStep[] {
  const kept: LooseStep[] = [];
  for (const step of steps) {
    const beside = kept.findIndex(
      ({ topM, needM, toM }) =>
        Math.abs(topM - step.topM) < SAME_M &&
        Math.abs(needM - step.needM) < SAME_M &&
        Math.abs(toM - step.fromM) < TOUCH_M,
    );
    if (beside < 0) kept.push(step);
    else {
      const { stretches, bags, fromM, needM } = kept[beside]!;
      kept[beside] = {
        ...step,
        stretches: [...stretches, ...step.stretches],
        bags: bags + step.bags,
        fromM,
        needM: Math.min(needM, step.needM),
      };
    }
  }
  return kept;
}
