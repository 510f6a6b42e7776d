import {
  CUBIC_FOOT_M3,
  CUBIC_YARD_M3,
  FOOT_M,
  GRAVITY_M_PER_S2,
  MILE_FT,
  POUND_KG,
  US_GALLON_M3,
} from "./constants.ts";
import { failureOf, type Outcome } from "./failure.ts";
import { amountOf, parseLength, plainText } from "./parse-length.ts";

/**
 * The one place where SI becomes what a person reads. Heights and distances use the international foot
 * (0.3048 m exactly; source: 85 FR 62698, FR-FT), weights the avoirdupois pound and the short ton.
 * A value that is not finite is written as an en dash, never as a number.
 */
export type UnitSystem = "us" | "metric";

export { parseLength };

const SHORT_TON_KG = 2000 * POUND_KG;
/** Pound-force. */
const POUND_N = POUND_KG * GRAVITY_M_PER_S2;
const NO_VALUE = "–";

/** Metres to feet or metres. */
export function lengthIn(m: number, system: UnitSystem): number {
  return system === "us" ? m / FOOT_M : m;
}

/** Feet or metres to metres. */
export function lengthFrom(value: number, system: UnitSystem): number {
  return system === "us" ? value * FOOT_M : value;
}

export function lengthUnit(system: UnitSystem): "ft" | "m" {
  return system === "us" ? "ft" : "m";
}

/** Cubic metres to cubic yards or cubic metres. */
export function volumeIn(m3: number, system: UnitSystem): number {
  return system === "us" ? m3 / CUBIC_YARD_M3 : m3;
}

/** Square metres to square feet or square metres. */
export function areaIn(m2: number, system: UnitSystem): number {
  return system === "us" ? m2 / FOOT_M ** 2 : m2;
}

/** `3.5 ft` or `1.07 m`; one decimal of a foot, two of a metre unless `digits` says otherwise. */
export function formatLength(m: number, system: UnitSystem, digits?: number): string {
  const places = digits ?? (system === "us" ? 1 : 2);
  return withUnit(lengthIn(m, system), places, lengthUnit(system));
}

/** A length as {@link formatLength} shows it, metres: a difference shown is the difference of two of these. */
export function shownLengthM(m: number, system: UnitSystem, digits?: number): number {
  const places = digits ?? (system === "us" ? 1 : 2);
  return lengthFrom(Number(lengthIn(m, system).toFixed(places)), system);
}

const MILE_M = MILE_FT * FOOT_M;

/** Distances between places: `199 mi` or `320 km`; one decimal below 10, feet or metres below 0.1 mi or 100 m. */
export function formatDistance(m: number, system: UnitSystem): string {
  const [value, unit] = system === "us" ? [m / MILE_M, "mi"] : [m / 1000, "km"];
  if (value < 0.1) return formatLength(m, system, 0);
  return withUnit(value, value < 9.95 ? 1 : 0, unit);
}

/** Two decimals in either system: `873.90 ft`, `266.36 m`. */
export function formatElevation(m: number, system: UnitSystem): string {
  return withUnit(lengthIn(m, system), 2, lengthUnit(system));
}

/**
 * `12+50` (full stations of 100 ft) or `1+250.0` (of 1,000 m). `digits` are decimals after the plus part,
 * 0 and 1 by default. Source: MAHUN (8+35.67 is 835.67 ft; metric 1+256.02).
 */
export function formatStation(chainageM: number, system: UnitSystem, digits?: number): string {
  if (!Number.isFinite(chainageM)) return NO_VALUE;
  const places = digits ?? (system === "us" ? 0 : 1);
  const full = fullStation(system);
  const wholeDigits = system === "us" ? 2 : 3;
  const scale = 10 ** places;
  const units = Math.round(Math.abs(lengthIn(chainageM, system)) * scale);
  const rest = units % (full * scale);
  const stations = (units - rest) / (full * scale);
  const width = wholeDigits + (places > 0 ? places + 1 : 0);
  const sign = chainageM < 0 && units > 0 ? "-" : "";
  return `${sign}${stations}+${(rest / scale).toFixed(places).padStart(width, "0")}`;
}

/**
 * A station such as `12+50`, `8+35.67` (feet) or `1+250.0` (metres), or a plain length from the start,
 * as metres of chainage. Source: MAHUN.
 */
export function parseStation(text: string, system: UnitSystem): Outcome<number> {
  const plain = plainText(text);
  const full = fullStation(system);
  const match = /^(\d+)\s*\+\s*(\d+(?:\.\d*)?)$/.exec(plain);
  const within = match ? amountOf(match[2]!) : Number.NaN;
  if (match && within < full) {
    return { ok: true, value: lengthFrom(Number(match[1]) * full + within, system) };
  }
  const asLength = match ? null : parseLength(plain, system);
  if (asLength?.ok && asLength.value >= 0) return asLength;
  const about = { came: text, below: match ? full : null };
  return { ok: false, failure: failureOf("station/unreadable", about) };
}

/** `164 cu yd` or `125 m³`; one decimal below 10. */
export function formatVolume(m3: number, system: UnitSystem): string {
  const value = volumeIn(m3, system);
  return withUnit(value, Math.abs(value) < 9.95 ? 1 : 0, system === "us" ? "cu yd" : "m³");
}

/** The volume that {@link formatVolume} shows, m3: differences of what is shown are differences of these. */
export function shownVolumeM3(m3: number, system: UnitSystem): number {
  const value = volumeIn(m3, system);
  const perM3 = volumeIn(1, system);
  return Number(value.toFixed(Math.abs(value) < 9.95 ? 1 : 0)) / perM3;
}

export function volumeUnit(system: UnitSystem): "cu yd" | "m³" {
  return system === "us" ? "cu yd" : "m³";
}

/** The figure of {@link formatVolume} without its unit. */
export function volumeFigure(m3: number, system: UnitSystem): string {
  const value = volumeIn(m3, system);
  return grouped(value, Math.abs(value) < 9.95 ? 1 : 0);
}

/** `1,200 sq ft` or `111 m²`; one decimal below 10. */
export function formatArea(m2: number, system: UnitSystem): string {
  const value = areaIn(m2, system);
  return withUnit(value, Math.abs(value) < 9.95 ? 1 : 0, system === "us" ? "sq ft" : "m²");
}

/** Loads: short tons (`265 tons`) or tonnes (`240 t`); one decimal below 10. */
export function formatMass(kg: number, system: UnitSystem): string {
  const value = kg / (system === "us" ? SHORT_TON_KG : 1000);
  return withUnit(value, Math.abs(value) < 9.95 ? 1 : 0, system === "us" ? "tons" : "t");
}

/** What one person lifts: `36 lb` or `16.3 kg`. */
export function formatSmallMass(kg: number, system: UnitSystem): string {
  return system === "us" ? withUnit(kg / POUND_KG, 0, "lb") : withUnit(kg, 1, "kg");
}

/** Volume of one bag: `0.325 cu ft` or `9.2 L`. */
export function formatSmallVolume(m3: number, system: UnitSystem): string {
  return system === "us" ? withUnit(m3 / CUBIC_FOOT_M3, 3, "cu ft") : withUnit(m3 * 1000, 1, "L");
}

/** Flow: `142 gpm` (US gallons a minute) or `9.0 L/s`; one decimal below 10. */
export function formatFlow(m3PerS: number, system: UnitSystem): string {
  const value = system === "us" ? (m3PerS / US_GALLON_M3) * 60 : m3PerS * 1000;
  return withUnit(value, Math.abs(value) < 9.95 ? 1 : 0, system === "us" ? "gpm" : "L/s");
}

/**
 * A range of flows, in two figures and no finer than a tenth, the low end rounded down and the high end up:
 * `250 to 520 gpm` or `16 to 33 L/s`; one number where both ends come to the same.
 */
export function formatFlowRange(
  { low, high }: { readonly low: number; readonly high: number },
  system: UnitSystem,
): string {
  const perUnit = system === "us" ? US_GALLON_M3 / 60 : 0.001;
  const from = inTwoFigures(low / perUnit, Math.floor);
  const to = inTwoFigures(high / perUnit, Math.ceil);
  const unit = system === "us" ? "gpm" : "L/s";
  return from === to ? `${to} ${unit}` : `${from} to ${to} ${unit}`;
}

/** The high end of such a range on its own: `up to` this, rounded up to two figures. */
export function formatFlowUpTo(m3PerS: number, system: UnitSystem): string {
  const perUnit = system === "us" ? US_GALLON_M3 / 60 : 0.001;
  return `${inTwoFigures(m3PerS / perUnit, Math.ceil)} ${system === "us" ? "gpm" : "L/s"}`;
}

function inTwoFigures(value: number, round: (value: number) => number): string {
  const size = Math.floor(Math.log10(Math.max(1, Math.abs(value))));
  const figure = 10 ** (size - 1);
  const steps = value / figure;
  const whole = Math.abs(steps - Math.round(steps)) < 1e-9 ? Math.round(steps) : round(steps);
  return grouped(whole * figure, size === 0 ? 1 : 0);
}

/** Flow through a metre of line: `7.8 gpm/100 ft` or `1.61 L/s per 100 m`. */
export function formatUnitFlow(m2PerS: number, system: UnitSystem): string {
  return formatUnitFlowRange({ low: m2PerS, high: m2PerS }, system);
}

/** `0.1 to 10.1 gpm/100 ft`; one figure where both ends come to the same. */
export function formatUnitFlowRange(
  { low, high }: { readonly low: number; readonly high: number },
  system: UnitSystem,
): string {
  const figure = (m2PerS: number) =>
    system === "metric"
      ? grouped(m2PerS * 1e5, 2)
      : grouped(((m2PerS * 100 * FOOT_M) / US_GALLON_M3) * 60, 1);
  const unit = system === "metric" ? "L/s per 100 m" : "gpm/100 ft";
  const [from, to] = [figure(low), figure(high)];
  return from === to ? `${to} ${unit}` : `${from} to ${to} ${unit}`;
}

/** Force on a metre of line: `281 lb/ft` or `4.1 kN/m`. */
export function formatLineForce(nPerM: number, system: UnitSystem): string {
  if (system === "metric") return withUnit(nPerM / 1000, 1, "kN/m");
  return withUnit((nPerM * FOOT_M) / POUND_N, 0, "lb/ft");
}

/** Whole number with thousands commas: `12,340`. */
export function formatCount(n: number): string {
  return grouped(n, 0);
}

/** `10.8 h`; whole hours from 100 on. */
export function formatHours(h: number): string {
  return withUnit(h, Math.abs(h) < 99.95 ? 1 : 0, "h");
}

/** The hours that {@link formatHours} shows. */
export function shownHours(h: number): number {
  return Number(h.toFixed(Math.abs(h) < 99.95 ? 1 : 0));
}

/** Share of one as per cent: `10 %`, `7.5 %`. */
export function formatShare(share: number): string {
  const percent = share * 100;
  const whole = Math.abs(percent - Math.round(percent)) < 0.05;
  return withUnit(percent, whole ? 0 : 1, "%");
}

/** A number with thousands commas and a fixed count of decimals; an en dash when it is not finite. */
export function grouped(value: number, places: number): string {
  if (!Number.isFinite(value)) return NO_VALUE;
  const [whole, decimals] = value.toFixed(places).split(".") as [string, string | undefined];
  const unsigned = whole.replace("-", "").replace(/\B(?=(\d{3})+$)/g, ",");
  const digits = decimals === undefined ? unsigned : `${unsigned}.${decimals}`;
  return value < 0 && /[1-9]/.test(digits) ? `-${digits}` : digits;
}

function withUnit(value: number, places: number, unit: string): string {
  return Number.isFinite(value) ? `${grouped(value, places)} ${unit}` : NO_VALUE;
}

function fullStation(system: UnitSystem): 100 | 1000 {
  return system === "us" ? 100 : 1000;
}
