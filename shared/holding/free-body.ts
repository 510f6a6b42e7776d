import { WATER_N_PER_M3 } from "../constants.ts";
import type { Uplift } from "../plan.ts";
import type { Spread } from "./types.ts";

/** A levee's section as the static check sees it, per metre of line: any shape has these three numbers. */
export interface StandingBody {
  readonly weightNPerM: number;
  /** From the landside toe to the line of the weight, metres. */
  readonly weightArmM: number;
  /** Width of the base, metres. */
  readonly baseM: number;
}

export interface Load {
  /** Depth of water above the waterside end of the plane it may slide on, metres. */
  readonly waterDepthM: number;
  /** How much lower the landside toe lies than the waterside end, metres; not below 0. */
  readonly toeDropM: number;
}

/** Factors of safety under one assumption of uplift; Infinity where no water stands. */
export interface Factors {
  readonly sliding: Spread;
  readonly overturning: number;
}

/** The numbers of the free-body drawing, per metre of line; arms are taken about the landside toe. */
export interface FreeBody extends StandingBody, Load, Factors {
  readonly thrustNPerM: number;
  /** Height of the thrust above the landside toe, metres. */
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
 * (a drained inner toe) or full; sliding along the base, which is mu (W - U) / F where it is level;
 * overturning about the landside toe, resisting over overturning moment. No water weight on the sloping face
 * and no help from trench or toe: on the safe side.
 * Source: thrust and moment from the handbook; uplift and factors from memory (FEMA P-259); the base that
 * falls toward the land is statics.
 */
export function freeBody(
  body: StandingBody,
  load: Load,
  friction: Spread,
  uplift: Uplift,
): FreeBody {
  const { waterDepthM, toeDropM } = load;
  const { weightNPerM, weightArmM, baseM } = body;
  const byUplift = {
    none: factorsOf(body, load, friction, "none"),
    triangular: factorsOf(body, load, friction, "triangular"),
    full: factorsOf(body, load, friction, "full"),
  };
  return {
    ...{ weightNPerM, weightArmM, baseM, waterDepthM, toeDropM },
    ...byUplift[uplift],
    thrustNPerM: thrustNPerM(waterDepthM),
    thrustArmM: waterDepthM / 3 + toeDropM,
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
  const { waterDepthM, toeDropM } = load;
  const { weightNPerM, weightArmM, baseM } = body;
  if (!(waterDepthM > 0)) {
    const nothing = waterDepthM <= 0 ? Number.POSITIVE_INFINITY : Number.NaN;
    return { sliding: { low: nothing, high: nothing }, overturning: nothing };
  }
  const thrust = thrustNPerM(waterDepthM);
  const { upliftNPerM, upliftArmM } = upliftOf(baseM, load, uplift);
  const alongM = Math.hypot(baseM, toeDropM);
  const [cosine, sine] = [baseM / alongM, toeDropM / alongM];
  const pressing = Math.max(0, weightNPerM * cosine - thrust * sine - upliftNPerM);
  const grip = pressing / (thrust * cosine + weightNPerM * sine);
  const turning = thrust * (waterDepthM / 3 + toeDropM) + upliftNPerM * upliftArmM;
  return {
    sliding: { low: friction.low * grip, high: friction.high * grip },
    overturning: (weightNPerM * weightArmM) / turning,
  };
}

/** Uplift square to the base, and its distance from the landside toe along the base. */
function upliftOf(baseM: number, { waterDepthM, toeDropM }: Load, uplift: Uplift) {
  if (uplift === "none") return { upliftNPerM: 0, upliftArmM: 0 };
  const alongM = Math.hypot(baseM, toeDropM);
  const landDepthM = uplift === "full" ? waterDepthM + toeDropM : 0;
  const bothM = waterDepthM + landDepthM;
  const centreM = bothM > 0 ? (alongM * (waterDepthM + 2 * landDepthM)) / (3 * bothM) : 0;
  return { upliftNPerM: (WATER_N_PER_M3 * bothM * alongM) / 2, upliftArmM: alongM - centreM };
}
