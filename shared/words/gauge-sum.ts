import type { Water } from "../plan.ts";
import { isWaterGiven, waterElevationAtGauge } from "../stage.ts";
import { grouped, lengthIn, lengthUnit, type UnitSystem } from "../units.ts";

const DIGITS = 2;
const MOST_DIGITS = 6;

/**
 * How a stage becomes an elevation: `27.80 + 26.35 - 0.95 = 53.20 ft NAVD 88`. With as many digits as it takes for
 * the figures shown to add up. Null while no stage is given.
 * @param datum what elevations count from; empty where that is not stated
 */
export function gaugeSumWords(water: Water, datum: string, system: UnitSystem): string | null {
  if (water.by !== "stage" || !isWaterGiven(water)) return null;
  const { stageM, gaugeZeroM, datumOffsetM } = water;
  const addends = [stageM, gaugeZeroM, ...(datumOffsetM === null ? [] : [datumOffsetM])].map((m) =>
    lengthIn(m, system),
  );
  const sum = lengthIn(waterElevationAtGauge(water), system);
  const digits = digitsThatAddUp(addends, sum);
  const write = (value: number) => grouped(Math.abs(value), digits);
  const [first, ...more] = addends;
  const terms = more.map((value) => ` ${isBelowZero(value, digits) ? "-" : "+"} ${write(value)}`);
  const signed = (value: number) => `${isBelowZero(value, digits) ? "-" : ""}${write(value)}`;
  const unit = lengthUnit(system);
  const result = `${signed(first!)}${terms.join("")} = ${signed(sum)} ${unit}`;
  return datum === "" ? result : `${result} ${datum}`;
}

function digitsThatAddUp(addends: readonly number[], sum: number): number {
  for (let digits = DIGITS; digits < MOST_DIGITS; digits++) {
    const shown = addends.reduce((total, value) => total + Number(value.toFixed(digits)), 0);
    if (Math.abs(shown - Number(sum.toFixed(digits))) < 0.5 * 10 ** -digits) return digits;
  }
  return MOST_DIGITS;
}

function isBelowZero(value: number, digits: number): boolean {
  return Number(value.toFixed(digits)) < 0;
}
