import { HOUR_S } from "../constants.ts";
import type { Sweep } from "./shown-states.ts";
import type { CheckedBuilding, CheckedGroup, CheckedLine, MustFix, RingFigures } from "./types.ts";

/** Who builds lines, and by when they must be closed. */
export interface LineCrew {
  /** People at work at a time; null where nobody said how many there are. */
  readonly atWork: number | null;
  readonly mostOnOneLine: number;
  readonly setUpH: number;
  /** Hours by which a line is closed before water touches a wall. */
  readonly closeBeforeH: number;
  /** Start of work, seconds since 1970 UTC; null where nobody gave one. */
  readonly startAtS: number | null;
  /** Hours from the start by which every line must be closed; null where each has its own hour alone. */
  readonly untilH: number | null;
}

type Timed = Pick<CheckedBuilding, "firstWetAtS" | "closedByAtS" | "latestStartAtS"> & {
  readonly state: CheckedBuilding["state"];
  readonly line: Pick<RingFigures, "personHours"> | null;
};

/**
 * What must be fixed on a line whoever builds it. That it is late with the plan's own people is left out: with those of
 * the stock that stands in its latest start.
 */
export function mustFixOf({ mustFix }: Pick<CheckedLine, "mustFix">): readonly MustFix[] {
  return mustFix.filter(({ finding }) => finding.kind !== "late");
}

/** States that differ by nothing but time. */
const BY_TIME: readonly string[] = ["can-be-ringed", "too-late"];

/**
 * A check with latest starts and "too late" as these people make them, in person-hours as the choice counts them: so
 * many on a line as there are at work, but no more than fit on one. Without people neither is known, and no line is
 * too late.
 */
export function withCrew({ checked, groups }: Sweep, crew: LineCrew): Sweep {
  return {
    checked: new Map([...checked].map(([id, each]) => [id, timed(each, crew)])),
    groups: groups.map((each): CheckedGroup => timed(each, crew)),
  };
}

/**
 * A check in which no line is called too late, for a choice that limits hours itself: it takes none that is, and can
 * say what more people or hours would let be ringed.
 */
export function leftToHours({ checked, groups }: Sweep): Sweep {
  const inTime = <Each extends { readonly state: string }>(each: Each): Each =>
    each.state === "too-late" ? { ...each, state: "can-be-ringed" } : each;
  return {
    checked: new Map([...checked].map(([id, each]) => [id, inTime(each)])),
    groups: groups.map(inTime),
  };
}

/** One line of it. */
export function timed<Each extends Timed>(each: Each, crew: LineCrew): Each {
  const { line, state } = each;
  if (line === null) return each;
  const worksH = hoursOf(line, crew);
  const closeAtS = closeAt(each, crew);
  const latestStartAtS =
    worksH === null || closeAtS === null ? null : Math.floor(closeAtS - worksH * HOUR_S);
  if (!BY_TIME.includes(state)) return { ...each, latestStartAtS };
  const { startAtS, untilH } = crew;
  const isLate =
    worksH !== null &&
    ((untilH !== null && worksH > untilH) ||
      (latestStartAtS !== null && startAtS !== null && latestStartAtS < startAtS));
  return { ...each, latestStartAtS, state: isLate ? "too-late" : "can-be-ringed" };
}

/** Hours from the start until a line is closed; null without people. */
function hoursOf(
  { personHours }: Pick<RingFigures, "personHours">,
  { atWork, mostOnOneLine, setUpH }: LineCrew,
): number | null {
  return atWork === null ? null : setUpH + personHours / Math.min(atWork, mostOnOneLine);
}

/** When a line must be closed: by its own ground and walls, and by the hour that is for all; null where none is known. */
function closeAt(
  { firstWetAtS, closedByAtS }: Timed,
  { closeBeforeH, startAtS, untilH }: LineCrew,
): number | null {
  const known = [
    firstWetAtS === null ? null : firstWetAtS - closeBeforeH * HOUR_S,
    closedByAtS,
    startAtS === null || untilH === null ? null : startAtS + untilH * HOUR_S,
  ].filter((each) => each !== null);
  return known.length === 0 ? null : Math.min(...known);
}
