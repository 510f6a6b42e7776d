import type { Plan } from "../plan.ts";
import { waterElevationAtGauge } from "../stage.ts";
import type { Band } from "../time/hydrograph.ts";
import { sweepAt } from "./at-level.ts";
import { type BandLevels, bandLevels } from "./band-levels.ts";
import type { FoundChoice } from "./choice-types.ts";
import { type SameInAll, sameInAll } from "./same-in-all.ts";
import { countStates, floodedCount, type Sweep, shownStates } from "./shown-states.ts";

/** Lines of the forecast, lowest first. */
export const BANDS: readonly Band[] = ["low", "likely", "high"];

/** The check read at the highest water of each line of the forecast; null without these lines. */
export function bandSweeps(plan: Plan, sweep: Sweep): Readonly<Record<Band, Sweep>> | null {
  const levels = bandLevels(plan);
  if (!levels) return null;
  const sizedM = waterElevationAtGauge(plan.water);
  const at = (band: Band) => sweepAt(plan, sweep, sizedM, { levelM: levels[band], band, overM: 0 });
  return { low: at("low"), likely: at("likely"), high: at("high") };
}

/** The check read for ground that is lower than the data say by so many meters; higher where it is below 0. */
export function offSweep(plan: Plan, sweep: Sweep, lowerM: number): Sweep {
  const sizedM = waterElevationAtGauge(plan.water);
  const levelM = sizedM + lowerM;
  return sweepAt(plan, sweep, sizedM, { levelM, band: "likely", overM: lowerM });
}

/** What is chosen for one line of the forecast. */
export interface BandChoice {
  /** Highest water at the gauge, meters. */
  readonly levelM: number;
  /** How many buildings flood. */
  readonly flooded: number;
  readonly choice: FoundChoice;
}

/** What is chosen for each line of the forecast, side by side. */
export interface BandChoices {
  readonly bands: Readonly<Record<Band, BandChoice>>;
  readonly same: SameInAll;
}

/** Puts the choices for a forecast's lines side by side. */
export function besideEachOther(
  levels: BandLevels,
  sweeps: Readonly<Record<Band, Sweep>>,
  choices: Readonly<Record<Band, FoundChoice>>,
): BandChoices {
  const of = (band: Band): BandChoice => ({
    levelM: levels[band],
    flooded: floodedCount(countStates(shownStates(sweeps[band], null).values())),
    choice: choices[band],
  });
  return {
    bands: { low: of("low"), likely: of("likely"), high: of("high") },
    same: sameInAll(BANDS.map((band) => choices[band])),
  };
}
