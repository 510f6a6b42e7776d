import type { Levels } from "./types.ts";
import type { Zone } from "./zones.ts";

/**
 * Physical elements that are a water level, feet in English units and meters in standard ones, and what each counts
 * from. Source: SHEF Code Manual (NWS, July 5, 2012), table 1 and appendix G, from memory.
 */
export const LEVEL_ELEMENTS: ReadonlyMap<string, Levels> = new Map<string, Levels>([
  ["HG", "stage"],
  ["HK", "stage"],
  ["HM", "stage"],
  ["HF", "elevation"],
  ["HH", "elevation"],
  ["HL", "elevation"],
  ["HP", "elevation"],
  ["HT", "elevation"],
  ["HW", "elevation"],
]);

/** Standard and daylight zones, hours ahead of UTC, and local ones by a place. Source: SHEF Code Manual, table 8, from memory. */
const FIXED: Readonly<Record<string, number>> = {
  ...{ Z: 0, J: 8, NS: -3.5, ND: -2.5, AS: -4, AD: -3, ES: -5, ED: -4, CS: -6, CD: -5 },
  ...{ MS: -7, MD: -6, PS: -8, PD: -7, YS: -9, YD: -8, LS: -9, LD: -8, HS: -10, HD: -9 },
  ...{ BS: -11, BD: -10 },
};
const PLACES: Readonly<Record<string, string>> = {
  ...{ N: "America/St_Johns", A: "America/Halifax", E: "America/New_York", C: "America/Chicago" },
  ...{ M: "America/Denver", P: "America/Los_Angeles", L: "America/Anchorage" },
  ...{ H: "Pacific/Honolulu" },
};
/** Local zones that are no longer kept. */
const FORMER: Readonly<Record<string, string>> = { Y: "Yukon", B: "Bering" };

/** The zone of a SHEF code; the name of a former one; null for a word that is no code. */
export function shefZone(code: string): Zone | string | null {
  if (Object.hasOwn(FIXED, code)) return { kind: "offset", offsetMin: 60 * FIXED[code]! };
  if (Object.hasOwn(PLACES, code)) return { kind: "place", name: PLACES[code]! };
  return Object.hasOwn(FORMER, code) ? FORMER[code]! : null;
}

/** Data qualifiers with which a value is not used: bad by hand, rejected by level 1. Source: as above, table 10, from memory. */
export const FAILED_QUALIFIERS: ReadonlySet<string> = new Set(["B", "R"]);
/** With which it is used and said: estimated, flagged, questioned, withheld. Source: as above, table 10, from memory. */
export const DOUBTFUL_QUALIFIERS: ReadonlySet<string> = new Set(["E", "F", "Q", "W"]);

/**
 * A parameter code in full, seven letters: element, duration, type, source, extremum, probability; I, RZ, Z and Z
 * where it leaves them out. Source: as above, 3.3 and 4.4, from memory.
 */
export function fullCode(code: string): string {
  return code.slice(0, 7) + "XXIRZZZ".slice(Math.min(7, code.length));
}

/** Forecast, not observed: type F. */
export function isForecastCode(full: string): boolean {
  return full[3] === "F";
}

/** A highest or lowest of some time, or of a probability other than that of the forecast itself. */
export function isExtremeCode(full: string): boolean {
  return full[5] !== "Z" || full[6] !== "Z";
}
