import type { Uplift } from "../plan.ts";
import type { Spread } from "./types.ts";

/** Weight of water, N/m3 (W2: 9.81 kN/m3), and gravity, m/s2. Source: handbook section 6. */
export const WATER_N_PER_M3 = 9810;
const GRAVITY = 9.81;

/** A levee's section as the static check sees it, per metre of line: any shape has these three numbers. */
export interface StandingBody {
  readonly weightNPerM: number;
  /** From the landside toe to the line of the weight, metres. */
  readonly weightArmM: number;
  /** Width of the base, metres. */
  readonly baseM: number;
}

export interface Load {
  /** Depth of water above the waterside toe, metres. */
  readonly waterDepthM: number;
  /** How much higher the landside toe lies than the waterside toe, metres; below 0 where it lies lower. */
  readonly toeRiseM: number;
}

/** Factors of safety under one assumption of uplift; Infinity where no water stands. */
export interface Factors {
  readonly sliding: Spread;
  readonly overturning: number;
}

/** The numbers of the free-body drawing, per metre of line; arms are taken about the landside toe. */
export interface FreeBody extends StandingBody, Load, Factors {
  readonly thrustNPerM: number;
  /** Height of the thrust above the landside toe, metres; not below 0. */
  readonly thrustArmM: number;
  readonly uplift: Uplift;
  /** Square to the base. */
  readonly upliftNPerM: number;
  /** Along the base from the landside toe, metres. */
  readonly upliftArmM: number;
  /** Water pressure at the foot, Pa. */
  readonly footPressurePa: number;
  readonly byUplift: Readonly<Record<Uplift, Factors>>;
}

/** Thrust of water on a metre of line, N: F = gamma h^2 / 2. Source: handbook section 6 (NDSU text, WAFB). */
export function thrustNPerM(waterDepthM: number): number {
  return (WATER_N_PER_M3 * waterDepthM ** 2) / 2;
}

/**
 * Forces and factors of safety of one section: thrust at a third of the depth; uplift none, triangular
 * (a drained inner toe) or full, on what of the base lies below the water; sliding along the base, which is
 * mu (W - U) / F where it is level; overturning about the landside toe, resisting over overturning moment.
 * No water weight on the sloping face and no help from trench or toe: on the safe side.
 * Source: thrust and moment from the handbook; uplift and factors from memory (FEMA P-259); the sloping
 * base is statics.
 */
export function freeBody(
  body: StandingBody,
  load: Load,
  friction: Spread,
  uplift: Uplift,
): FreeBody {
  const { waterDepthM, toeRiseM } = load;
  const { weightNPerM, weightArmM, baseM } = body;
  const byUplift = {
    none: factorsOf(body, load, friction, "none"),
    triangular: factorsOf(body, load, friction, "triangular"),
    full: factorsOf(body, load, friction, "full"),
  };
  return {
    ...{ weightNPerM, weightArmM, baseM, waterDepthM, toeRiseM },
    ...byUplift[uplift],
    thrustNPerM: thrustNPerM(waterDepthM),
    thrustArmM: thrustArmM(load),
    uplift,
    ...upliftOf(baseM, load, uplift),
    footPressurePa: WATER_N_PER_M3 * waterDepthM,
    byUplift,
  };
}

/** Factors of safety of one section; see {@link freeBody}. */
export function factorsOf(
  body: StandingBody,
  load: Load,
  friction: Spread,
  uplift: Uplift,
): Factors {
  const { waterDepthM, toeRiseM } = load;
  const { weightNPerM, weightArmM, baseM } = body;
  if (!(waterDepthM > 0)) {
    const nothing = waterDepthM <= 0 ? Number.POSITIVE_INFINITY : Number.NaN;
    return { sliding: { low: nothing, high: nothing }, overturning: nothing };
  }
  const thrust = thrustNPerM(waterDepthM);
  const { upliftNPerM, upliftArmM } = upliftOf(baseM, load, uplift);
  const alongM = Math.hypot(baseM, toeRiseM);
  const [cosine, sine] = [baseM / alongM, toeRiseM / alongM];
  const pressing = Math.max(0, weightNPerM * cosine + thrust * sine - upliftNPerM);
  const pushing = thrust * cosine - weightNPerM * sine;
  const grip = pushing > 0 ? pressing / pushing : Number.POSITIVE_INFINITY;
  const turning = thrust * thrustArmM(load) + upliftNPerM * upliftArmM;
  return {
    sliding: { low: friction.low * grip, high: friction.high * grip },
    overturning: (weightNPerM * weightArmM) / turning,
  };
}

function thrustArmM({ waterDepthM, toeRiseM }: Load): number {
  return Math.max(0, waterDepthM / 3 - toeRiseM);
}

/** Uplift square to the base, and its distance from the landside toe along the base. */
function upliftOf(baseM: number, { waterDepthM, toeRiseM }: Load, uplift: Uplift) {
  if (uplift === "none") return { upliftNPerM: 0, upliftArmM: 0 };
  const alongM = Math.hypot(baseM, toeRiseM);
  const wetM = toeRiseM > waterDepthM ? (alongM * waterDepthM) / toeRiseM : alongM;
  const landDepthM = uplift === "full" ? Math.max(0, waterDepthM - toeRiseM) : 0;
  const bothM = waterDepthM + landDepthM;
  const centreM = bothM > 0 ? (wetM * (waterDepthM + 2 * landDepthM)) / (3 * bothM) : 0;
  return { upliftNPerM: (WATER_N_PER_M3 * bothM * wetM) / 2, upliftArmM: alongM - centreM };
}

/** A section with upright faces, such as a wall so many bags wide. */
export function wallBody(heightM: number, widthM: number, kgPerM3: number): StandingBody {
  return {
    weightNPerM: heightM * widthM * kgPerM3 * GRAVITY,
    weightArmM: widthM / 2,
    baseM: widthM,
  };
}

/** The corners of a levee cut across, and its area as cut from the ground. */
export interface BodyShape {
  readonly crownM: number;
  readonly areaM2: number;
  /** Distance of each toe from the centre line, and how far it lies below the crest, metres. */
  readonly toeWaterM: number;
  readonly toeLandM: number;
  readonly dropWaterM: number;
  readonly dropLandM: number;
}

/**
 * The standard levee on ground of any cross-fall: weight from the area as cut, its line through the centroid
 * of the four corners. Source: statics (centroid of a polygon).
 */
export function leveeBody(shape: BodyShape, kgPerM3: number): StandingBody {
  const { crownM, areaM2, toeWaterM, toeLandM, dropWaterM, dropLandM } = shape;
  const crownWaterM = Math.min(crownM / 2, toeWaterM);
  const crownLandM = Math.min(crownM / 2, toeLandM);
  const baseM = toeWaterM + toeLandM;
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
  return {
    weightNPerM: areaM2 * kgPerM3 * GRAVITY,
    weightArmM: twice === 0 ? baseM / 2 : moment / (3 * twice),
    baseM,
  };
}
