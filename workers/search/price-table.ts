import type { SectionModel } from "./types.ts";

/**
 * Price of a metre of line by its height: placed area, a small price of length, and the price over the
 * limit; and the half base. Tabulated finely enough (2 mm) that straight interpolation is exact to 1e-5 m2.
 */
export interface PriceTable {
  /** m3 per metre at heights 0, 1 / perM, 2 / perM ... metres. */
  readonly price: Float64Array;
  /** Half base at the same heights, metres. */
  readonly halfBaseM: Float64Array;
  readonly perM: number;
  /** Greatest height in the table, metres; beyond it the price goes on at its last slope. */
  readonly topM: number;
}

/**
 * Price of length where nothing has to be built, m3 per metre: keeps free loops short without moving
 * the levee (10 m of it weigh as much as 10 cm of a metre-high levee).
 */
const LENGTH_PRICE = 0.01;
/** Price over the limit, m3 per metre of line and metre of excess. */
const EXCESS_PRICE = 100;
const STEPS_PER_M = 500;
/** The table goes on this far over the limit, metres. */
const BEYOND_LIMIT_M = 6;

export function priceTable(section: SectionModel, limitM: number): PriceTable {
  const topM = Math.ceil(limitM + BEYOND_LIMIT_M);
  const count = topM * STEPS_PER_M + 2;
  const price = new Float64Array(count);
  const halfBaseM = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const heightM = i / STEPS_PER_M;
    const excessM = Math.max(0, heightM - limitM);
    price[i] = section.areaAt(heightM) + LENGTH_PRICE + EXCESS_PRICE * excessM;
    halfBaseM[i] = section.halfBaseAt(heightM);
  }
  return { price, halfBaseM, perM: STEPS_PER_M, topM };
}

/** Price of a metre of line at a height, m3 per metre; NaN for NaN. */
export function priceAt(table: PriceTable, heightM: number): number {
  if (heightM <= 0) return table.price[0]!;
  return between(table.price, heightM * table.perM);
}

/** Half base at a height, metres. */
export function halfBaseAt(table: PriceTable, heightM: number): number {
  if (heightM <= 0) return table.halfBaseM[0]!;
  return between(table.halfBaseM, heightM * table.perM);
}

function between(values: Float64Array, at: number): number {
  let i = Math.floor(at);
  if (i > values.length - 2) i = values.length - 2;
  return values[i]! + (at - i) * (values[i + 1]! - values[i]!);
}
