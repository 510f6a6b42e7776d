import { HOUR_S } from "../constants.ts";
import type { HoldingSettings } from "../plan.ts";
import { type Basin, levelFor, storedM3 } from "./basin.ts";
import { proposedPumps, pumpOptions } from "./pumps.ts";
import { runoffM3PerS } from "./rain.ts";
import type { FillingHour, Inside, Pumping, Spread } from "./types.ts";

/** Hours after which the level inside is told. */
const HOURS = [1, 2, 4, 8, 12, 24] as const;

export interface PumpingInputs {
  readonly holding: HoldingSettings;
  readonly seepageM3PerS: Spread;
  /** Plan area inside a ring, m2; null for a line. */
  readonly enclosedM2: number | null;
  readonly basin: Basin | null;
  readonly inside: Inside | null;
  /** Lowest water surface outside so many hours after its highest, metres: the inside rises no higher. */
  readonly outsideM: (hours: number) => number;
}

/**
 * What has to be pumped, with what, and what the level inside does without: low is the least seepage in dry
 * weather, high the most seepage and the rain going on. Source: LSU (rain, seepage and leaks make the
 * demand), RAT; the margin of 1.5 and the spare are from memory.
 */
export function pumpingFor(inputs: PumpingInputs): Pumping {
  const { holding, seepageM3PerS: seepage, enclosedM2, basin, inside } = inputs;
  const rain = enclosedM2 === null ? null : rainInside(holding, enclosedM2);
  const demand = {
    low: seepage.low + (rain?.low ?? 0),
    high: seepage.high + (rain?.high ?? 0),
  };
  const capacityM3PerS = demand.high * holding.pumpMargin;
  const options = pumpOptions(capacityM3PerS, holding.pumpSpares);
  const proposed = proposedPumps(options);
  const toStructureM3 =
    basin && inside && inside.structureM !== null ? storedM3(basin, inside.structureM) : null;
  const hoursAt = (flowM3PerS: number) => {
    if (toStructureM3 === null || !(flowM3PerS > 0)) return null;
    const hours = toStructureM3 / flowM3PerS / HOUR_S;
    return inside!.structureM! <= inputs.outsideM(hours) ? hours : null;
  };
  const left = proposed ? (proposed.working - 1) * proposed.eachM3PerS : 0;
  const excessM3PerS = Math.max(0, demand.high - left);
  return {
    rainM3PerS: rain,
    demandM3PerS: demand,
    capacityM3PerS,
    options,
    proposed,
    withoutPumps: filling(inputs, seepage.low, demand.high),
    hoursToStructure: { soonest: hoursAt(demand.high), latest: hoursAt(seepage.low) },
    oneFails: proposed && {
      excessM3PerS,
      hoursToStructure: hoursAt(excessM3PerS),
      levels: filling(inputs, 0, excessM3PerS),
    },
  };
}

function rainInside(holding: HoldingSettings, enclosedM2: number): Spread {
  return {
    low: runoffM3PerS(holding.runoffLow, holding.rainMPerS, enclosedM2),
    high: runoffM3PerS(holding.runoffHigh, holding.rainMPerS, enclosedM2),
  };
}

function filling({ basin, outsideM }: PumpingInputs, low: number, high: number): FillingHour[] {
  if (!basin) return [];
  const levelAfter = (hours: number, flowM3PerS: number) => {
    const levelM = levelFor(basin, hours * HOUR_S * flowM3PerS);
    return levelM < outsideM(hours) ? levelM : null;
  };
  return HOURS.map((hours) => ({
    hours,
    outsideM: outsideM(hours),
    lowM: levelAfter(hours, low),
    highM: levelAfter(hours, high),
  }));
}
