import { layLine, placeAt } from "./alignment.ts";
import { cutReach } from "./cut-reach.ts";
import type { GroundSampler } from "./ground.ts";
import { breaksInside } from "./line-samples.ts";
import type { Alignment, Plan } from "./plan.ts";
import type { PlanPlane } from "./plan-plane.ts";
import { bagsPlacedFor, coursesFor } from "./quantities.ts";
import { emptyCut, stepFor } from "./section.ts";
import { bodyParts } from "./sections/body-parts.ts";
import { builtReaches, reachAt } from "./sections/built-reach.ts";
import type { SectionShape } from "./sections/types.ts";
import type { CrossSection } from "./sizing-types.ts";
import { waterSurface } from "./stage.ts";
import { surveyedGround, surveyRaises } from "./survey/surveyed-ground.ts";
import { waterSideOf } from "./water-side.ts";

export interface CrossSectionInputs {
  readonly plan: Plan;
  readonly alignment: Alignment;
  readonly plane: PlanPlane;
  readonly ground: GroundSampler;
  /** Kept inside the line. */
  readonly chainageM: number;
  /** Ground wanted beyond the toes on either side, metres. */
  readonly marginM: number;
}

/**
 * The levee cut across at one chainage, with the ground beside it: offsets rise from right to left, no
 * coarser than half a cell, with the centre line, both crown edges and both toes among them. At a corner
 * the cut is across the leg that leaves it, at a reach break in the section that begins there.
 */
export function crossSection(inputs: CrossSectionInputs): CrossSection {
  const { plan, alignment, plane, ground, marginM } = inputs;
  const { section } = plan;
  const line = layLine(alignment, plane);
  const chainageM = Math.min(Math.max(inputs.chainageM, 0), line.lengthM);
  const { xM, yM, leftX, leftY } = placeAt(line, chainageM);
  const waterM = waterSurface(plan.water, plan.flow, plan.gauge, plane)(xM, yM);
  const crestM = waterM + plan.water.freeboardM;
  const breaksM = breaksInside(line, alignment.reachBreaksM);
  const reach = builtReaches(plan, alignment, breaksM.length + 1)[reachAt(breaksM, chainageM)]!;
  const waterSide = waterSideOf(line, plan, plane);
  const cut = emptyCut();
  const shiftM = surveyRaises(surveyedGround({ plan, line, plane, ground }))(chainageM);
  cutReach(cut, ground, reach, waterSide, { xM, yM, leftX, leftY, crestM, shiftM });
  const isKnown = !Number.isNaN(cut.areaM2);
  const heightM = Number.isNaN(cut.heightM) ? null : cut.heightM;
  const shape: SectionShape = { crownM: 0, runWater: 0, runLand: 0 };
  reach.section.shapeInto(shape, heightM ?? 0, reach.figures);
  const halfCrownM = shape.crownM / 2;
  const levelToeM = (run: number) => halfCrownM + run * (heightM ?? 0);
  const [runLeft, runRight] =
    waterSide === 1 ? [shape.runWater, shape.runLand] : [shape.runLand, shape.runWater];
  const toeLeftM = isKnown ? cut.toeLeftM : levelToeM(runLeft);
  const toeRightM = isKnown ? cut.toeRightM : levelToeM(runRight);
  const marks = [-toeRightM, -halfCrownM, 0, halfCrownM, toeLeftM];
  const offsetM = offsetsBetween(-toeRightM - marginM, toeLeftM + marginM, stepFor(ground), marks);
  const groundAt = (m: number) => ground.heightAt(xM + leftX * m, yM + leftY * m) + shiftM;
  const groundM = offsetM.map(groundAt);
  const isBuilt = isKnown && cut.heightM > 0;
  const body = {
    ...{ crestM, waterSide, toeLeftM, toeRightM, offsetM },
    ground: straightBetween(offsetM, groundM),
  };
  const ofBags = isKnown && reach.section.fill === "bags";
  return {
    chainageM,
    at: plane.toLonLat(xM, yM),
    waterSide,
    offsetM,
    groundM,
    waterM,
    crestM,
    heightM,
    greatestHeightM: isKnown ? (cut.heightM > 0 ? crestM - cut.lowestM : 0) : null,
    baseM: isKnown ? cut.toeLeftM + cut.toeRightM : null,
    toeLeftM,
    toeRightM,
    ...shape,
    sideSlope: (shape.runWater + shape.runLand) / 2,
    areaM2: isKnown ? cut.areaM2 : null,
    bodyM2: isKnown ? cut.bodyM2 : null,
    courses: ofBags ? coursesFor(cut.heightM, section) : null,
    bagsPerM: ofBags ? bagsPlacedFor(cut.areaM2, section) : isKnown ? 0 : null,
    section: reach.section.id,
    sectionName: reach.section.name,
    limitM: reach.limitM,
    parts: isBuilt ? bodyParts(reach, cut.heightM, body) : [],
  };
}

/** The ground over any offset, straight between samples and level beyond them. */
function straightBetween(offsetM: Float64Array, groundM: Float64Array): (m: number) => number {
  const last = offsetM.length - 1;
  return (m) => {
    const next = offsetM.findIndex((each) => each >= m);
    if (next < 0) return groundM[last]!;
    if (next === 0 || offsetM[next] === m) return groundM[next]!;
    const share = (m - offsetM[next - 1]!) / (offsetM[next]! - offsetM[next - 1]!);
    return groundM[next - 1]! + share * (groundM[next]! - groundM[next - 1]!);
  };
}

const MOST_OFFSETS = 4000;

function offsetsBetween(
  fromM: number,
  toM: number,
  stepM: number,
  marks: readonly number[],
): Float64Array {
  const steps = Math.min(MOST_OFFSETS, Math.ceil((toM - fromM) / stepM));
  const even = Array.from({ length: steps + 1 }, (_, k) => fromM + ((toM - fromM) * k) / steps);
  const inside = marks.filter((m) => m > fromM && m < toM);
  return Float64Array.from(new Set([...even, ...inside])).sort();
}
