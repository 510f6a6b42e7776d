import type { SectionPart } from "../../../shared/sections/types.ts";
import type { CrossSection } from "../../../shared/sizing-types.ts";
import type { Across } from "./section-ground.ts";

/** How far a cut reaches from its centre line on either side, its braces and boards included, metres. */
export interface Span {
  readonly waterM: number;
  readonly landM: number;
}

/** The stretches inside an outline at an elevation, by the even-odd rule, from right to left of chainage. */
export function insideAt({ outlineM }: SectionPart, elevationM: number): Across[] {
  const crossings: number[] = [];
  const count = outlineM.length / 2;
  for (let i = 0; i < count; i++) {
    const next = (i + 1) % count;
    const [aM, aLevel] = [outlineM[2 * i]!, outlineM[2 * i + 1]!];
    const [bM, bLevel] = [outlineM[2 * next]!, outlineM[2 * next + 1]!];
    if (aLevel > elevationM === bLevel > elevationM) continue;
    crossings.push(aM + ((elevationM - aLevel) / (bLevel - aLevel)) * (bM - aM));
  }
  crossings.sort((a, b) => a - b);
  return Array.from({ length: crossings.length / 2 }, (_, k) => ({
    fromM: crossings[2 * k]!,
    toM: crossings[2 * k + 1]!,
  }));
}

/** How far the body reaches at an elevation to the left (+1) or right (-1) of chainage; null where it does not. */
export function faceAt(
  parts: readonly SectionPart[],
  elevationM: number,
  side: 1 | -1,
): number | null {
  const ends = parts
    .flatMap((part) => insideAt(part, elevationM))
    .map(({ fromM, toM }) => (side === 1 ? toM : -fromM));
  return ends.length === 0 ? null : Math.max(...ends);
}

/** What stands between the toes: fill, and what stood there before; without boards and braces. */
function bodyOf({ parts }: CrossSection): readonly SectionPart[] {
  return parts.filter(({ material }) => material !== "plywood" && material !== "lumber");
}

/** Horizontal run of the body's face on a side per metre down; 0 for an upright one. */
export function faceRun(cross: CrossSection, side: 1 | -1): number {
  const heightM = cross.heightM ?? 0;
  const body = bodyOf(cross);
  const [upM, downM] = [0.05 * heightM, 0.5 * heightM];
  const up = faceAt(body, cross.crestM - upM, side);
  const down = faceAt(body, cross.crestM - downM, side);
  return up === null || down === null ? 0 : Math.max(0, (down - up) / (downM - upM));
}

/** The room a cut needs across, its boards and braces included. */
export function spanOf(cross: CrossSection): Span {
  const { waterSide, toeLeftM, toeRightM, parts } = cross;
  const offsets = parts.flatMap(({ outlineM }) =>
    Array.from(outlineM).filter((_, k) => k % 2 === 0),
  );
  const left = Math.max(toeLeftM, ...offsets);
  const right = Math.max(toeRightM, ...offsets.map((offset) => -offset));
  return waterSide === 1 ? { waterM: left, landM: right } : { waterM: right, landM: left };
}

/** The corners of an outline as [offset, elevation] pairs. */
export function pointsOf({ outlineM }: SectionPart): [number, number][] {
  return Array.from({ length: outlineM.length / 2 }, (_, i) => [
    outlineM[2 * i]!,
    outlineM[2 * i + 1]!,
  ]);
}

/** The part of an outline between two elevations, as [offset, elevation] pairs; empty when there is none. */
export function bandOf(part: SectionPart, bottomM: number, topM: number): [number, number][] {
  const above = bottomM === -Infinity ? pointsOf(part) : kept(pointsOf(part), (m) => m - bottomM);
  return topM === Infinity ? above : kept(above, (m) => topM - m);
}

/** What of a closed outline lies where `insideBy` is not negative: one pass of Sutherland and Hodgman (1974). */
function kept(
  points: readonly [number, number][],
  insideBy: (elevationM: number) => number,
): [number, number][] {
  return points.flatMap((point, i) => {
    const before = points.at(i - 1)!;
    const [here, was] = [insideBy(point[1]), insideBy(before[1])];
    const share = was / (was - here);
    const crossing: [number, number] = [
      before[0] + share * (point[0] - before[0]),
      before[1] + share * (point[1] - before[1]),
    ];
    if (here >= 0) return was >= 0 ? [point] : [crossing, point];
    return was >= 0 ? [crossing] : [];
  });
}
