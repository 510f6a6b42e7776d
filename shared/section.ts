import type { GroundSampler } from "./ground.ts";
import type { Section } from "./plan.ts";

/**
 * The levee's section: base `max(baseRatio * h, crown)` at height h, crown, straight sides. Below the
 * height at which the base would be narrower than the crown the sides are vertical.
 * Source: NDSU-11, FFO-96 (base three times the height); the crown of 0.75 ft is what reproduces
 * NDSU-11's sand table.
 */
export function sideSlope(section: Section, heightM: number): number {
  return runFor(section.baseRatio, section.crownM, heightM);
}

/** Run of a pyramid's sides for each metre of rise; see {@link sideSlope}. */
export function runFor(baseRatio: number, crownM: number, heightM: number): number {
  if (!(heightM > 0)) return 0;
  const baseM = Math.max(baseRatio * heightM, crownM);
  return (baseM - crownM) / (2 * heightM);
}

/** Area of the section on level ground, m2: h (max(r h, w) + w) / 2. */
export function levelAreaM2(section: Section, heightM: number): number {
  if (!(heightM > 0)) return 0;
  const baseM = Math.max(section.baseRatio * heightM, section.crownM);
  return (heightM * (baseM + section.crownM)) / 2;
}

/** What one cut across the levee found. Lengths in metres; NaN where needed ground is missing. */
export interface Cut {
  groundM: number;
  /** Crest less ground at the centre line, not below 0. */
  heightM: number;
  /** Lowest ground under the base; the ground at the centre line where nothing is built. */
  lowestM: number;
  /** What is built here and counted, m2. */
  areaM2: number;
  /** The whole body above the ground, m2: more than `areaM2` where a part of it stands already. */
  bodyM2: number;
  /** The left half of the whole body, m2. */
  areaLeftM2: number;
  toeLeftM: number;
  toeRightM: number;
  /** Crest less ground at each toe. */
  dropLeftM: number;
  dropRightM: number;
  /** True where a side ran out to the cap without meeting the ground. */
  toeOpen: boolean;
}

/** Where a levee is cut across, metres. */
export interface Transect {
  /** The centre line's point. */
  xM: number;
  yM: number;
  /** Unit normal to the line's left. */
  leftX: number;
  leftY: number;
  crestM: number;
  /** Added to every height of the ground. */
  shiftM: number;
}

/** Transects are sampled no coarser than this, nor than half a cell. */
const COARSEST_M = 0.5;
/** A side is followed to this many times its run on level ground before it is called open. */
export const OPEN_AFTER_RUNS = 8;
const MEETS_M = 1e-9;

/** Sampling step for walks and transects over a ground, metres: half a cell and at most 0.5 m. */
export function stepFor(ground: GroundSampler): number {
  return Math.min(ground.cellM / 2, COARSEST_M);
}

export function emptyCut(): Cut {
  return {
    groundM: Number.NaN,
    heightM: Number.NaN,
    lowestM: Number.NaN,
    areaM2: Number.NaN,
    bodyM2: Number.NaN,
    areaLeftM2: Number.NaN,
    toeLeftM: Number.NaN,
    toeRightM: Number.NaN,
    dropLeftM: Number.NaN,
    dropRightM: Number.NaN,
    toeOpen: false,
  };
}

/**
 * Cuts the plan's own pyramid at a crest by the ground across the line: marches out on either side along the
 * normal until the template meets the ground, and integrates template less ground between the toes; exact
 * where the ground is straight between samples.
 * Nothing is built where the ground at the centre line reaches the crest.
 * Writes into `out` and allocates nothing.
 */
export function cutAcross(
  out: Cut,
  ground: GroundSampler,
  section: Section,
  across: Transect,
): void {
  if (!beginCut(out, ground, across)) return;
  const run = sideSlope(section, out.heightM);
  cutSides(out, ground, across, section.crownM, run, run);
}

/** Reads the ground at the centre line; false, with the cut filled in, where there is nothing to cut. */
export function beginCut(
  out: Cut,
  ground: GroundSampler,
  { xM, yM, crestM, shiftM }: Transect,
): boolean {
  const centreM = ground.heightAt(xM, yM) + shiftM;
  out.groundM = centreM;
  out.toeOpen = false;
  const clearM = crestM - centreM;
  if (clearM > 0) {
    out.heightM = clearM;
    out.lowestM = centreM;
    out.areaM2 = 0;
    return true;
  }
  const nothing = clearM <= 0 ? 0 : Number.NaN;
  out.heightM = nothing;
  out.lowestM = centreM;
  out.areaM2 = nothing;
  out.bodyM2 = nothing;
  out.areaLeftM2 = nothing;
  out.toeLeftM = nothing;
  out.toeRightM = nothing;
  out.dropLeftM = nothing;
  out.dropRightM = nothing;
  return false;
}

/** Both sides of a cut that is begun, the left first, each with its own run. See {@link cutAcross}. */
export function cutSides(
  out: Cut,
  ground: GroundSampler,
  across: Transect,
  crownM: number,
  runLeft: number,
  runRight: number,
): void {
  side(out, ground, across, 1, crownM, runLeft);
  out.areaLeftM2 = out.areaM2;
  side(out, ground, across, -1, crownM, runRight);
  out.bodyM2 = out.areaM2;
  if (Number.isNaN(out.areaM2)) leaveUnknown(out);
}

/** What a cut says where ground under the base is missing. */
export function leaveUnknown(out: Cut): void {
  out.areaM2 = Number.NaN;
  out.bodyM2 = Number.NaN;
  out.lowestM = Number.NaN;
  out.toeLeftM = Number.NaN;
  out.toeRightM = Number.NaN;
  out.dropLeftM = Number.NaN;
  out.dropRightM = Number.NaN;
  out.toeOpen = false;
}

/** One side of a cut, the left (1) or the right (-1). Steps divide the crown and the level run evenly. */
function side(
  out: Cut,
  ground: GroundSampler,
  across: Transect,
  which: 1 | -1,
  wholeCrownM: number,
  slope: number,
): void {
  const { xM, yM, crestM, shiftM } = across;
  const outX = which * across.leftX;
  const outY = which * across.leftY;
  const stepM = stepFor(ground);
  const halfCrownM = wholeCrownM / 2;
  const runM = slope * out.heightM;
  const crownSteps = halfCrownM > 0 ? Math.ceil(halfCrownM / stepM) : 0;
  const runSteps = runM > MEETS_M ? Math.ceil(runM / stepM) : 0;
  const lastStep = crownSteps + runSteps * OPEN_AFTER_RUNS;
  const crownStepM = crownSteps > 0 ? halfCrownM / crownSteps : 0;
  const runStepM = runSteps > 0 ? runM / runSteps : 0;
  let offsetM = 0;
  let clearM = out.heightM;
  let groundM = out.groundM;
  let lowestM = out.lowestM;
  let areaM2 = 0;
  let met = false;
  for (let i = 1; i <= lastStep && !met; i++) {
    const beyondM = i > crownSteps ? (i - crownSteps) * runStepM : 0;
    const nextM = i > crownSteps ? halfCrownM + beyondM : i * crownStepM;
    const nextGroundM = ground.heightAt(xM + outX * nextM, yM + outY * nextM) + shiftM;
    const nextClearM = crestM - (beyondM > 0 ? beyondM / slope : 0) - nextGroundM;
    if (nextClearM > MEETS_M) {
      areaM2 += ((clearM + nextClearM) / 2) * (nextM - offsetM);
      offsetM = nextM;
      clearM = nextClearM;
      groundM = nextGroundM;
    } else {
      // NaN comes here too and spreads into area, offset and ground.
      const share = nextClearM > 0 ? 1 : clearM / (clearM - nextClearM);
      areaM2 += (clearM / 2) * share * (nextM - offsetM);
      offsetM += share * (nextM - offsetM);
      groundM += share * (nextGroundM - groundM);
      met = true;
    }
    if (groundM < lowestM) lowestM = groundM;
  }
  if (!met && runSteps > 0) out.toeOpen = true;
  out.areaM2 += areaM2;
  out.lowestM = lowestM;
  if (which === 1) {
    out.toeLeftM = offsetM;
    out.dropLeftM = crestM - groundM;
  } else {
    out.toeRightM = offsetM;
    out.dropRightM = crestM - groundM;
  }
}
