import type { Candidate, Choice, RunsOut, Stock, WorkForce } from "./types.ts";

/** What a choice is made from. */
export interface ChoiceQuestion {
  readonly candidates: readonly Candidate[];
  /** `people` is not read here: those who work are `workForce`. */
  readonly stock: Stock;
  /** Null: hours are not limited, because nobody said who works. */
  readonly workForce: WorkForce | null;
  /** Ids of buildings with a line that is too late, and that is no candidate for that; left out = none. */
  readonly tooLate?: readonly string[];
}

/** How long the solver may take. */
export interface ChoiceEffort {
  /** Most seconds for one solve, of which a choice takes up to nine; left out = {@link MOST_SECONDS}. */
  readonly seconds?: number;
}

/** Most seconds for one solve. */
export const MOST_SECONDS = 10;

/** Why a building that must be ringed is not: no line for it, ruled out, its line too long to be closed in time. */
export type MustDoWhy = "no-line" | "must-not" | "too-late" | "not-enough";

/** What lines take together. */
export interface Takes {
  readonly bags: number;
  readonly sandM3: number;
  readonly sheetM2: number;
  readonly personHours: number;
  /** Fewest people with whom all are closed in time; null where people or times are not known. */
  readonly people: number | null;
}

/** What all that must be ringed, and can be, takes; a Must fix. */
export interface MustDoNeeds {
  /** By the lines with the fewest bags. */
  readonly takes: Takes;
  /** What of it is missing; 0 where there is enough or it is not limited. */
  readonly missing: Omit<Takes, "personHours" | "people"> & { readonly people: number };
}

/** A choice, and what to say with it. */
export interface FoundChoice extends Choice {
  /** Ids of the buildings inside. */
  readonly buildings: readonly string[];
  /** Fewest people with whom the chosen lines are closed in time; null where people or times are not known. */
  readonly peopleNeeded: number | null;
  /** What would let more weight be ringed if it alone were not limited. */
  readonly shortOf: readonly RunsOut[];
  /** One for each of `mustDoLeft`. */
  readonly mustDoWhy: readonly { readonly id: string; readonly why: MustDoWhy }[];
  /** Null where all that must be ringed is. */
  readonly mustDoNeeds: MustDoNeeds | null;
  /** Chosen lines whose hours were not limited, because who works or when they must be closed is not known. */
  readonly notTimed: readonly string[];
}

/** Something more to build with. */
export interface More {
  readonly bags?: number;
  readonly sandM3?: number;
  readonly sheetM2?: number;
  readonly people?: number;
  /** Hours by which the start is earlier, or the water later. */
  readonly hours?: number;
}

/** What something more would buy; all differences from the choice without it. */
export interface MoreBuys {
  readonly more: More;
  readonly weight: number;
  readonly buildings: number;
  /** More of those that must be ringed; with them `weight` can be negative. */
  readonly mustDo: number;
  readonly isProved: boolean;
  /** What is still short where it buys nothing. */
  readonly runsOutFirst: RunsOut | null;
}

/** The most that a number of bags can ring. */
export interface CurvePoint {
  readonly bags: number;
  readonly weight: number;
  readonly buildings: number;
  readonly mustDo: number;
  readonly isProved: boolean;
}

/** Buildings ringed against bags. */
export interface BagCurve {
  /** With the people, sand and sheeting there are. */
  readonly today: readonly CurvePoint[];
  /** With people, sand and sheeting to match. */
  readonly matched: readonly CurvePoint[];
  /** What the most takes that today's bags can ring with all else to match; null where bags are not limited. */
  readonly toMatch: Takes | null;
  /** The most that can be ringed with nothing limited but each line's own time. */
  readonly all: Omit<CurvePoint, "bags">;
}
