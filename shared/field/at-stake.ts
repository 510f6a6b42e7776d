import { HEIGHT_CLASSES, heightClass } from "../height-class.ts";
import { reachAt } from "../reaches.ts";
import type { Check, CrossSection, SizedLine } from "../sizing-types.ts";
import { type Staked, type StakedStretch, stretchFrom } from "./stakes.ts";

/** What a crew at a stake must know of the checks. */
export interface ChecksAtStake {
  /** What must be fixed before anything is built from here to the next stake. */
  readonly mustFix: readonly Check[];
  readonly cautions: readonly Check[];
  /** Whether the levee is over its height limit here or before the next stake, listed among the checks or not. */
  readonly isOverLimit: boolean;
}

/**
 * The checks that speak of a stake or of the stretch that begins there. What must be fixed on the whole plan, or on
 * stretches of which only the worst is named, is there at every stake.
 */
export function checksAtStake(
  line: Pick<SizedLine, "walk" | "reaches">,
  checks: readonly Check[],
  staked: Staked,
  index: number,
): ChecksAtStake {
  const here = reachedFrom(staked, index);
  const near = once(checks.filter((check) => isAbout(check, here)));
  return {
    mustFix: localFirst(near.filter(({ severity }) => severity === "stop")),
    cautions: near.filter(({ severity, where }) => severity === "caution" && where !== null),
    isOverLimit: isOverLimitIn(line, here),
  };
}

/** What is of this very place before what is of the whole line. */
function localFirst(checks: readonly Check[]): readonly Check[] {
  const isLocal = ({ where }: Check) =>
    where !== null && where.at !== "whole-line" && where.at !== "stretches";
  return [...checks.filter(isLocal), ...checks.filter((check) => !isLocal(check))];
}

/** From the stake to the next; at the last stake of a line that does not close, the stake alone. */
function reachedFrom(staked: Staked, index: number): StakedStretch {
  const atM = staked.stakes[index]?.chainageM ?? 0;
  return stretchFrom(staked, index) ?? { fromM: atM, toM: atM };
}

function isAbout({ severity, where, fromM, toM }: Check, here: StakedStretch): boolean {
  if (where === null || where.at === "whole-line") return true;
  if (where.at === "stretches" && severity === "stop") return true;
  return fromM <= here.toM && toM >= here.fromM;
}

/** The two halves of a check that runs over a ring's closing point are one. */
function once(checks: readonly Check[]): Check[] {
  const said = new Set<string>();
  return checks.filter(({ id, where }) => {
    const key = `${id} ${JSON.stringify(where)}`;
    if (where !== null && said.has(key)) return false;
    said.add(key);
    return true;
  });
}

function isOverLimitIn(
  { walk, reaches }: Pick<SizedLine, "walk" | "reaches">,
  { fromM, toM }: StakedStretch,
): boolean {
  return walk.chainageM.some((chainageM, i) => {
    if (chainageM < fromM || chainageM > toM) return false;
    const { limitM } = reachAt({ reaches }, chainageM);
    return heightClass(walk.greatestHeightM[i]!, limitM) === HEIGHT_CLASSES - 1;
  });
}

/** Ground within this of the lowest is as low, metres: a crew measures no finer. */
const SAME_M = 0.03;
/** From the center line outward by more than this share of the half width, the ground is at the toe. */
const AT_TOE_SHARE = 0.5;

/** Where under the base the ground is lowest, from which the greatest height counts. */
export type LowPlace = "level" | "center" | "water-toe" | "land-toe";

/** Where the greatest height of a cut is; null where nothing is built or ground is missing. */
export function lowPlaceOf(cross: CrossSection): LowPlace | null {
  const { offsetM, groundM, toeLeftM, toeRightM, waterSide, greatestHeightM } = cross;
  if (greatestHeightM === null || greatestHeightM <= 0) return null;
  let lowest = -1;
  let highM = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < offsetM.length; i++) {
    if (offsetM[i]! > toeLeftM || offsetM[i]! < -toeRightM || Number.isNaN(groundM[i]!)) continue;
    if (lowest < 0 || groundM[i]! < groundM[lowest]!) lowest = i;
    highM = Math.max(highM, groundM[i]!);
  }
  if (lowest < 0) return null;
  if (highM - groundM[lowest]! <= SAME_M) return "level";
  const atM = offsetM[lowest]!;
  const halfM = atM > 0 ? toeLeftM : toeRightM;
  if (Math.abs(atM) <= AT_TOE_SHARE * halfM) return "center";
  return Math.sign(atM) === waterSide ? "water-toe" : "land-toe";
}

/** Volume built between two chainages, by average end areas over the walk, m3; null where ground is missing. */
export function volumeBetweenM3(
  { walk }: Pick<SizedLine, "walk">,
  { fromM, toM }: StakedStretch,
): number | null {
  const { chainageM, areaM2 } = walk;
  let sumM3 = 0;
  for (let i = 0; i + 1 < chainageM.length; i++) {
    const overlapM = Math.min(toM, chainageM[i + 1]!) - Math.max(fromM, chainageM[i]!);
    if (overlapM > 0) sumM3 += (overlapM * (areaM2[i]! + areaM2[i + 1]!)) / 2;
  }
  return Number.isNaN(sumM3) ? null : sumM3;
}
