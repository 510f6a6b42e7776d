/** International foot, exact. Source: 85 FR 62698. */
export const FOOT_M = 0.3048;
export const INCH_M = FOOT_M / 12;
export const INCH_MM = 25.4;
export const MILE_FT = 5280;
/** US survey foot. Source: 85 FR 62698. */
export const SURVEY_FOOT_M = 1200 / 3937;
/** About a degree of latitude, for what need not be exact. */
export const DEGREE_M = 111_320;
/** Semi-major axis of the WGS 84 ellipsoid. Source: NGA.STND.0036. */
export const SEMI_MAJOR_M = 6_378_137;
export const HOUR_S = 3600;
export const DAY_H = 24;
export const DAY_S = DAY_H * HOUR_S;
export const POUND_KG = 0.45359237;
export const CUBIC_FOOT_M3 = FOOT_M ** 3;
export const CUBIC_YARD_M3 = 27 * CUBIC_FOOT_M3;
export const PCF_KG_PER_M3 = POUND_KG / CUBIC_FOOT_M3;
/** 231 cubic inches, exact. */
export const US_GALLON_M3 = 231 * INCH_M ** 3;
/** Standard gravity, m/s2. Source: BIPM, from memory. */
export const GRAVITY_M_PER_S2 = 9.80665;
/**
 * Weight of water in the statics, N/m3 (W2: 9.81 kN/m3), and the gravity that goes with it, for levee and water alike.
 * Source: handbook section 6. Pounds of force go by {@link GRAVITY_M_PER_S2}, as they are defined.
 */
export const WATER_N_PER_M3 = 9810;
export const STATICS_GRAVITY = 9.81;
