import type { Plan } from "../../shared/plan.ts";

/** What a request reads, by identity: an answer is of the plan as it stands while none of it was replaced. */
export type Parts = readonly unknown[];

/** Every part of a plan, and whether a line's sizes follow from it. */
const SIZING: Readonly<Record<keyof Required<Plan>, boolean>> = {
  title: false,
  structures: true,
  alignments: true,
  noGo: true,
  sources: true,
  gauge: true,
  flow: true,
  water: true,
  ground: true,
  section: true,
  practice: true,
  holding: true,
  time: true,
  terrain: false,
  chosenId: false,
  carried: false,
};
const SIZING_KEYS = (Object.keys(SIZING) as (keyof Plan)[]).filter((key) => SIZING[key]);

/** What the sizes of the lines, their checks, stability, time and cross-sections follow from, beside the ground. */
export function sizingParts(of: Plan): Parts {
  return SIZING_KEYS.map((key) => of[key]);
}

/** What the sideways cost of a line follows from, beside the ground. */
export function sidewaysParts({
  alignments,
  water,
  flow,
  gauge,
  section,
  practice,
  noGo,
}: Plan): Parts {
  return [alignments, water, flow, gauge, section, practice, noGo];
}

export function sameParts(a: Parts, b: Parts): boolean {
  return a.length === b.length && a.every((part, k) => part === b[k]);
}
