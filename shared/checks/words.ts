import {
  formatElevation,
  formatFlow,
  formatFlowRange,
  formatLength,
  formatSmallMass,
  formatStation,
} from "../units.ts";
import type { Stretch } from "./stretch.ts";

/** A height or distance in both units: `5.1 ft (1.55 m)`. */
export function lengthWords(m: number): string {
  return `${formatLength(m, "us")} (${formatLength(m, "metric")})`;
}

/** A distance along the line in both units, whole: `72 ft (22 m)`. */
export function distanceWords(m: number): string {
  return `${formatLength(m, "us", 0)} (${formatLength(m, "metric", 0)})`;
}

/** An elevation in both units: `873.90 ft (266.36 m)`. */
export function elevationWords(m: number): string {
  return `${formatElevation(m, "us")} (${formatElevation(m, "metric")})`;
}

/** What a person lifts, in both units: `36 lb (16.3 kg)`. */
export function massWords(kg: number): string {
  return `${formatSmallMass(kg, "us")} (${formatSmallMass(kg, "metric")})`;
}

/** A station in feet, and the chainage in metres: `12+50 (381 m)`. */
export function stationWords(chainageM: number): string {
  return `${formatStation(chainageM, "us")} (${chainageM.toFixed(0)} m)`;
}

/** Where a stretch runs: `12+50 to 13+25 (381 to 404 m)`, or all of the line, or through the closing point. */
export function stretchWords({ parts, whole }: Stretch): string {
  if (whole) return "The whole line";
  const fromM = parts[0]!.fromM;
  const toM = parts.at(-1)!.toM;
  const closing = parts.length > 1 ? " over the closing point" : "";
  const feet = [formatStation(fromM, "us"), formatStation(toM, "us")];
  const metres = [fromM.toFixed(0), toM.toFixed(0)];
  if (feet[0] === feet[1]) return `${feet[0]} (${metres[0]} m)`;
  return `${feet[0]} to ${feet[1]}${closing} (${metres[0]} to ${metres[1]} m)`;
}

/** A flow in both units: `142 gpm (9.0 L/s)`. */
export function flowWords(m3PerS: number): string {
  return `${formatFlow(m3PerS, "us")} (${formatFlow(m3PerS, "metric")})`;
}

/** A range of flows in both units, in two figures: `40 to 210 gpm (2.5 to 13 L/s)`. */
export function flowsWords(range: { readonly low: number; readonly high: number }): string {
  return `${formatFlowRange(range, "us")} (${formatFlowRange(range, "metric")})`;
}
