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

/**
 * The people at work divided into crews as equal as can be, none larger than fits on one line, each with its lines in
 * order: the line that must be closed first goes to the crew that is free first. The choice lets people be divided
 * freely; with crews that stay together a line may come late, which is said.
 * @returns no crews where nobody is at work
 */
export function crewList(
  lines: readonly CrewLine[],
  {
    atWork,
    mostOnOneLine,
    setUpH,
    moveHours,
  }: Pick<LineCrew, "atWork" | "mostOnOneLine" | "setUpH"> & {
    /** Person-hours of walking and moving for each line after a crew's first. */
    readonly moveHours: number;
  },
): readonly Crew[] {
  const people = Math.floor(atWork ?? 0);
  if (people < 1 || lines.length === 0) return [];
  const most = Math.max(1, Math.floor(mostOnOneLine));
  const count = Math.min(Math.ceil(people / most), lines.length);
  const inCrews = Math.min(people, count * most);
  const crews = Array.from({ length: count }, (_, index) => ({
    people: Math.floor(inCrews / count) + (index < inCrews % count ? 1 : 0),
    freeH: setUpH,
    turns: [] as CrewTurn[],
  }));
  for (const { id, personHours, closeByH } of [...lines].sort(byClosing)) {
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
  return crews.map(({ people: of, turns }) => ({ people: of, turns }));
}

function byClosing(a: CrewLine, b: CrewLine): number {
  const at = ({ closeByH }: CrewLine) => closeByH ?? Number.POSITIVE_INFINITY;
  if (at(a) !== at(b)) return at(a) - at(b);
  return a.id < b.id ? -1 : 1;
}
