import type { BuiltReach } from "./built-reach.ts";
import { type BodyCut, between, pieceParts, topOf } from "./parts.ts";
import type { SectionPart, SectionShape } from "./types.ts";

/**
 * What a levee cut across is made of, over the ground: what stood before, what is filled in, and its boards and
 * posts, in the order they are drawn.
 */
export function bodyParts(reach: BuiltReach, heightM: number, cut: BodyCut): SectionPart[] {
  const { section, figures } = reach;
  const shape: SectionShape = { crownM: 0, runWater: 0, runLand: 0 };
  section.shapeInto(shape, heightM, figures);
  const top = topOf(shape, cut.crestM, cut.waterSide);
  const fromM = -cut.toeRightM;
  const toM = cut.toeLeftM;
  const marks = [...Array.from(cut.offsetM), -shape.crownM / 2, shape.crownM / 2];
  const pieces = section.pieces(heightM, figures).flatMap((piece) => pieceParts(piece, cut));
  const filled = (outlines: readonly Float64Array[], material: SectionPart["material"]) =>
    outlines.map((outlineM): SectionPart => ({ material, outlineM }));
  if (!section.earlierInto) {
    const fill = between(top, cut.ground, fromM, toM, marks);
    return [...filled(fill, section.fill), ...pieces];
  }
  const earlier: SectionShape = { crownM: 0, runWater: 0, runLand: 0 };
  const dropM = section.earlierInto(earlier, heightM, figures);
  const oldTop = topOf(earlier, cut.crestM - dropM, cut.waterSide);
  const stood = (m: number) =>
    heightM > dropM ? Math.max(oldTop(m), cut.ground(m)) : cut.ground(m);
  const turns = [
    ...marks,
    ...[-1, 1].flatMap((side) => crossingsOf(shape, earlier, dropM, side * cut.waterSide, side)),
    -earlier.crownM / 2,
    earlier.crownM / 2,
  ];
  const old =
    heightM > dropM ? between(oldTop, cut.ground, fromM, toM, turns).filter(isMiddle) : [];
  const added = between(top, stood, fromM, toM, [...turns, ...old.flatMap(offsetsOf)]);
  return [...filled(old, "earlier"), ...filled(added, section.fill), ...pieces];
}

/** True for the body itself, not for what its face would cover in a ditch beyond its toe. */
function isMiddle(outline: Float64Array): boolean {
  const offsets = offsetsOf(outline);
  return Math.min(...offsets) <= 0 && Math.max(...offsets) >= 0;
}

/** Offset at which the faces of two bodies cross on one side. */
function crossingsOf(
  shape: SectionShape,
  earlier: SectionShape,
  dropM: number,
  sideOfWater: number,
  side: number,
): number[] {
  const run = sideOfWater > 0 ? shape.runWater : shape.runLand;
  const old = sideOfWater > 0 ? earlier.runWater : earlier.runLand;
  return old > run ? [side * (shape.crownM / 2 + (dropM * run * old) / (old - run))] : [];
}

function offsetsOf(outline: Float64Array): number[] {
  return Array.from(outline).filter((_, i) => i % 2 === 0);
}
