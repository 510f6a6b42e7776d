import type { PlaceOnLine } from "../field/place-on-line.ts";
import { roundedUp } from "../field/rounded-up.ts";
import { alongM, type Staked } from "../field/stakes.ts";
import { formatCount, formatStation, lengthIn, lengthUnit, type UnitSystem } from "../units.ts";

/** Why there is no position: not allowed, no receiver, or no signal. */
export type GpsTrouble = "refused" | "none" | "lost";

const TROUBLES: Readonly<Record<GpsTrouble, string>> = {
  refused:
    "This page may not use the phone's location. Allow it in the browser's settings, or go by < and > and the number on the stake.",
  none: "This phone gives no position. Go by < and > and the number on the stake.",
  lost: "No GPS signal. Go by < and > and the number on the stake.",
};

/** Why there is no position, and what to do. */
export function gpsTroubleWords(trouble: GpsTrouble): string {
  return TROUBLES[trouble];
}

export const GPS_OFF = "GPS is off. Go by < and >, or use GPS.";
export const GPS_WAITING = "Finding you by GPS.";

/** How far it is to a stake along the line: `53 ft ahead`, `12 ft back`, `Here`. */
export function toStakeWords(
  place: PlaceOnLine,
  staked: Staked,
  stakeM: number,
  system: UnitSystem,
): string {
  const towardM = alongM(staked, place.chainageM, stakeM);
  const far = Math.round(lengthIn(Math.abs(towardM), system));
  if (far === 0) return "Here";
  return `${formatCount(far)} ${lengthUnit(system)} ${towardM > 0 ? "ahead" : "back"}`;
}

/** How far a position is to be trusted, and what to do about it. */
export function placeWords(place: PlaceOnLine, system: UnitSystem): string {
  const { awayM, accuracyM, chainageM, alsoM, isOff, isPoor } = place;
  const within = upWords(accuracyM, system);
  if (isOff) return `You are ${upWords(awayM, system)} from the line. GPS is within ${within}.`;
  if (isPoor) {
    return `GPS is only within ${within}: it cannot tell one stake from the next. Go by the number on the stake.`;
  }
  if (alsoM !== null) {
    const [here, there] = [chainageM, alsoM].map((m) => formatStation(m, system, 0));
    return `GPS is within ${within} and fits ${here} and ${there}. Go by the number on the stake.`;
  }
  return `GPS is within ${within}. Find the stake by its number.`;
}

function upWords(m: number, system: UnitSystem): string {
  return `${formatCount(roundedUp(lengthIn(m, system), 0))} ${lengthUnit(system)}`;
}

/** Beside the person's mark on the map. */
export const YOU = "you";

/** Why nobody is on the map, in one line. */
export function gpsShortWords(kind: "off" | "waiting" | "fix" | GpsTrouble): string {
  if (kind === "off") return "GPS is off: press Me to use it.";
  return kind === "waiting" || kind === "fix" ? GPS_WAITING : gpsTroubleWords(kind);
}
