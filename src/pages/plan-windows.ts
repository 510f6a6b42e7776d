import type { UnitSystem } from "../../shared/units.ts";
import { lengthFrom } from "../../shared/units.ts";
import { largestFitting, type PlanScale, planScales } from "./plan-scale.ts";

/** A place of the line on the plan plane, metres. */
export interface PathPoint {
  readonly chainageM: number;
  readonly x: number;
  readonly y: number;
}

type Spot = readonly [x: number, y: number];

/** The part of a line that one page shows, and where its middle is on the plan plane. */
export interface PlanWindow {
  readonly fromM: number;
  readonly toM: number;
  readonly middle: Spot;
  readonly scale: PlanScale;
}

interface RoomMm {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Match lines are at whole stations of so many feet or metres. */
const MATCH = { us: 50, metric: 20 } as const;

/**
 * One page for a line that fits at a usual scale, with the buildings where they fit too; else pages along it at the
 * smallest scale, which meet at whole stations.
 */
export function planWindows(
  path: readonly PathPoint[],
  buildings: readonly Spot[],
  room: RoomMm,
  system: UnitSystem,
): PlanWindow[] {
  const line = path.map(({ x, y }): Spot => [x, y]);
  const [fromM, toM] = [path[0]!.chainageM, path.at(-1)!.chainageM];
  for (const shown of [[...line, ...buildings], line]) {
    const box = boxOf(shown);
    const scale = largestFitting(box, room, system);
    if (scale) return [{ fromM, toM, middle: box.middle, scale }];
  }
  return alongLine(path, room, system);
}

function alongLine(path: readonly PathPoint[], room: RoomMm, system: UnitSystem): PlanWindow[] {
  const scale = planScales(system).at(-1)!;
  const [widthM, heightM] = [room.widthMm * scale.mPerMm, room.heightMm * scale.mPerMm];
  const everyM = lengthFrom(MATCH[system], system);
  const lastM = path.at(-1)!.chainageM;
  const windows: PlanWindow[] = [];
  let fromM = path[0]!.chainageM;
  while (fromM < lastM - 1e-6) {
    const rest = path.filter(({ chainageM }) => chainageM >= fromM - 1e-6);
    const beyond = rest.findIndex((_, i) => {
      const box = boxOf(rest.slice(0, i + 1).map(({ x, y }): Spot => [x, y]));
      return box.widthM > widthM || box.heightM > heightM;
    });
    const reachedM = beyond < 0 ? lastM : rest[Math.max(1, beyond - 1)]!.chainageM;
    const wholeM = Math.floor(reachedM / everyM + 1e-9) * everyM;
    const toM = beyond < 0 ? lastM : wholeM > fromM + 1e-6 ? wholeM : reachedM;
    const part = rest.filter(({ chainageM }) => chainageM <= toM + 1e-6);
    windows.push({ fromM, toM, middle: boxOf(part.map(({ x, y }): Spot => [x, y])).middle, scale });
    fromM = toM;
  }
  return windows;
}

function boxOf(spots: readonly Spot[]) {
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const [x, y] of spots) {
    [left, right] = [Math.min(left, x), Math.max(right, x)];
    [low, high] = [Math.min(low, y), Math.max(high, y)];
  }
  const middle: Spot = [(left + right) / 2, (low + high) / 2];
  return { widthM: right - left, heightM: high - low, middle };
}
