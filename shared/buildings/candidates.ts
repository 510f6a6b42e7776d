import { HOUR_S } from "../constants.ts";
import type { Candidate, CheckedBuilding, CheckedGroup, RingFigures } from "./types.ts";

/** When lines have to be closed. */
export interface ClosingTimes {
  /** Seconds since 1970 UTC; null where nobody gave a start. */
  readonly startAtS: number | null;
  /** Hours by which a line is to be closed before water touches a wall; where the line's own ground gets wet earlier, that counts. */
  readonly marginH: number;
}

type Waters = Pick<CheckedBuilding, "firstWetAtS" | "closedByAtS">;

/**
 * The lines that can be chosen among: of each building its own, and the groups'. Lines over the height limit, and
 * those that are too late for the people there are, are never among them. A group is only there where all its members are, because its weight is theirs.
 */
export function candidatesOf(
  buildings: readonly CheckedBuilding[],
  groups: readonly CheckedGroup[],
  { startAtS, marginH }: ClosingTimes,
): Candidate[] {
  const weightOf = new Map(buildings.map(({ id, weight }) => [id, weight]));
  const closedByH = ({ firstWetAtS, closedByAtS }: Waters) => {
    const atS = [firstWetAtS === null ? null : firstWetAtS - marginH * HOUR_S, closedByAtS];
    const known = atS.filter((each) => each !== null);
    return startAtS === null || known.length === 0
      ? null
      : (Math.min(...known) - startAtS) / HOUR_S;
  };
  const single = buildings.flatMap(({ id, state, line, weight, ...waters }) =>
    line && state === "can-be-ringed"
      ? [{ id, members: [id], weight, closedByH: closedByH(waters), ...figuresOf(line) }]
      : [],
  );
  const group = groups.flatMap(({ id, state, members, line, ...waters }) =>
    state === "can-be-ringed" && members.every((member) => weightOf.has(member))
      ? [
          {
            ...{ id, members, closedByH: closedByH(waters), ...figuresOf(line) },
            weight: members.reduce((sum, member) => sum + weightOf.get(member)!, 0),
          },
        ]
      : [],
  );
  return [...single, ...group];
}

function figuresOf(line: RingFigures): Omit<RingFigures, "leveeBags"> {
  const { bags, sandM3, sheetM2, personHours, greatestHeightM, lengthM, lengthOverLimitM } = line;
  return { bags, sandM3, sheetM2, personHours, greatestHeightM, lengthM, lengthOverLimitM };
}

/** Ids of the buildings that a line goes around which is too late. */
export function tooLateOf(
  buildings: readonly CheckedBuilding[],
  groups: readonly CheckedGroup[],
): string[] {
  const late = [
    ...buildings.filter(({ state }) => state === "too-late").map(({ id }) => id),
    ...groups.filter(({ state }) => state === "too-late").flatMap(({ members }) => members),
  ];
  return [...new Set(late)];
}
