import { GRAVITY, type Load, type StandingBody } from "./free-body.ts";

/** A levee cut across, its sides named by the water. */
export interface CutShape {
  readonly crownM: number;
  readonly areaM2: number;
  /** Run of the sides for each metre of rise. */
  readonly run: number;
  /** Distance of each toe from the centre line, and how far it lies below the crest, metres. */
  readonly toeWaterM: number;
  readonly toeLandM: number;
  readonly dropWaterM: number;
  readonly dropLandM: number;
}

/** What may slide or turn over, and the water on it. */
export interface Resting {
  readonly body: StandingBody;
  readonly load: Load;
  /** Height of the plane it rests on above the waterside toe, metres; 0 where that is the whole base. */
  readonly planeM: number;
}

/**
 * The standard levee on ground of any cross-fall. Where the ground is level or falls toward the land, the
 * whole section on its base, its weight from the area as cut and through the centroid of the four corners.
 * Where it rises toward the land, what lies above the level of the landside toe: the rest leans on the bank.
 * Source: statics.
 */
export function restingLevee(shape: CutShape, waterDepthM: number, kgPerM3: number): Resting {
  const { crownM, run, toeWaterM, toeLandM, dropWaterM, dropLandM, areaM2 } = shape;
  const riseM = dropWaterM - dropLandM;
  if (riseM > 0) {
    const weightNPerM = (crownM + run * dropLandM) * dropLandM * kgPerM3 * GRAVITY;
    const baseM = crownM + 2 * run * dropLandM;
    return {
      body: { weightNPerM, weightArmM: baseM / 2, baseM },
      load: { waterDepthM: Math.max(0, waterDepthM - riseM), toeDropM: 0 },
      planeM: riseM,
    };
  }
  const body = {
    weightNPerM: areaM2 * kgPerM3 * GRAVITY,
    weightArmM: centroidArmM(shape),
    baseM: toeWaterM + toeLandM,
  };
  return { body, load: { waterDepthM, toeDropM: -riseM }, planeM: 0 };
}

/** Distance of the centroid of the four corners from the landside toe, metres. */
function centroidArmM(shape: CutShape): number {
  const { crownM, toeWaterM, toeLandM, dropWaterM, dropLandM } = shape;
  const baseM = toeWaterM + toeLandM;
  const crownWaterM = Math.min(crownM / 2, toeWaterM);
  const crownLandM = Math.min(crownM / 2, toeLandM);
  // Corners from the landside toe toward the water, heights below the crest.
  const x = [0, toeLandM - crownLandM, toeLandM + crownWaterM, baseM];
  const y = [-dropLandM, 0, 0, -dropWaterM];
  let twice = 0;
  let moment = 0;
  for (let i = 0; i < 4; i++) {
    const j = (i + 1) % 4;
    const cross = x[i]! * y[j]! - x[j]! * y[i]!;
    twice += cross;
    moment += (x[i]! + x[j]!) * cross;
  }
  return twice === 0 ? baseM / 2 : moment / (3 * twice);
}
