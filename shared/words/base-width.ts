import { lengthIn, lengthUnit, type UnitSystem } from "../units.ts";

/** Widths as shown: from the center line to both toes, of the whole base, and this with its unit. */
export interface BaseWidths {
  readonly water: string;
  readonly land: string;
  readonly base: string;
  readonly inUnit: string;
}

interface Toes {
  readonly waterM: number;
  readonly landM: number;
}

/** The base is staked from the center line to either side: what is said of its width is the sum of the two as said. */
export function baseWidths({ waterM, landM }: Toes, system: UnitSystem): BaseWidths {
  const digits = system === "us" ? 1 : 2;
  const [water, land] = [waterM, landM].map((m) => lengthIn(m, system).toFixed(digits));
  const base = (Number(water) + Number(land)).toFixed(digits);
  return { water: water!, land: land!, base, inUnit: `${base} ${lengthUnit(system)}` };
}

/** The toes of a cut by the side of the water. */
export function toesOf(cross: {
  readonly waterSide: 1 | -1;
  readonly toeLeftM: number;
  readonly toeRightM: number;
}): Toes {
  const { waterSide, toeLeftM, toeRightM } = cross;
  return waterSide === 1
    ? { waterM: toeLeftM, landM: toeRightM }
    : { waterM: toeRightM, landM: toeLeftM };
}
