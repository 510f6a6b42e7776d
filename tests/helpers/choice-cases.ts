import type { ChoiceQuestion } from "../../shared/buildings/choice-types.ts";
import type { Candidate, Stock, WorkForce } from "../../shared/buildings/types.ts";
import { seededRandom } from "./seeded-random.ts";

/** A line with figures of its own where they matter. */
export function lineOf(id: string, figures: Partial<Candidate> = {}): Candidate {
  return {
    ...{ id, members: [id], weight: 1, closedByH: null },
    ...{ bags: 0, sandM3: 0, sheetM2: 0, personHours: 0 },
    ...{ greatestHeightM: 1, lengthM: 40, lengthOverLimitM: 0 },
    ...figures,
  };
}

export const NO_LIMIT: Stock = {
  ...{ bags: null, sandM3: null, sheetM2: null, people: null },
  ...{ mustDo: [], mustNot: [] },
};

export const CREW: WorkForce = {
  ...{ people: 10, atWorkShare: 0.5, setUpH: 2, moveHours: 0 },
  ...{ mostOnOneLine: 60, untilH: null },
};

/** A small seeded question: singles, groups, all limits, some of each list. */
export function smallQuestion(seed: number, singles = 8, groups = 4): ChoiceQuestion {
  const chance = seededRandom(seed);
  const whole = (least: number, most: number) => least + Math.floor(chance() * (most - least + 1));
  const ids = Array.from({ length: singles }, (_, i) => `b${i}`);
  const figures = (bags: number) => ({
    bags,
    sandM3: whole(1, 30) / 4,
    sheetM2: whole(1, 40) / 2,
    personHours: whole(4, 60) / 4,
    closedByH: chance() < 0.15 ? null : whole(3, 16) / 2,
  });
  const weightOf = new Map(ids.map((id) => [id, chance() < 0.5 ? 1 : whole(1, 9) / 2]));
  const single = ids.map((id) =>
    lineOf(id, { ...figures(whole(1, 20)), weight: weightOf.get(id)! }),
  );
  const group = Array.from({ length: groups }, (_, i) => {
    const from = whole(0, singles - 2);
    const members = ids.slice(from, from + whole(2, 4));
    const weight = members.reduce((sum, id) => sum + weightOf.get(id)!, 0);
    return lineOf(`g${i}`, { ...figures(whole(2, 30)), members, weight });
  });
  const some = (share: number) => ids.filter(() => chance() < share);
  const maybe = (most: number) => (chance() < 0.25 ? null : whole(most / 4, most));
  return {
    candidates: [...single, ...group],
    stock: {
      ...{ bags: maybe(90), sandM3: maybe(36), sheetM2: maybe(90), people: null },
      ...{ mustDo: some(0.2), mustNot: some(0.1) },
    },
    workForce:
      chance() < 0.2
        ? null
        : {
            people: whole(2, 12),
            ...{
              atWorkShare: whole(2, 4) / 4,
              setUpH: whole(0, 4) / 4,
              moveHours: whole(0, 4) / 4,
            },
            ...{ mostOnOneLine: whole(2, 6), untilH: chance() < 0.5 ? null : whole(6, 14) / 2 },
          },
  };
}

/** Whether lines together keep every limit; written out anew from the limits' own words. */
function isAllowed({ stock, workForce }: ChoiceQuestion, lines: readonly Candidate[]): boolean {
  const inside = lines.flatMap(({ members }) => members);
  if (new Set(inside).size < inside.length) return false;
  if (inside.some((id) => stock.mustNot.includes(id))) return false;
  const keeps = (key: "bags" | "sandM3" | "sheetM2") =>
    stock[key] === null || lines.reduce((sum, line) => sum + line[key], 0) <= stock[key] + 1e-9;
  if (!(["bags", "sandM3", "sheetM2"] as const).every(keeps)) return false;
  return workForce === null || canBeClosed(lines, workForce);
}

/**
 * Whether people who may be divided can close lines in time: the greatest flow from lines through the spans between
 * deadlines to the people there carries all the work. Nothing of the limits by deadline is used.
 */
export function canBeClosed(lines: readonly Candidate[], crew: WorkForce): boolean {
  const closing = lines.map(({ closedByH }) =>
    Math.min(closedByH ?? Infinity, crew.untilH ?? Infinity),
  );
  const ends = [...new Set(closing)].filter(Number.isFinite).sort((a, b) => a - b);
  const spans = ends.map((end, i) => {
    const from = Math.max(crew.setUpH, ends[i - 1] ?? 0);
    return { end, lasts: Math.max(0, end - from) };
  });
  const jobs = lines.flatMap(({ personHours }, i) => {
    const by = closing[i]!;
    if (by === Infinity) return [];
    return [
      { work: personHours, by, most: crew.mostOnOneLine },
      { work: crew.moveHours, by, most: Infinity },
    ];
  });
  const rate = crew.people * crew.atWorkShare;
  const source = jobs.length + spans.length;
  const sink = source + 1;
  const room = Array.from({ length: sink + 1 }, () => new Array<number>(sink + 1).fill(0));
  jobs.forEach(({ work, by, most }, j) => {
    room[source]![j] = work;
    spans.forEach(({ end, lasts }, s) => {
      if (end <= by) room[j]![jobs.length + s] = most === Infinity ? work : most * lasts;
    });
  });
  spans.forEach(({ lasts }, s) => {
    room[jobs.length + s]![sink] = rate * lasts;
  });
  const work = jobs.reduce((sum, job) => sum + job.work, 0);
  return greatestFlow(room, source, sink) >= work - 1e-6;
}

/** Greatest flow by shortest augmenting paths (Edmonds and Karp, 1972); `room` is used up. */
function greatestFlow(room: number[][], source: number, sink: number): number {
  let flow = 0;
  while (true) {
    const from = new Array<number>(room.length).fill(-1);
    const line = [source];
    for (const at of line) {
      room[at]!.forEach((left, to) => {
        if (left <= 1e-9 || from[to] !== -1 || to === source) return;
        from[to] = at;
        line.push(to);
      });
    }
    if (from[sink] === -1) return flow;
    const path: number[] = [];
    for (let at = sink; at !== source; at = from[at]!) path.unshift(at);
    const legs = path.map((to) => [from[to]!, to] as const);
    const least = Math.min(...legs.map(([a, b]) => room[a]![b]!));
    for (const [a, b] of legs) {
      room[a]![b]! -= least;
      room[b]![a]! += least;
    }
    flow += least;
  }
}

/** What is compared of a choice. */
export interface Value {
  readonly mustDo: number;
  readonly weight: number;
  readonly bags: number;
}

/** The best of all subsets, each looked at. */
export function bestOfAll(question: ChoiceQuestion): Value {
  const { candidates, stock } = question;
  let best: Value = { mustDo: 0, weight: 0, bags: 0 };
  for (let set = 0; set < 2 ** candidates.length; set++) {
    const lines = candidates.filter((_, i) => (set >> i) & 1);
    const value = valueOfLines(lines, stock);
    if (isBetter(value, best) && isAllowed(question, lines)) best = value;
  }
  return best;
}

export function valueOfLines(lines: readonly Candidate[], { mustDo }: Stock): Value {
  const inside = lines.flatMap(({ members }) => members);
  return {
    mustDo: inside.filter((id) => mustDo.includes(id)).length,
    weight: lines.reduce((sum, { weight }) => sum + weight, 0),
    bags: lines.reduce((sum, { bags }) => sum + bags, 0),
  };
}

function isBetter(a: Value, b: Value): boolean {
  if (a.mustDo !== b.mustDo) return a.mustDo > b.mustDo;
  if (a.weight !== b.weight) return a.weight > b.weight;
  return a.bags < b.bags;
}
