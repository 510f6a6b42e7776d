import type { LineCrew } from "./line-times.ts";
import { type Budget, byClosing, type CrewDraft, mendCrews, NO_HOURS } from "./mend-crews.ts";

/** A line to be built, as a crew gets it. Hours are from the start of the work. */
export interface CrewLine {
  readonly id: string;
  readonly personHours: number;
  /** By when it must be closed; null where that is not known. */
  readonly closeByH: number | null;
}

/** A line in a crew's order. */
export interface CrewTurn {
  readonly id: string;
  readonly beginsH: number;
  readonly doneH: number;
  /** When this crew must begin it at the latest, set-up done before; null where nobody knows by when it is closed. */
  readonly latestH: number | null;
  /** Hours by which it is closed too late by this crew; 0 where it is not, null where nobody knows by when. */
  readonly lateH: number | null;
}

/** A crew that stays together and goes from line to line. */
export interface Crew {
  readonly people: number;
  readonly turns: readonly CrewTurn[];
}

interface CrewWork extends Pick<LineCrew, "atWork" | "mostOnOneLine" | "setUpH"> {
  /** Person-hours of walking and moving for each line after a crew's first. */
  readonly moveHours: number;
}

/** So many crews more than it takes are tried. */
const MORE_CREWS = 4;
/** Lines looked at while crews are mended: under 0.1 s for 1,000 lines and 10,000 people. */
const MOST_LOOKED_AT = 400_000;

/**
 * The people at work divided into crews, none larger than fits on one line, each with its lines in order. The choice
 * lets people be divided freely, hour by hour; crews that stay together may come late where that would not. So several
 * divisions are tried: fewest crews and more, equal and full ones, by deadline and by slack. Taken is the one with the
 * fewest lines late, then the fewest hours late, then the first of those: as few crews as can be, all equal, the line
 * that must be closed first to the crew that is free first. Where lines are late by all of them, lines and people are
 * moved between crews (`shared/buildings/mend-crews.ts`).
 * @returns no crews where nobody is at work
 */
export function crewList(lines: readonly CrewLine[], work: CrewWork): readonly Crew[] {
  const people = Math.floor(work.atWork ?? 0);
  if (people < 1 || lines.length === 0) return [];
  const tried = divisions(people, lines.length, Math.max(1, Math.floor(work.mostOnOneLine)))
    .flatMap((sizes) =>
      [byClosing, bySlack(sizes)].map((order) => turnsOf(lines, sizes, order, work)),
    )
    .map((crews) => ({ crews, late: lateOf(crews) }));
  const least = tried.reduce((best, each) => (isBetter(each.late, best.late) ? each : best));
  if (least.late.count === 0) return least.crews;
  const byId = new Map(lines.map((line) => [line.id, line]));
  const budget: Budget = { left: MOST_LOOKED_AT };
  tried.sort((a, b) => a.late.count - b.late.count || a.late.hours - b.late.hours);
  const mended = tried.map(({ crews }) => {
    const drafts = crews.map(({ people, turns }) => ({
      people,
      lines: turns.map(({ id }) => byId.get(id)!),
    }));
    const better = mendCrews(drafts, work, budget).map((draft) => crewOf(draft, work));
    return { crews: better, late: lateOf(better) };
  });
  return mended.reduce((best, each) => (isBetter(each.late, best.late) ? each : best), least).crews;
}

/** Sizes of crews, the usual ones first. */
function divisions(people: number, lines: number, most: number): number[][] {
  const least = Math.min(Math.ceil(people / most), lines);
  const counts = Array.from({ length: MORE_CREWS + 1 }, (_, more) => least + more).filter(
    (count) => count <= Math.min(lines, people),
  );
  const equal = counts.map((count) => {
    const inCrews = Math.min(people, count * most);
    return Array.from(
      { length: count },
      (_, index) => Math.floor(inCrews / count) + (index < inCrews % count ? 1 : 0),
    );
  });
  const rest = people - (least - 1) * most;
  const isFull = least > 1 && rest > 0 && rest < most;
  return isFull ? [...equal, [...Array<number>(least - 1).fill(most), rest]] : equal;
}

type Order = (a: CrewLine, b: CrewLine) => number;

function turnsOf(
  lines: readonly CrewLine[],
  sizes: readonly number[],
  order: Order,
  work: CrewWork,
): Crew[] {
  const crews = sizes.map((people) => ({ people, freeH: work.setUpH, turns: [] as CrewTurn[] }));
  for (const line of [...lines].sort(order)) {
    const crew = crews.reduce((first, each) => (each.freeH < first.freeH ? each : first));
    const turn = turnOf(line, crew.people, crew.turns.at(-1) ?? null, work);
    crew.turns.push(turn);
    crew.freeH = turn.doneH;
  }
  return crews
    .filter(({ turns }) => turns.length > 0)
    .map(({ people, turns }) => ({ people, turns }));
}

function crewOf({ people, lines }: CrewDraft, work: CrewWork): Crew {
  const turns: CrewTurn[] = [];
  for (const line of lines) turns.push(turnOf(line, people, turns.at(-1) ?? null, work));
  return { people, turns };
}

function turnOf(
  { id, personHours, closeByH }: CrewLine,
  people: number,
  before: CrewTurn | null,
  { setUpH, moveHours }: CrewWork,
): CrewTurn {
  const beginsH = before ? before.doneH + moveHours / people : setUpH;
  const takesH = personHours / people;
  const doneH = beginsH + takesH;
  const latestH = closeByH === null ? null : closeByH - takesH;
  const lateH = closeByH === null ? null : Math.max(0, doneH - closeByH);
  return { id, beginsH, doneH, latestH, lateH };
}

/** Lines that crews close too late. */
export function lateLines(crews: readonly Crew[]): readonly CrewTurn[] {
  return crews.flatMap(({ turns }) => turns.filter(({ lateH }) => (lateH ?? 0) > NO_HOURS));
}

interface Late {
  readonly count: number;
  readonly hours: number;
}

function lateOf(crews: readonly Crew[]): Late {
  const late = lateLines(crews);
  return { count: late.length, hours: late.reduce((sum, { lateH }) => sum + lateH!, 0) };
}

function isBetter(a: Late, b: Late): boolean {
  return a.count !== b.count ? a.count < b.count : a.hours < b.hours - NO_HOURS;
}

/** By the hour at which a crew of middling size must begin at the latest. */
function bySlack(sizes: readonly number[]): Order {
  const people = sizes.reduce((sum, each) => sum + each, 0) / sizes.length;
  const latest = ({ closeByH, personHours }: CrewLine) =>
    closeByH === null ? Number.POSITIVE_INFINITY : closeByH - personHours / people;
  return (a, b) => (latest(a) === latest(b) ? byClosing(a, b) : latest(a) - latest(b));
}
