import { STATICS_GRAVITY } from "../constants.ts";
import type { Load, StandingBody } from "./free-body.ts";

/** A levee cut across, its sides named by the water. */
export interface CutShape {
  readonly crownM: number;
  /** The whole body, what stood before among it. */
  readonly areaM2: number;
  /** Runs of the sides for each metre of rise. */
  readonly runWater: number;
  readonly runLand: number;
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
 * A levee on ground of any cross slope. Where the ground is level or falls toward the land, the
 * whole section on its base, its weight from the area as cut and through the centroid of the four corners.
 * Where it rises toward the land, what lies above the level of the landside toe: the rest rests on the bank.
 * Source: statics.
 */
export function restingLevee(shape: CutShape, waterDepthM: number, kgPerM3: number): Resting {
  const { toeWaterM, toeLandM, dropWaterM, dropLandM, areaM2 } = shape;
  const riseM = dropWaterM - dropLandM;
  if (riseM > 0) {
    return {
      body: upperBody(shape, kgPerM3),
      load: { waterDepthM: Math.max(0, waterDepthM - riseM), toeDropM: 0 },
      planeM: riseM,
    };
  }
  const body = {
    weightNPerM: areaM2 * kgPerM3 * STATICS_GRAVITY,
    weightArmM: centroidArmM(shape),
    baseM: toeWaterM + toeLandM,
  };
  return { body, load: { waterDepthM, toeDropM: -riseM }, planeM: 0 };
}

/** What lies above the level of the landside toe: a crown and a triangle on either side of it. */
function upperBody(shape: CutShape, kgPerM3: number): StandingBody {
  const { crownM, runWater, runLand, dropLandM } = shape;
  const landM = runLand * dropLandM;
  const waterM = runWater * dropLandM;
  const areaM2 = (crownM + (landM + waterM) / 2) * dropLandM;
  const momentM3 =
    ((landM / 2) * (landM * (2 / 3)) +
      crownM * (landM + crownM / 2) +
      (waterM / 2) * (landM + crownM + waterM / 3)) *
    dropLandM;
  const baseM = landM + crownM + waterM;
  return {
    weightNPerM: areaM2 * kgPerM3 * STATICS_GRAVITY,
    weightArmM: areaM2 > 0 ? momentM3 / areaM2 : baseM / 2,
    baseM,
  };
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
