import type { LiftedStretch } from "./stretches.ts";

/** What one more group has to save: so much of all bags, laid one lift earlier than needed. Source: judgement. */
const LEAST_SAVING = 0.005;
const COARSER = 1.5;
const MOST_ROUNDS = 20;

/**
 * Joins neighbors on nearly level ground, for each stretch the number of its group: what is joined is built as
 * early as its lowest ground needs. The groups are those for which the fewest bags are laid earlier than they
 * need be, by the least height of water. What is on HOLD, and what lies beyond a gap, is a group of its own.
 * @param mostGroups without those that gaps and HOLD make
 */
export function evenGroups(
  stretches: readonly LiftedStretch[],
  mostGroups: number,
  liftM: number,
  closed: boolean,
): number[] {
  const count = stretches.length;
  const start = closed ? greatestChange(stretches) : 0;
  const turned = stretches.map((_, k) => stretches[(start + k) % count]!);
  const bags = turned.map(bagsOf);
  const forced = turned.filter((each, k) => k > 0 && isApart(turned[k - 1]!, each)).length;
  const most = mostGroups + forced;
  let groupCost = LEAST_SAVING * liftM * bags.reduce((sum, each) => sum + each, 0);
  let starts = groupStarts(turned, bags, groupCost);
  for (let round = 0; starts.length > most && round < MOST_ROUNDS; round++) {
    groupCost *= COARSER;
    starts = groupStarts(turned, bags, groupCost);
  }
  const groups = new Array<number>(count).fill(0);
  for (let k = 0; k < count; k++) {
    groups[(start + k) % count] = starts.findLastIndex((first) => first <= k);
  }
  return groups;
}

/** First stretches of the groups of least cost: what is laid too early, and `groupCost` for each group. */
function groupStarts(
  stretches: readonly LiftedStretch[],
  bags: readonly number[],
  groupCost: number,
): number[] {
  const cost = [0];
  const from = [0];
  for (let end = 1; end <= stretches.length; end++) {
    let [leastCost, bestFirst] = [Number.POSITIVE_INFINITY, end - 1];
    let [sumBags, sumLevel, lowestM] = [0, 0, Number.POSITIVE_INFINITY];
    for (let first = end - 1; first >= 0; first--) {
      const levelM = stretches[first]!.lowestM;
      sumBags += bags[first]!;
      sumLevel += bags[first]! * levelM;
      lowestM = Math.min(lowestM, levelM);
      const here = cost[first]! + groupCost + sumLevel - sumBags * lowestM;
      if (here < leastCost) [leastCost, bestFirst] = [here, first];
      if (first > 0 && isApart(stretches[first - 1]!, stretches[first]!)) break;
    }
    cost.push(leastCost);
    from.push(bestFirst);
  }
  const starts: number[] = [];
  for (let end = stretches.length; end > 0; end = from[end]!) starts.unshift(from[end]!);
  return starts;
}

/** True where two neighbors are never built in one go. */
export function isApart(before: LiftedStretch, after: LiftedStretch): boolean {
  return before.isOnHold !== after.isOnHold || after.fromM > before.toM + 0.01;
}

/** The stretch before which the ground changes most, on a ring. */
function greatestChange(stretches: readonly LiftedStretch[]): number {
  let [best, mostM] = [0, -1];
  for (const [k, { lowestM, isOnHold }] of stretches.entries()) {
    const before = stretches.at(k - 1)!;
    const changeM = Math.abs(lowestM - before.lowestM) + (isOnHold === before.isOnHold ? 0 : 1000);
    if (changeM > mostM) [best, mostM] = [k, changeM];
  }
  return best;
}

function bagsOf({ lifts }: LiftedStretch): number {
  return lifts.reduce((sum, { bags }) => sum + bags, 0);
}
