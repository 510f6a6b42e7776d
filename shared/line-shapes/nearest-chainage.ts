import type { Walk } from "../sizing-types.ts";
import { degreesInMetres } from "./offset.ts";

/** The chainage nearest to a place and how far it is, both in metres; null for a line without samples. */
export function nearestChainage(
  walk: Walk,
  at: readonly [number, number],
): { readonly chainageM: number; readonly awayM: number } | null {
  const count = walk.chainageM.length;
  if (count === 0) return null;
  const [perLon, perLat] = degreesInMetres(at[1]);
  let nearest = { chainageM: walk.chainageM[0]!, awayM: Number.POSITIVE_INFINITY };
  for (let i = 0; i + 1 < count; i++) {
    const ax = (walk.lonLat[2 * i]! - at[0]) * perLon;
    const ay = (walk.lonLat[2 * i + 1]! - at[1]) * perLat;
    const dx = (walk.lonLat[2 * i + 2]! - walk.lonLat[2 * i]!) * perLon;
    const dy = (walk.lonLat[2 * i + 3]! - walk.lonLat[2 * i + 1]!) * perLat;
    const along = -(ax * dx + ay * dy) / (dx * dx + dy * dy);
    const share = Number.isFinite(along) ? Math.min(1, Math.max(0, along)) : 0;
    const awayM = Math.hypot(ax + dx * share, ay + dy * share);
    if (awayM >= nearest.awayM) continue;
    const [from, to] = [walk.chainageM[i]!, walk.chainageM[i + 1]!];
    nearest = { chainageM: from + (to - from) * share, awayM };
  }
  return nearest;
}
