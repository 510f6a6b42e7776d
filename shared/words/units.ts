import { FOOT_M, INCH_M } from "../constants.ts";
import {
  formatArea,
  formatDistance,
  formatElevation,
  formatFlow,
  formatFlowRange,
  formatFlowUpTo,
  formatLength,
  formatSmallMass,
  formatSmallVolume,
  formatStation,
  formatVolume,
  grouped,
  shownLengthM,
  type UnitSystem,
} from "../units.ts";

/** Writes SI figures in one unit system; every sentence with figures is made with one of these. */
export interface Units {
  readonly system: UnitSystem;
  /** `5.1 ft` or `1.55 m`. */
  readonly length: (m: number, digits?: number) => string;
  /** A height over a limit, with as many decimals as tell it from the limit: `4.4 ft`, `4.04 ft` over `4.0 ft`. */
  readonly lengthOver: (m: number, limitM: number) => string;
  /** `72 ft` or `22 m`: along the line, whole. */
  readonly distance: (m: number) => string;
  /** `2.3 mi` or `3.7 km`, and in feet or meters where it is less. */
  readonly far: (m: number) => string;
  /** A round figure of a rule as its source has it: `3 ft`, `1.5 ft`, or `0.91 m`. */
  readonly figure: (m: number) => string;
  /** `18 to 24 in` or `46 to 61 cm`. */
  readonly smallRange: (lowM: number, highM: number) => string;
  /** `14 in` or `36 cm`. */
  readonly small: (m: number) => string;
  /** `873.90 ft` or `266.36 m`. */
  readonly elevation: (m: number) => string;
  /** `12+50` or `0+381`. */
  readonly station: (chainageM: number) => string;
  /** `36 lb` or `16.3 kg`: what a person lifts. */
  readonly mass: (kg: number) => string;
  /** `164 cu yd` or `125 m³`. */
  readonly volume: (m3: number) => string;
  /** `0.325 cu ft` or `9.2 L`. */
  readonly smallVolume: (m3: number) => string;
  /** `1,200 sq ft` or `111 m²`. */
  readonly area: (m2: number) => string;
  /** `142 gpm` or `9.0 L/s`. */
  readonly flow: (m3PerS: number) => string;
  /** `780 gpm` or `49 L/s`: rounded up to two figures, as the end of a range is. */
  readonly flowUpTo: (m3PerS: number) => string;
  /** `40 to 210 gpm` or `2.5 to 13 L/s`. */
  readonly flows: (range: { readonly low: number; readonly high: number }) => string;
}

/** The writer of one unit system. */
export function unitsOf(system: UnitSystem): Units {
  return UNITS[system];
}

function makeUnits(system: UnitSystem): Units {
  return {
    system,
    length: (m, digits) => formatLength(m, system, digits),
    lengthOver: (m, limitM) => lengthOver(m, limitM, system),
    distance: (m) => formatLength(m, system, 0),
    far: (m) => formatDistance(m, system),
    figure: (m) => (system === "us" ? `${shortest(m / FOOT_M)} ft` : formatLength(m, system)),
    smallRange: (lowM, highM) => {
      const [low, high] = [smallOf(lowM, system), smallOf(highM, system)];
      return low === high
        ? `${low} ${smallUnit(system)}`
        : `${low} to ${high} ${smallUnit(system)}`;
    },
    small: (m) => `${smallOf(m, system)} ${smallUnit(system)}`,
    elevation: (m) => formatElevation(m, system),
    station: (m) => formatStation(m, system, 0),
    mass: (kg) => formatSmallMass(kg, system),
    volume: (m3) => formatVolume(m3, system),
    smallVolume: (m3) => formatSmallVolume(m3, system),
    area: (m2) => formatArea(m2, system),
    flow: (m3PerS) => formatFlow(m3PerS, system),
    flowUpTo: (m3PerS) => formatFlowUpTo(m3PerS, system),
    flows: (range) => formatFlowRange(range, system),
  };
}

/** Tried in turn where a height is over a limit and the usual decimals do not show it. */
const DECIMALS = [2, 3, 4] as const;

function lengthOver(m: number, limitM: number, system: UnitSystem): string {
  const isShownOver = (digits?: number) =>
    shownLengthM(m, system, digits) > shownLengthM(limitM, system, digits);
  const digits = isShownOver() ? undefined : DECIMALS.find(isShownOver);
  return formatLength(m, system, digits);
}

const UNITS: Readonly<Record<UnitSystem, Units>> = {
  us: makeUnits("us"),
  metric: makeUnits("metric"),
};

function smallUnit(system: UnitSystem): "in" | "cm" {
  return system === "us" ? "in" : "cm";
}

/** Whole inches or centimetres; one decimal of a centimetre below 10. */
function smallOf(m: number, system: UnitSystem): string {
  if (system === "us") return shortest(m / INCH_M);
  return shortest(m * 100, m < 0.1 ? 1 : 0);
}

/** As few decimals as the figure needs, at most `most`: `3`, `1.5`. */
function shortest(value: number, most = 2): string {
  return grouped(Number(value.toFixed(most)), decimalsOf(Number(value.toFixed(most))));
}

function decimalsOf(value: number): number {
  return (String(value).split(".")[1] ?? "").length;
}
