import { layLine, placeAt } from "./alignment.ts";
import type { GroundSampler } from "./ground.ts";
import type { Alignment, Plan } from "./plan.ts";
import type { PlanPlane } from "./plan-plane.ts";
import { bagsPlacedFor, coursesFor } from "./quantities.ts";
import { cutAcross, emptyCut, sideSlope, stepFor } from "./section.ts";
import type { CrossSection } from "./sizing-types.ts";
import { waterSurface } from "./stage.ts";
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
 * the cut is across the leg that leaves it.
 */
export function crossSection(inputs: CrossSectionInputs): CrossSection {
  const { plan, alignment, plane, ground, marginM } = inputs;
  const { section } = plan;
  const line = layLine(alignment, plane);
  const chainageM = Math.min(Math.max(inputs.chainageM, 0), line.lengthM);
  const { xM, yM, leftX, leftY } = placeAt(line, chainageM);
  const waterM = waterSurface(plan.water, plan.flow, plan.gauge, plane)(xM, yM);
  const crestM = waterM + plan.water.freeboardM;
  const cut = emptyCut();
  cutAcross(cut, ground, section, xM, yM, leftX, leftY, crestM, 0);
  const isKnown = !Number.isNaN(cut.areaM2);
  const heightM = Number.isNaN(cut.heightM) ? null : cut.heightM;
  const halfCrownM = section.crownM / 2;
  const levelToeM = halfCrownM + sideSlope(section, heightM ?? 0) * (heightM ?? 0);
  const toeLeftM = isKnown ? cut.toeLeftM : levelToeM;
  const toeRightM = isKnown ? cut.toeRightM : levelToeM;
  const marks = [-toeRightM, -halfCrownM, 0, halfCrownM, toeLeftM];
  const offsetM = offsetsBetween(-toeRightM - marginM, toeLeftM + marginM, stepFor(ground), marks);
  return {
    chainageM,
    at: plane.toLonLat(xM, yM),
    waterSide: waterSideOf(line, plan, plane),
    offsetM,
    groundM: offsetM.map((m) => ground.heightAt(xM + leftX * m, yM + leftY * m)),
    waterM,
    crestM,
    heightM,
    greatestHeightM: isKnown ? (cut.heightM > 0 ? crestM - cut.lowestM : 0) : null,
    baseM: isKnown ? cut.toeLeftM + cut.toeRightM : null,
    toeLeftM,
    toeRightM,
    crownM: section.crownM,
    sideSlope: sideSlope(section, heightM ?? 0),
    areaM2: isKnown ? cut.areaM2 : null,
    courses: isKnown ? coursesFor(cut.heightM, section) : null,
    bagsPerM: isKnown ? bagsPlacedFor(cut.areaM2, section) : null,
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
