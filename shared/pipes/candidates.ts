import type { LonLat, Plan } from "../plan.ts";
import type { PlanPlane } from "../plan-plane.ts";

/**
 * A place where the ground looks as it does at a culvert: a sag in front of a bank, and a lower channel behind it; or a channel that a bank stops, and a lower plain behind it. What
 * the elevation data shows, never that there is a pipe. Metres.
 */
export interface CulvertCandidate {
  /** In the sag, and in the channel or plain behind the bank. */
  readonly ends: readonly [LonLat, LonLat];
  /** Ground at both ends. */
  readonly groundsM: readonly [number, number];
  readonly lengthM: number;
  /** A plain where no channel shows behind the bank. */
  readonly leadsTo: "channel" | "plain";
  /** How much lower that is than the sag. */
  readonly fallM: number;
  /** Highest ground between the ends, above the sag. */
  readonly bankM: number;
  /** How deep and how large the sag is that would fill with water without a pipe. */
  readonly sagDepthM: number;
  readonly sagAreaM2: number;
}

/** Candidates of which nobody has said anything, the nearest to the plan first. */
export interface FoundCandidates {
  readonly found: readonly CulvertCandidate[];
  /** Farther ones that are left off. */
  readonly leftOff: number;
  /** False where none is looked for: cells too large to show a bank, or too much ground. */
  readonly looked: boolean;
}

/** Nearer to a culvert, or to a place that was answered, than this: the same place, metres. Source: judgement. */
const SAME_PLACE_M = 15;

/** Candidates of which nobody has said anything: no culvert is drawn there, and none is answered. */
export function unanswered(
  all: readonly CulvertCandidate[],
  { culverts = [], possibleCulverts = [] }: Pick<Plan, "culverts" | "possibleCulverts">,
  plane: PlanPlane,
): CulvertCandidate[] {
  const known = [...culverts, ...possibleCulverts].map(({ path }) => middleOf(path, plane));
  return all.filter(({ ends }) => {
    const [x, y] = middleOf(ends, plane);
    return known.every(([kx, ky]) => Math.hypot(x - kx, y - ky) > SAME_PLACE_M);
  });
}

/** Halfway between the ends of a pipe. */
function middleOf(path: readonly LonLat[], plane: PlanPlane): readonly [number, number] {
  const [a, b] = [plane.toPlane(path[0]!), plane.toPlane(path.at(-1)!)];
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}
