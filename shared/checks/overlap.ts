import { listStretches } from "./listed.ts";
import { type FittingType, fittingAt, samplesIn } from "./room.ts";
import { type CheckContext, ofStretch, type Rule } from "./rule.ts";
import { type Stretch, stretchesOf } from "./stretch.ts";

/**
 * Places nearer along the line than this many base widths are neighbours: what two legs share inside a corner
 * is the corner's own, down to some 40 degrees between the legs. Source: judgement.
 */
const NEIGHBOUR_BASES = 3;
/** Bases that share less than this only touch. */
const TOUCH_M = 0.05;
/** Samples in one block at most. */
const BLOCK = 16;
const FAR = Number.POSITIVE_INFINITY;
const NOWHERE = { minX: FAR, maxX: -FAR, minY: FAR, maxY: -FAR };

/** Another part of the line whose base lies on the same ground, and the levee types that fit. Metres. */
export interface OverlapFinding {
  readonly kind: "bases-overlap";
  readonly otherM: number;
  readonly lengthM: number;
  readonly fits: readonly FittingType[];
}

/** Bases of two parts of one line on the same ground. */
export const basesOverlap: Rule = {
  id: "bases-overlap",
  find: (context) => {
    const { plan, line, samples } = context;
    const { sharedM, other } = overlaps(context);
    const sharedAt = (i: number) => sharedM[i]!;
    const stretches = stretchesOf(samples, line.closed, plan.practice.stationIntervalM, sharedAt);
    const fits = (stretch: Stretch) => {
      const those = samplesIn(samples, stretch, (i) => sharedAt(i) > 0);
      const room = (i: number) => roomBeside(context, i, other[i]!, sharedAt(i));
      return fittingAt(context, those, room);
    };
    return listStretches(stretches, sharedAt).map((listed) => {
      const otherM = samples.chainageM[other[listed.stretch.worst]!]!;
      const figures = { otherM, lengthM: listed.lengthM, fits: fits(listed.stretch) };
      return ofStretch("caution", listed, { kind: "bases-overlap", ...figures });
    });
  },
};

/** Room to the left and right of a sample when so much of its base is given up on the side of another. */
function roomBeside({ samples, cuts }: CheckContext, i: number, other: number, sharedM: number) {
  const { xM, yM, leftNormal } = samples;
  const towardX = xM[other]! - xM[i]!;
  const towardY = yM[other]! - yM[i]!;
  const isLeft = towardX * leftNormal[2 * i]! + towardY * leftNormal[2 * i + 1]! > 0;
  const free = Number.POSITIVE_INFINITY;
  return isLeft
    ? { left: cuts.toeLeftM[i]! - sharedM, right: free }
    : { left: free, right: cuts.toeRightM[i]! - sharedM };
}

interface Overlaps {
  /** How far a toe lies inside the other base, metres; 0 where the base is alone. Said at the later chainage. */
  readonly sharedM: Float64Array;
  /** Sample of the earlier base. */
  readonly other: Int32Array;
}

/** Some built those of one leg, one after the other, in the box of their base. */
interface Block {
  readonly first: number;
  last: number;
  minX: number;
  maxX: number;
  minY: number;
  maxY: number;
}

/**
 * Toes that lie inside the base of another leg's sample that is no neighbour. Where two bases share ground, a
 * toe of the one lies in the other. Samples are compared one by one only where the boxes of their blocks meet.
 */
function overlaps(context: CheckContext): Overlaps {
  const { count, leg } = context.samples;
  const found = { sharedM: new Float64Array(count), other: new Int32Array(count) };
  const blocks = blocksOf(context).sort((a, b) => a.minX - b.minX);
  for (const [n, a] of blocks.entries()) {
    for (let m = n + 1; m < blocks.length && blocks[m]!.minX <= a.maxX; m++) {
      const b = blocks[m]!;
      const apart = b.minY > a.maxY || a.minY > b.maxY;
      if (!apart && leg[a.first] !== leg[b.first]) compare(context, a, b, found);
    }
  }
  return found;
}

function compare(context: CheckContext, a: Block, b: Block, found: Overlaps): void {
  for (let i = a.first; i <= a.last; i++) {
    for (let k = b.first; k <= b.last; k++) {
      if (areNeighbours(context, i, k)) continue;
      const depthM = Math.max(toesInBase(context, i, k), toesInBase(context, k, i));
      const later = Math.max(i, k);
      if (depthM <= TOUCH_M || depthM <= found.sharedM[later]!) continue;
      found.sharedM[later] = depthM;
      found.other[later] = Math.min(i, k);
    }
  }
}

function areNeighbours({ line, samples, cuts }: CheckContext, i: number, k: number): boolean {
  const betweenM = Math.abs(samples.chainageM[i]! - samples.chainageM[k]!);
  const alongM = line.closed ? Math.min(betweenM, line.lengthM - betweenM) : betweenM;
  const basesM = cuts.toeLeftM[i]! + cuts.toeRightM[i]! + cuts.toeLeftM[k]! + cuts.toeRightM[k]!;
  return alongM <= (NEIGHBOUR_BASES * basesM) / 2;
}

/** How far either toe of one sample lies inside the base at another; 0 or less where outside. */
function toesInBase(context: CheckContext, toes: number, base: number): number {
  const { toeLeftM, toeRightM } = context.cuts;
  const left = depthInBase(context, toes, toeLeftM[toes]!, base);
  return Math.max(left, depthInBase(context, toes, -toeRightM[toes]!, base));
}

/** The same for the place `outM` to the left of a sample. A base reaches half a step to either side along. */
function depthInBase(
  { samples, cuts }: CheckContext,
  from: number,
  outM: number,
  base: number,
): number {
  const { xM, yM, leftNormal, stepM } = samples;
  const leftX = leftNormal[2 * base]!;
  const leftY = leftNormal[2 * base + 1]!;
  const towardX = xM[from]! + leftNormal[2 * from]! * outM - xM[base]!;
  const towardY = yM[from]! + leftNormal[2 * from + 1]! * outM - yM[base]!;
  const alongM = towardX * leftY - towardY * leftX;
  if (Math.abs(alongM) > stepM / 2 + 1e-6) return 0;
  const leftM = towardX * leftX + towardY * leftY;
  return Math.min(cuts.toeLeftM[base]! - leftM, cuts.toeRightM[base]! + leftM);
}

function blocksOf({ samples, cuts }: CheckContext): Block[] {
  const { xM, yM, leftNormal, leg } = samples;
  const blocks: Block[] = [];
  let open: Block | null = null;
  for (let i = 0; i < samples.count; i++) {
    if (!(cuts.heightM[i]! > 0) || Number.isNaN(cuts.areaM2[i]!)) {
      open = null;
      continue;
    }
    if (!open || leg[open.first] !== leg[i] || i - open.first >= BLOCK) {
      open = { first: i, last: i, ...NOWHERE };
      blocks.push(open);
    }
    open.last = i;
    const reachM = Math.max(cuts.toeLeftM[i]!, cuts.toeRightM[i]!);
    const aroundX = Math.abs(leftNormal[2 * i]!) * reachM + samples.stepM;
    const aroundY = Math.abs(leftNormal[2 * i + 1]!) * reachM + samples.stepM;
    open.minX = Math.min(open.minX, xM[i]! - aroundX);
    open.maxX = Math.max(open.maxX, xM[i]! + aroundX);
    open.minY = Math.min(open.minY, yM[i]! - aroundY);
    open.maxY = Math.max(open.maxY, yM[i]! + aroundY);
  }
  return blocks;
}
