import type { GroundSampler } from "./ground.ts";
import { beginCut, type Cut, cutSides, emptyCut, leaveUnknown, type Transect } from "./section.ts";
import type { BuiltReach } from "./sections/built-reach.ts";
import type { SectionShape } from "./sections/types.ts";

const SHAPE: SectionShape = { crownM: 0, runWater: 0, runLand: 0 };
const EARLIER: SectionShape = { crownM: 0, runWater: 0, runLand: 0 };
const EARLIER_CUT: Cut = emptyCut();
const EARLIER_ACROSS: Transect = { xM: 0, yM: 0, leftX: 0, leftY: 0, crestM: 0, shiftM: 0 };

/**
 * Cuts a reach's section across, as `cutAcross` does a pyramid: its runs by the side the water stands on, left
 * (+1) or right (-1) of chainage. Of a section that stands in part already the difference is counted: what
 * lies above both the ground and the earlier body. Writes into `out` and allocates nothing.
 */
export function cutReach(
  out: Cut,
  ground: GroundSampler,
  reach: BuiltReach,
  waterSide: 1 | -1,
  across: Transect,
): void {
  if (!beginCut(out, ground, across)) return;
  const { section, figures } = reach;
  section.shapeInto(SHAPE, out.heightM, figures);
  const runLeft = waterSide === 1 ? SHAPE.runWater : SHAPE.runLand;
  const runRight = waterSide === 1 ? SHAPE.runLand : SHAPE.runWater;
  const { crownM } = SHAPE;
  cutSides(out, ground, across, crownM, runLeft, runRight);
  if (!section.earlierInto) return;
  const dropM = section.earlierInto(EARLIER, out.heightM, figures);
  const oldLeft = waterSide === 1 ? EARLIER.runWater : EARLIER.runLand;
  const oldRight = waterSide === 1 ? EARLIER.runLand : EARLIER.runWater;
  const old = EARLIER_CUT;
  const below = EARLIER_ACROSS;
  Object.assign(below, across);
  below.crestM -= dropM;
  if (!beginCut(old, ground, below)) {
    if (Number.isNaN(old.areaM2)) leaveUnknown(out);
    return;
  }
  cutSides(old, ground, below, EARLIER.crownM, oldLeft, oldRight);
  if (Number.isNaN(out.areaM2 + old.areaM2)) {
    leaveUnknown(out);
    return;
  }
  addOver(out, old, dropM, crownM, runLeft, runRight, oldLeft, oldRight);
}

/**
 * Leaves in `out` what the new body adds over the old one, and the toes of both together. Where on a side the
 * old body reaches farther (ground that falls away), the new side ends on the old one.
 */
function addOver(
  out: Cut,
  old: Cut,
  dropM: number,
  crownM: number,
  runLeft: number,
  runRight: number,
  oldLeft: number,
  oldRight: number,
): void {
  const leftShort = old.toeLeftM > out.toeLeftM;
  const rightShort = old.toeRightM > out.toeRightM;
  let addedM2 = out.areaM2 - old.areaM2;
  if (leftShort || rightShort) {
    addedM2 = 0;
    addedM2 += leftShort
      ? wedgeM2(dropM, crownM, runLeft, oldLeft)
      : out.areaLeftM2 - old.areaLeftM2;
    addedM2 += rightShort
      ? wedgeM2(dropM, crownM, runRight, oldRight)
      : out.areaM2 - out.areaLeftM2 - (old.areaM2 - old.areaLeftM2);
  }
  if (leftShort) {
    out.toeLeftM = old.toeLeftM;
    out.dropLeftM = old.dropLeftM + dropM;
  }
  if (rightShort) {
    out.toeRightM = old.toeRightM;
    out.dropRightM = old.dropRightM + dropM;
  }
  out.lowestM = Math.min(out.lowestM, old.lowestM);
  out.toeOpen = out.toeOpen || old.toeOpen;
  out.areaM2 = Math.max(0, addedM2);
  out.bodyM2 = old.areaM2 + out.areaM2;
}

/** Area of one side between an old body and a steeper new one over it, out to where their faces cross, m2. */
function wedgeM2(dropM: number, crownM: number, run: number, oldRun: number): number {
  const crossesM = oldRun > run ? (dropM * run * oldRun) / (oldRun - run) : 0;
  return (dropM * crownM) / 2 + (dropM * crossesM) / 2;
}
