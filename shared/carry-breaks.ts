import type { Alignment, LonLat } from "./plan.ts";
import { planPlane } from "./plan-plane.ts";

/** Corners on a plane with the chainage of each; a ring's first corner stands again at the end. */
interface Laid {
  readonly spots: readonly (readonly [number, number])[];
  readonly chainageM: readonly number[];
}

/** Closest that two breaks may come, metres; closer ones are left where they were. */
const CLOSEST_M = 0.01;

/**
 * Reach breaks of a line whose corners are changed, so that a stretch stays where it was meant: with as many
 * corners as before each break keeps its share of its leg (and comes back when the corner does); otherwise it
 * goes to the place of the new line that is nearest to where it was. Chainages in metres, as many as before;
 * unchanged where they could not stay in order.
 */
export function carriedBreaks(
  { corners, kind, reachBreaksM }: Alignment,
  next: readonly LonLat[],
): readonly number[] {
  const first = corners[0];
  if (reachBreaksM.length === 0 || !first || next.length < 2) return reachBreaksM;
  const { toPlane } = planPlane(first);
  const lay = (list: readonly LonLat[]) => laid(list.map(toPlane), kind === "ring");
  const [from, to] = [lay(corners), lay(next)];
  const carry = corners.length === next.length ? sameShare : nearestPlace;
  const carried = reachBreaksM.map((breakM) => carry(breakM, from, to));
  const isRising = carried.every((m, i) => m > (carried[i - 1] ?? 0) + CLOSEST_M);
  return isRising ? carried : reachBreaksM;
}

function laid(corners: readonly [number, number][], closed: boolean): Laid {
  const spots = closed ? [...corners, corners[0]!] : corners;
  const chainageM = [0];
  for (let i = 1; i < spots.length; i++) {
    chainageM.push(chainageM[i - 1]! + distance(spots[i - 1]!, spots[i]!));
  }
  return { spots, chainageM };
}

function sameShare(breakM: number, from: Laid, to: Laid): number {
  const leg = legAt(from, breakM);
  const [startM, endM] = [from.chainageM[leg]!, from.chainageM[leg + 1]!];
  if (breakM >= endM) return to.chainageM[leg + 1]! + breakM - endM;
  const share = (breakM - startM) / (endM - startM);
  return to.chainageM[leg]! + share * (to.chainageM[leg + 1]! - to.chainageM[leg]!);
}

function nearestPlace(breakM: number, from: Laid, to: Laid): number {
  const leg = legAt(from, breakM);
  const [a, b] = [from.spots[leg]!, from.spots[leg + 1]!];
  const legM = from.chainageM[leg + 1]! - from.chainageM[leg]!;
  if (breakM >= from.chainageM[leg]! + legM) {
    return to.chainageM.at(-1)! + breakM - from.chainageM.at(-1)!;
  }
  const share = (breakM - from.chainageM[leg]!) / legM;
  const [x, y] = [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])];
  let best = { awayM: Number.POSITIVE_INFINITY, chainageM: breakM };
  for (let i = 0; i + 1 < to.spots.length; i++) {
    const [c, d] = [to.spots[i]!, to.spots[i + 1]!];
    const [alongX, alongY] = [d[0] - c[0], d[1] - c[1]];
    const squared = alongX ** 2 + alongY ** 2;
    const raw = squared > 0 ? ((x - c[0]) * alongX + (y - c[1]) * alongY) / squared : 0;
    const part = Math.min(1, Math.max(0, raw));
    const awayM = Math.hypot(x - c[0] - part * alongX, y - c[1] - part * alongY);
    const chainageM = to.chainageM[i]! + part * Math.sqrt(squared);
    if (awayM < best.awayM) best = { awayM, chainageM };
  }
  return best.chainageM;
}

/** The leg a chainage lies on; past the end the last leg that has a length. */
function legAt({ chainageM }: Laid, wantedM: number): number {
  const next = chainageM.findIndex((m) => m > wantedM);
  if (next > 0) return next - 1;
  const endM = chainageM.at(-1)!;
  return Math.max(
    0,
    chainageM.findLastIndex((m) => m < endM),
  );
}

function distance([ax, ay]: readonly [number, number], [bx, by]: readonly [number, number]) {
  return Math.hypot(bx - ax, by - ay);
}
