import { signal } from "@preact/signals";
import type { Alignment, Plan } from "../../../shared/plan.ts";
import { isProtected } from "../../../shared/protected.ts";
import {
  DEFAULT_KEY_IN_M,
  DEFAULT_MAX_CORNERS,
  type RingOptions,
  WINDOW_REACHES_M,
} from "../../../shared/search-types.ts";
import { lengthFrom, type UnitSystem } from "../../../shared/units.ts";

/** What the person asks of the search; lasts as long as the page. */
export interface RingSettings {
  /** Structures that are left out, by id: all others are gone round. */
  readonly leftOut: readonly string[];
  /** Which of the offered reaches; null = inside the ring `withinId`. */
  readonly reach: number | null;
  readonly withinId: string | null;
  readonly maxCorners: number;
  readonly keyInM: number;
}

const REACHES_FT = [100, 200, 400, 800] as const;

export const ringSettings = signal<RingSettings>({
  leftOut: [],
  reach: 1,
  withinId: null,
  maxCorners: DEFAULT_MAX_CORNERS,
  keyInM: DEFAULT_KEY_IN_M,
});

/** How far from the structures a line may run, in round figures of the unit system; metres, rising. */
export function reachesM(system: UnitSystem): readonly number[] {
  if (system === "metric") return WINDOW_REACHES_M;
  return REACHES_FT.map((feet) => lengthFrom(feet, "us"));
}

/** The settings as the engine takes them. A ring to stay inside that is gone gives way to the second reach. */
export function ringOptionsOf(settings: RingSettings, plan: Plan, system: UnitSystem): RingOptions {
  const within = ringsOf(plan).find(
    ({ id }) => settings.reach === null && id === settings.withinId,
  );
  const reachM = reachesM(system)[settings.reach ?? 1]!;
  const { maxCorners, keyInM } = settings;
  return {
    structureIds: goneRound(settings, plan),
    window: within ? { outline: within.corners } : { reachM },
    ...{ maxCorners, keyInM },
  };
}

/** Ids of the structures to go round; all of them when none is left. */
export function goneRound({ leftOut }: RingSettings, plan: Plan): readonly string[] {
  const all = plan.structures.filter(isProtected).map(({ id }) => id);
  const chosen = all.filter((id) => !leftOut.includes(id));
  return chosen.length > 0 ? chosen : all;
}

/** Rings of the plan, inside which a line can be asked to stay. */
export function ringsOf(plan: Plan): readonly Alignment[] {
  return plan.alignments.filter(({ kind }) => kind === "ring");
}
