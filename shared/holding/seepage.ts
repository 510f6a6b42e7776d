/** A homogeneous levee on a base that lets nothing through, as the seepage formulas see it. */
export interface SeepageShape {
  /** Head lost from one side to the other, metres. */
  readonly headM: number;
  /** Width between the toes, metres. */
  readonly baseM: number;
  /** Run of the waterside and landside faces for each metre of rise; 0 is upright. */
  readonly waterRun: number;
  readonly landRun: number;
}

/** What one formula gives, for a conductivity of 1: multiply the rate by k. */
export interface SeepageResult {
  readonly method: "Schaffernak" | "L. Casagrande" | "base parabola" | "Dupuit";
  /** Length along the landside face on which water comes out, metres; 0 where the formula gives none. */
  readonly wetFaceM: number;
  /** Rate over conductivity, per metre of line: q / k, metres. */
  readonly rateM: number;
}

const GENTLE_DEG = 30;
const STEEP_DEG = 60;
const UPRIGHT_DEG = 89;

/**
 * Seepage through a levee on a tight base, by the slope of the landside face: Schaffernak below 30 degrees,
 * L. Casagrande from 30 to 60, the base parabola above, Dupuit for upright faces.
 * Source: VENK (6.18 to 6.21), DAS 8.8 to 8.11, DUP.
 */
export function seepageThrough(shape: SeepageShape): SeepageResult {
  const { headM, landRun } = shape;
  const pathM = seepagePathM(shape);
  const slope = Math.atan2(1, landRun);
  const degrees = (slope * 180) / Math.PI;
  if (degrees < GENTLE_DEG) return schaffernak(headM, pathM, slope);
  if (degrees <= STEEP_DEG) return casagrande(headM, pathM, slope);
  if (degrees < UPRIGHT_DEG) return baseParabola(headM, pathM);
  return dupuit(headM, 0, pathM);
}

/**
 * Horizontal distance d from the landside toe to where the parabola enters: 0.3 of the wetted face's
 * projection inside the water's edge. Source: DAS 8.8 to 8.10.
 */
export function seepagePathM({ headM, baseM, waterRun }: SeepageShape): number {
  return baseM - 0.7 * headM * waterRun;
}

/**
 * Schaffernak: a = d / cos - sqrt(d^2 / cos^2 - H^2 / sin^2), q = k a sin tan. For faces below 30 degrees.
 * Source: DAS 8.10.
 */
export function schaffernak(headM: number, pathM: number, slope: number): SeepageResult {
  const along = pathM / Math.cos(slope);
  const wetFaceM = along - Math.sqrt(Math.max(0, along ** 2 - (headM / Math.sin(slope)) ** 2));
  const rateM = wetFaceM * Math.sin(slope) * Math.tan(slope);
  return { method: "Schaffernak", wetFaceM, rateM };
}

/**
 * L. Casagrande: a = sqrt(h^2 + d^2) - sqrt(d^2 - h^2 cot^2), q = k a sin^2. For faces of 30 to 60 degrees.
 * Source: VENK 6.18 to 6.21.
 */
export function casagrande(headM: number, pathM: number, slope: number): SeepageResult {
  const cotangent = headM / Math.tan(slope);
  const wetFaceM = Math.hypot(headM, pathM) - Math.sqrt(Math.max(0, pathM ** 2 - cotangent ** 2));
  return { method: "L. Casagrande", wetFaceM, rateM: wetFaceM * Math.sin(slope) ** 2 };
}

/** Kozeny's base parabola: S = sqrt(x^2 + z^2) - x, q = k S. Source: VENK 6.7. */
export function baseParabola(headM: number, pathM: number): SeepageResult {
  return { method: "base parabola", wetFaceM: 0, rateM: Math.hypot(pathM, headM) - pathM };
}

/**
 * Dupuit, upright faces: q = k (h1^2 - h2^2) / (2 L), the flow without recharge. Source: DUP.
 *
 * Rain that soaks into the levee itself would add half of what falls on it to the landside, W L / 2: that is
 * the rain on the landside half of the base, which the rational method already counts, since a ring's
 * catchment reaches to its centre line. Here it would be counted twice, so nothing is added.
 */
export function dupuit(upstreamM: number, downstreamM: number, lengthM: number): SeepageResult {
  const rateM = dupuitFlow({ upstreamM, downstreamM, lengthM, rechargeShare: 0 }, lengthM);
  return { method: "Dupuit", wetFaceM: 0, rateM };
}

/** Ground between two upright faces with water against both, and rain that soaks in between them. */
interface DupuitReach {
  /** Depths of water over the tight base at both faces, metres. */
  readonly upstreamM: number;
  readonly downstreamM: number;
  /** Between the faces, metres. */
  readonly lengthM: number;
  /** What soaks in over conductivity, W / k. */
  readonly rechargeShare: number;
}

/**
 * Dupuit with recharge: q(x) / k = (h1^2 - h2^2) / (2 L) + (W / k) (x - L / 2), metres; below 0 it runs back
 * to the upstream face. Source: DUP.
 */
export function dupuitFlow(reach: DupuitReach, alongM: number): number {
  const { upstreamM, downstreamM, lengthM, rechargeShare } = reach;
  const through = (upstreamM ** 2 - downstreamM ** 2) / (2 * lengthM);
  return through + rechargeShare * (alongM - lengthM / 2);
}

/**
 * Darcy's flow through a slab of ground under the base, m3/s per metre: q = k (h / L) D. A slab is a flow net
 * with Nf / Nd = D / L. Source: VENK, HOUGH (q = k H Nf / Nd).
 */
export function slabSeepage(
  conductivityMPerS: number,
  headM: number,
  depthM: number,
  lengthM: number,
): number {
  return (conductivityMPerS * headM * depthM) / lengthM;
}
