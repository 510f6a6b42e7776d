import type { CrewLine } from "./crew-list.ts";

/** A crew with its lines in order, before hours are counted. */
export interface CrewDraft {
  readonly people: number;
  readonly lines: readonly CrewLine[];
}

interface Work {
  readonly mostOnOneLine: number;
  readonly setUpH: number;
  readonly moveHours: number;
}

/** Hours that are no more than rounding. */
export const NO_HOURS = 1e-6;
/** So many people are moved from a crew to another at once. */
const PEOPLE_MOVED = [1, 3, 10, 30] as const;

/** How many lines may still be looked at; what is mended by then counts. */
export interface Budget {
  left: number;
}

/**
 * Crews that close fewer lines late: as long as it helps, one line goes to another crew or people do, and where neither
 * helps two lines change places. Each crew builds first what must be closed first, which makes its greatest lateness
 * least (Jackson's rule, 1955). It need not find the best: that is as hard as packing bins.
 */
export function mendCrews(
  crews: readonly CrewDraft[],
  work: Work,
  budget: Budget,
): readonly CrewDraft[] {
  let now = crews.map((crew) => crewWith(crew, crew.lines));
  let lates = now.map((crew) => lateOf(crew, work));
  while (lates.some(({ count }) => count > 0)) {
    const best =
      bestMove(now, lates, work, budget, simpleMoves) ?? bestMove(now, lates, work, budget, swaps);
    if (!best || budget.left <= 0) break;
    now = replaced(now, best.a, best.crewA, best.b, best.crewB);
    lates = replaced(lates, best.a, lateOf(best.crewA, work), best.b, lateOf(best.crewB, work));
  }
  return now.filter(({ lines }) => lines.length > 0);
}

interface Late {
  readonly count: number;
  readonly hours: number;
}

interface Move {
  readonly a: number;
  readonly crewA: CrewDraft;
  readonly b: number;
  readonly crewB: CrewDraft;
}

type Moves = (a: CrewDraft, b: CrewDraft, most: number) => Iterable<[CrewDraft, CrewDraft]>;

/** The move that takes most off what two crews are late, of those looked at; null where none does. */
function bestMove(
  crews: readonly CrewDraft[],
  lates: readonly Late[],
  work: Work,
  budget: Budget,
  moves: Moves,
): Move | null {
  let best: { readonly move: Move; readonly gain: Late } | null = null;
  for (const [a, late] of lates.entries()) {
    if (late.count === 0) continue;
    for (const b of crews.keys()) {
      if (a === b) continue;
      for (const [crewA, crewB] of moves(crews[a]!, crews[b]!, work.mostOnOneLine)) {
        budget.left -= crewA.lines.length + crewB.lines.length;
        if (budget.left <= 0) return best?.move ?? null;
        const gain = gainOf([late, lates[b]!], [lateOf(crewA, work), lateOf(crewB, work)]);
        if (isMore(gain, best?.gain ?? { count: 0, hours: NO_HOURS })) {
          best = { move: { a, crewA, b, crewB }, gain };
        }
      }
    }
  }
  return best?.move ?? null;
}

function* simpleMoves(a: CrewDraft, b: CrewDraft, most: number): Generator<[CrewDraft, CrewDraft]> {
  for (const line of a.lines) {
    yield [crewWith(a, without(a, line)), crewWith(b, [...b.lines, line])];
  }
  for (const people of PEOPLE_MOVED) {
    if (b.people - people < 1 || a.people + people > most) continue;
    yield [
      { ...a, people: a.people + people },
      { ...b, people: b.people - people },
    ];
  }
}

function* swaps(a: CrewDraft, b: CrewDraft): Generator<[CrewDraft, CrewDraft]> {
  for (const line of a.lines) {
    for (const other of b.lines) {
      yield [crewWith(a, [...without(a, line), other]), crewWith(b, [...without(b, other), line])];
    }
  }
}

function without({ lines }: CrewDraft, line: CrewLine): CrewLine[] {
  return lines.filter((each) => each !== line);
}

function crewWith({ people }: CrewDraft, lines: readonly CrewLine[]): CrewDraft {
  return { people, lines: [...lines].sort(byClosing) };
}

function lateOf({ people, lines }: CrewDraft, { setUpH, moveHours }: Work): Late {
  let [freeH, count, hours] = [setUpH, 0, 0];
  for (const [index, { personHours, closeByH }] of lines.entries()) {
    freeH += ((index > 0 ? moveHours : 0) + personHours) / people;
    const lateH = closeByH === null ? 0 : freeH - closeByH;
    if (lateH > NO_HOURS) {
      count += 1;
      hours += lateH;
    }
  }
  return { count, hours };
}

function gainOf(before: readonly Late[], after: readonly Late[]): Late {
  const gain = (key: keyof Late) =>
    before.reduce((all, each, index) => all + each[key] - after[index]![key], 0);
  return { count: gain("count"), hours: gain("hours") };
}

function isMore(gain: Late, than: Late): boolean {
  return gain.count !== than.count ? gain.count > than.count : gain.hours > than.hours;
}

function replaced<Each>(all: readonly Each[], a: number, forA: Each, b: number, forB: Each) {
  return all.map((each, index) => (index === a ? forA : index === b ? forB : each));
}

/** What must be closed first comes first. */
export function byClosing(a: CrewLine, b: CrewLine): number {
  const at = ({ closeByH }: CrewLine) => closeByH ?? Number.POSITIVE_INFINITY;
  if (at(a) !== at(b)) return at(a) - at(b);
  return a.id < b.id ? -1 : 1;
}
