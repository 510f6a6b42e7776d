import { DEGREE_M } from "../../../shared/constants.ts";
import type { LonLat, Plan } from "../../../shared/plan.ts";
import type { Footprint } from "../../../shared/plan-footprints.ts";
import { footprintLayer, isTaken, keepsOff } from "../footprints.ts";
import { asNoGo } from "../imported-by-lines.ts";
import { withoutCarried } from "../question.ts";

/** As far as a line may run from what it goes round, and a building more, metres. */
const NEAR_M = 300;
/** The nearest count: a search among more would keep the person waiting. */
const MOST = 120;

/**
 * The plan as a search for a line takes it: imported footprints about its buildings, which nobody has taken, are kept off
 * as no-go areas are, unless the person says otherwise. A ring through the neighbor's house is none.
 */
export function planToSearch(of: Plan): Plan {
  const layer = footprintLayer.peek();
  if (!layer || !keepsOff.peek()) return withoutCarried(of);
  const corners = of.structures.flatMap(({ outline }) => outline);
  const near = layer.footprints
    .filter((footprint) => !isTaken(footprint))
    .map((footprint) => ({ footprint, farM: farFrom(corners, footprint) }))
    .filter(({ farM }) => farM < NEAR_M)
    .sort((a, b) => a.farM - b.farM)
    .slice(0, MOST);
  return {
    ...withoutCarried(of),
    noGo: [...of.noGo, ...near.map(({ footprint }, k) => asNoGo(footprint, k))],
  };
}

/** From the nearest of places to a footprint's middle, metres on a flat Earth. */
function farFrom(places: readonly LonLat[], { middle }: Footprint): number {
  const [lon, lat] = middle;
  const narrow = Math.cos((lat * Math.PI) / 180);
  const far = ([otherLon, otherLat]: LonLat) =>
    DEGREE_M * Math.hypot((otherLon - lon) * narrow, otherLat - lat);
  return places.reduce((least, place) => Math.min(least, far(place)), Number.POSITIVE_INFINITY);
}
