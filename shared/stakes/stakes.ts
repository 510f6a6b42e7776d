import type { Plan } from "../plan.ts";
import { type PlanPlane, planPlane } from "../plan-plane.ts";
import type { SizedLine, Station } from "../sizing-types.ts";
import { type TiePair, tieFinder } from "./ties.ts";

/** How a stake is found on the ground. */
export type Found =
  | { readonly by: "ties"; readonly ties: TiePair }
  /** On the straight line between the stakes at two corners of the levee line. */
  | { readonly by: "line"; readonly fromM: number; readonly toM: number }
  /** A ring's end is its start. */
  | { readonly by: "start" }
  /** A corner of the levee line that no building has ties for. */
  | { readonly by: "coordinates" };

/** One stake of a line: its figures, and how a crew finds where it goes. */
export interface Stake {
  readonly station: Station;
  readonly found: Found;
  /** Straight from the stake before: length, metres, and degrees clockwise from true north; null for the first. */
  readonly fromBefore: { readonly distanceM: number; readonly bearingDeg: number } | null;
}

/** Closer than this a station is at a corner, metres. */
const SAME_M = 0.01;

const made = new WeakMap<
  SizedLine,
  { readonly of: Plan["structures"]; readonly stakes: Stake[] }
>();

/** The stakes of a sized line of a plan, made once. */
export function lineStakes(plan: Plan, line: SizedLine): readonly Stake[] {
  const known = made.get(line);
  if (known?.of === plan.structures) return known.stakes;
  const [first] = line.stations;
  const stakes = first ? stakesOf(plan, line, planPlane([first.lon, first.lat])) : [];
  made.set(line, { of: plan.structures, stakes });
  return stakes;
}

/** The stakes of a line in their order along it. */
export function stakesOf(
  { structures }: Pick<Plan, "structures">,
  line: Pick<SizedLine, "stations" | "cornersM" | "kind" | "totals">,
  plane: PlanPlane,
): Stake[] {
  const tiesAt = tieFinder(structures, plane);
  const places = line.stations.map(({ lon, lat }) => plane.toPlane([lon, lat]));
  return line.stations.map((station, i) => {
    const [x, y] = places[i]!;
    const before = places[i - 1];
    const [east, north] = before ? [x - before[0], y - before[1]] : [0, 0];
    const bearingDeg = ((Math.atan2(east, north) * 180) / Math.PI + 360) % 360;
    return {
      station,
      found: foundBy(station, line, () => tiesAt(x, y)),
      fromBefore: before ? { distanceM: Math.hypot(east, north), bearingDeg } : null,
    };
  });
}

function foundBy(
  { chainageM }: Station,
  { cornersM, kind, totals }: Pick<SizedLine, "cornersM" | "kind" | "totals">,
  ties: () => TiePair | null,
): Found {
  const isRing = kind === "ring";
  if (isRing && totals.lengthM - chainageM < SAME_M) return { by: "start" };
  const pair = ties();
  if (pair) return { by: "ties", ties: pair };
  const marksM = isRing ? [...cornersM, totals.lengthM] : cornersM;
  if (marksM.some((m) => Math.abs(m - chainageM) < SAME_M)) return { by: "coordinates" };
  const next = marksM.findIndex((m) => m > chainageM);
  return { by: "line", fromM: marksM[next - 1]!, toM: marksM[next]! };
}
