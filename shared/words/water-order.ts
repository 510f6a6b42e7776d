import type { Plan } from "../plan.ts";
import type { UnitSystem } from "../units.ts";
import type { Overtopping } from "../water-types.ts";
import { raisedLevelWords } from "./water.ts";

/** Places that a rising river goes over at one level. */
export interface OverStep {
  readonly over: Overtopping["over"];
  /** "stage 32.0 ft" */
  readonly level: string;
  /** In the order of the trace: where the levee is highest first. */
  readonly places: readonly Overtopping[];
}

/** How many places the profile numbers. */
const NUMBERED = 3;

/** The first places that a rising river goes over, no two nearer to each other than half a station interval. */
export function firstPlaces(
  order: readonly Overtopping[],
  { practice }: Plan,
): readonly Overtopping[] {
  const apartM = practice.stationIntervalM / 2;
  const picked: Overtopping[] = [];
  for (const place of order) {
    if (picked.length === NUMBERED) break;
    const isNew = picked.every(({ chainageM }) => Math.abs(chainageM - place.chainageM) >= apartM);
    if (isNew) picked.push(place);
  }
  return picked;
}

/** The places of a line in the order a rising river goes over them; what goes over at one level, in words, is one step. */
export function overtoppingSteps(
  order: readonly Overtopping[],
  plan: Plan,
  system: UnitSystem,
): readonly OverStep[] {
  const steps: { over: Overtopping["over"]; level: string; places: Overtopping[] }[] = [];
  for (const place of order) {
    const level = raisedLevelWords(place.riseM, place.elevationM, plan, system);
    const last = steps.at(-1);
    const isSame = last?.over === place.over && (place.over === "crest" || last.level === level);
    if (isSame) last.places.push(place);
    else steps.push({ over: place.over, level, places: [place] });
  }
  return steps;
}
