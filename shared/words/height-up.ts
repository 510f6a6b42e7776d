import { heightUp } from "../field/rounded-up.ts";
import { formatStation, lengthUnit, type UnitSystem } from "../units.ts";
import { type PlaceHeights, stationWords } from "./reading.ts";

/** `2.2 ft` or `0.67 m`, rounded up. */
export function heightUpWords(m: number, system: UnitSystem): string {
  return `${heightUpFigure(m, system)} ${lengthUnit(system)}`;
}

/** The figure of {@link heightUpWords}. */
export function heightUpFigure(m: number, system: UnitSystem): string {
  return heightUp(m, system).toFixed(system === "us" ? 1 : 2);
}

/** The stake on the map of a crew, its height rounded up as everywhere in the field: `4+18: 4.4 ft`. */
export function stakeOnMapWords(at: PlaceHeights, system: UnitSystem): string {
  const { chainageM, greatestHeightM } = at;
  if (greatestHeightM === null || greatestHeightM <= 0) return stationWords(at, system);
  return `${formatStation(chainageM, system)}: ${heightUpWords(greatestHeightM, system)}`;
}
