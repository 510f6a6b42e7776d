import type { Plan } from "../../shared/plan.ts";

/** What a request reads of the plan: all of a part, some of its figures, or nothing. A new part must be decided on. */
export type Reads = {
  readonly [K in keyof Required<Plan>]: boolean | readonly (keyof NonNullable<Plan[K]>)[];
};

const NOTHING = {
  title: false,
  structures: false,
  alignments: false,
  noGo: false,
  sources: false,
  culverts: false,
  drains: false,
  possibleCulverts: false,
  roads: false,
  workPlaces: false,
  gauge: false,
  flow: false,
  water: false,
  ground: false,
  section: false,
  practice: false,
  holding: false,
  time: false,
  leave: false,
  survey: false,
  progress: false,
  terrain: false,
  chosenId: false,
  carried: false,
} as const satisfies Reads;

/** The sizes of the lines, their checks, stability, time and cross-sections. */
export const SIZING = {
  title: false,
  structures: true,
  alignments: true,
  noGo: true,
  sources: true,
  culverts: true,
  drains: true,
  possibleCulverts: false,
  roads: false,
  workPlaces: false,
  gauge: true,
  flow: true,
  water: true,
  ground: true,
  section: true,
  practice: true,
  holding: true,
  time: true,
  leave: true,
  progress: false,
  survey: ["readings"],
  terrain: false,
  chosenId: false,
  carried: false,
} as const satisfies Reads;

/** Where the water goes, without and with each line. */
export const WATER = {
  ...NOTHING,
  structures: true,
  alignments: true,
  sources: true,
  culverts: true,
  drains: true,
  possibleCulverts: true,
  roads: true,
  gauge: true,
  flow: true,
  water: true,
  ground: true,
  time: ["forecast"],
  leave: true,
  practice: ["stationIntervalM"],
} as const satisfies Reads;

/** What moving a line sideways costs. */
export const SIDEWAYS = {
  ...NOTHING,
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
} as const satisfies Reads;

/** The ring that needs the fewest bags; not the lines that are drawn already. */
export const SEARCH = {
  ...NOTHING,
  structures: true,
  noGo: true,
  sources: true,
  gauge: true,
  flow: true,
  water: true,
  ground: ["correctionM"],
  section: true,
  practice: ["limitM", "setbackM"],
} as const satisfies Reads;

/** What many buildings are checked by; not the buildings and lines of the plan itself. */
export const BUILDINGS = {
  ...NOTHING,
  noGo: true,
  sources: true,
  culverts: true,
  drains: true,
  gauge: true,
  flow: true,
  water: true,
  ground: true,
  section: true,
  practice: true,
  time: true,
} as const satisfies Reads;

/** What an answer follows from, by identity: it is of the plan as it stands while none of it was replaced. */
export type Parts = readonly unknown[];

/** The parts of a plan that a request reads. */
export function partsOf(plan: Plan, reads: Reads): Parts {
  return (Object.keys(reads) as (keyof Plan)[]).flatMap((key) => {
    const figures: boolean | readonly PropertyKey[] = reads[key];
    if (typeof figures === "boolean") return figures ? [plan[key]] : [];
    const part = plan[key] as unknown as Readonly<Record<PropertyKey, unknown>> | null | undefined;
    return figures.map((figure) => part?.[figure]);
  });
}

export function sameParts(a: Parts, b: Parts): boolean {
  return a.length === b.length && a.every((part, k) => part === b[k]);
}
