import type { LineCrew } from "./line-times.ts";

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

/**
 * The people at work divided into crews, none larger than fits on one line, each with its lines in order. The choice
 * lets people be divided freely, hour by hour; crews that stay together may come late where that would not. So several
 * divisions are tried: fewest crews and more, equal and full ones, by deadline and by slack. Taken is the one with the
 * fewest lines late, then the fewest hours late, then the first of those: as few crews as can be, all equal, the line
 * that must be closed first to the crew that is free first.
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
  return tried.reduce((best, each) => (isBetter(each.late, best.late) ? each : best)).crews;
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
  { setUpH, moveHours }: CrewWork,
): Crew[] {
  const crews = sizes.map((people) => ({ people, freeH: setUpH, turns: [] as CrewTurn[] }));
  for (const { id, personHours, closeByH } of [...lines].sort(order)) {
    const crew = crews.reduce((first, each) => (each.freeH < first.freeH ? each : first));
    const moveH = crew.turns.length > 0 ? moveHours / crew.people : 0;
    const beginsH = crew.freeH + moveH;
    const takesH = personHours / crew.people;
    const doneH = beginsH + takesH;
    const latestH = closeByH === null ? null : closeByH - takesH;
    const lateH = closeByH === null ? null : Math.max(0, doneH - closeByH);
    crew.turns.push({ id, beginsH, doneH, latestH, lateH });
    crew.freeH = doneH;
  }
  return crews
    .filter(({ turns }) => turns.length > 0)
    .map(({ people, turns }) => ({ people, turns }));
}

/** Hours that are no more than rounding. */
const NO_HOURS = 1e-6;

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

function byClosing(a: CrewLine, b: CrewLine): number {
  const at = ({ closeByH }: CrewLine) => closeByH ?? Number.POSITIVE_INFINITY;
  if (at(a) !== at(b)) return at(a) - at(b);
  return a.id < b.id ? -1 : 1;
}
