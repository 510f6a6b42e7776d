import { nearestChainage } from "../line-shapes/nearest-chainage.ts";
import { degreesInMetres } from "../line-shapes/offset.ts";
import type { LonLat } from "../plan.ts";
import type { Walk } from "../sizing-types.ts";
import { alongM, type Staked, stakeBeside, stakeNear } from "./stakes.ts";

/** Where a receiver says it is. */
export interface Fix {
  readonly at: LonLat;
  /** Radius within which it is right 19 times in 20, metres. Source: W3C Geolocation, accuracy attribute (95 % confidence). */
  readonly accuracyM: number;
}

/**
 * A fix finds a stake when it is as good as the way to the next one, within these bounds, metres: what a phone gives
 * in the open, and the most at which stakes are told by walking on. Source: judgement.
 */
const POOR_ACCURACY_M = { least: 5, most: 15 } as const;
/** Further off the line than this beyond the accuracy, a person is not at the line, metres. Source: judgement. */
const OFF_LINE_M = 30;
/** Samples further apart along the line than this many accuracies are another stretch. */
const SAME_STRETCH = 2;

/** A person along the line, from a fix. */
export interface PlaceOnLine {
  readonly chainageM: number;
  /** Distance from the centre line, metres. */
  readonly awayM: number;
  readonly accuracyM: number;
  /** Index of the nearest stake. */
  readonly stake: number;
  /** Whether the fix is good enough to tell one stake from the next. */
  readonly isPoor: boolean;
  /** Whether it is too far from the line to be on it. */
  readonly isOff: boolean;
  /** Another chainage that the fix fits as well, where the line passes twice within its accuracy; else null. */
  readonly alsoM: number | null;
}

/** Where along a line a fix puts a person; null for a line without samples, or a fix that is no place. */
export function placeOnLine(walk: Walk, staked: Staked, fix: Fix): PlaceOnLine | null {
  const { at, accuracyM } = fix;
  if (![...at, accuracyM].every(Number.isFinite) || accuracyM < 0) return null;
  const nearest = nearestChainage(walk, at);
  if (!nearest) return null;
  const stake = stakeNear(staked, nearest.chainageM);
  return {
    ...nearest,
    accuracyM,
    stake,
    isPoor: accuracyM > poorFromM(staked, stake),
    isOff: nearest.awayM > accuracyM + OFF_LINE_M,
    alsoM: alsoAt(walk, staked, fix, nearest),
  };
}

/** Above which accuracy a fix does not tell a stake from those beside it, metres. */
function poorFromM(staked: Staked, stake: number): number {
  const { least, most } = POOR_ACCURACY_M;
  const at = staked.stakes[stake]?.chainageM ?? 0;
  const gapsM = ([1, -1] as const).flatMap((way) => {
    const beside = stakeBeside(staked, stake, way);
    return beside === null ? [] : Math.abs(alongM(staked, at, staked.stakes[beside]!.chainageM));
  });
  return Math.max(least, Math.min(most, ...gapsM));
}

/** The nearest other stretch of the line within the accuracy of the fix. */
function alsoAt(
  { chainageM, lonLat }: Walk,
  staked: Staked,
  { at, accuracyM }: Fix,
  nearest: { readonly chainageM: number; readonly awayM: number },
): number | null {
  const [perLon, perLat] = degreesInMetres(at[1]);
  const reachM = nearest.awayM + accuracyM;
  const apartM = SAME_STRETCH * reachM;
  let found: number | null = null;
  let leastM = reachM;
  for (let i = 0; i < chainageM.length; i++) {
    const eastM = (lonLat[2 * i]! - at[0]) * perLon;
    const northM = (lonLat[2 * i + 1]! - at[1]) * perLat;
    const awayM = Math.hypot(eastM, northM);
    if (awayM > leastM) continue;
    if (Math.abs(alongM(staked, nearest.chainageM, chainageM[i]!)) <= apartM) continue;
    leastM = awayM;
    found = chainageM[i]!;
  }
  return found;
}
