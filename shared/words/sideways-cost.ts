import type { SidewaysCostResponse } from "../search-types.ts";
import { formatCount, lengthFrom, lengthUnit, type UnitSystem } from "../units.ts";

/** Length of line that a cost is said for, in the person's unit: ten feet or ten metres, moved by one. */
const LENGTH = 10;

/** "bags per 10 ft of line moved 1 ft". */
export function costUnit(system: UnitSystem): string {
  const unit = lengthUnit(system);
  return `bags per ${LENGTH} ${unit} of line moved 1 ${unit}`;
}

/** A cost in bags for {@link costUnit}. */
export function costIn(bagsPerM2: number, system: UnitSystem): number {
  return bagsPerM2 * lengthFrom(LENGTH, system) * lengthFrom(1, system);
}

/** The station nearest to a chainage; -1 when there is none. */
export function stationAt({ chainageM }: SidewaysCostResponse, atM: number): number {
  let nearest = -1;
  for (const [k, each] of chainageM.entries()) {
    const isNearer = nearest < 0 || Math.abs(each - atM) < Math.abs(chainageM[nearest]! - atM);
    if (isNearer) nearest = k;
  }
  return nearest;
}

/** "saves 12", "costs 30", "changes little", "not possible". */
export function costWords(bagsPerM2: number, system: UnitSystem): string {
  if (Number.isNaN(bagsPerM2)) return "not possible there";
  const bags = Math.round(costIn(bagsPerM2, system));
  if (bags === 0) return "changes less than a bag";
  return `${bags < 0 ? "saves" : "costs"} ${formatCount(Math.abs(bags))}`;
}
