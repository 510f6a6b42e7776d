import { FOOT_M, INCH_M } from "./constants.ts";
import { failureOf, type Outcome } from "./failure.ts";
import type { UnitSystem } from "./units.ts";

/** Metres in one of each unit a person may type. Feet are international feet. Source: 85 FR 62698 (FR-FT). */
const METRES_PER: Readonly<Record<string, number>> = {
  "'": FOOT_M,
  ft: FOOT_M,
  foot: FOOT_M,
  feet: FOOT_M,
  '"': INCH_M,
  in: INCH_M,
  inch: INCH_M,
  inches: INCH_M,
  yd: 3 * FOOT_M,
  yard: 3 * FOOT_M,
  yards: 3 * FOOT_M,
  m: 1,
  metre: 1,
  metres: 1,
  meter: 1,
  meters: 1,
  cm: 0.01,
  centimetre: 0.01,
  centimetres: 0.01,
  centimeter: 0.01,
  centimeters: 0.01,
  mm: 0.001,
  km: 1000,
};

const NUMBER = String.raw`(?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d*)?|\.\d+`;
const AMOUNT = String.raw`(?:(?:${NUMBER})(?:\s+\d+\/\d+)?|\d+\/\d+)`;
const ONE_UNIT = new RegExp(String.raw`^(${AMOUNT})\s*([a-z]+|'|")?\.?$`);
const FEET_INCHES = new RegExp(
  String.raw`^(\d[\d,]*)\s*(?:'|ft\.?|foot|feet)\s*-?\s*(${AMOUNT})\s*(?:"|in\.?|inch|inches)?$`,
);

/**
 * A length typed by a person, in metres. Takes `3.5 ft`, `3'6"`, `3' 6 1/2"`, `3.5'`, `42 in`, `1.07 m`,
 * `107 cm`, `10 yd`, thousands commas, unicode primes and minus; a bare number is in feet or metres
 * by `system`. Fails with what was expected; never guesses.
 */
export function parseLength(text: string, system: UnitSystem): Outcome<number> {
  const plain = plainText(text);
  const negative = plain.startsWith("-");
  const body = plain.replace(/^[-+]\s*/, "");
  const magnitudeM = feetAndInches(body) ?? oneUnit(body, system);
  if (magnitudeM === null || !Number.isFinite(magnitudeM)) {
    const about = { came: body === "" ? "" : text, isDecimalComma: /^\d+,\d+$/.test(body) };
    return { ok: false, failure: failureOf("length/unreadable", about) };
  }
  return { ok: true, value: negative && magnitudeM !== 0 ? -magnitudeM : magnitudeM };
}

/** Lower case, with typographic primes, minus signs, spaces and halves turned into plain ones. */
export function plainText(text: string): string {
  return text
    .replace(/[\u2032\u2019\u2018\u00b4`]/g, "'")
    .replace(/[\u2033\u201d\u201c]|''/g, '"')
    .replace(/[\u2212\u2013]/g, "-")
    .replace(/\u00bd/g, " 1/2")
    .replace(/\u00bc/g, " 1/4")
    .replace(/\u00be/g, " 3/4")
    .replace(/[\s\u00a0\u202f\u2009]+/g, " ")
    .trim()
    .toLowerCase();
}

/** A number with optional thousands commas and an optional fraction (`6 1/2`); NaN when it is none. */
export function amountOf(text: string): number {
  if (!new RegExp(`^${AMOUNT}$`).test(text)) return Number.NaN;
  return text.split(/\s+/).reduce((sum, part) => sum + fractionOrNumber(part), 0);
}

function fractionOrNumber(part: string): number {
  const [over, under] = part.split("/");
  if (under !== undefined) return Number(over) / Number(under);
  return Number(part.replace(/,/g, ""));
}

function feetAndInches(body: string): number | null {
  const match = FEET_INCHES.exec(body);
  if (!match) return null;
  const inches = amountOf(match[2]!);
  if (!(inches < 12)) return null;
  return (amountOf(match[1]!) + inches / 12) * FOOT_M;
}

function oneUnit(body: string, system: UnitSystem): number | null {
  const match = ONE_UNIT.exec(body);
  if (!match) return null;
  const unit = match[2] ?? (system === "us" ? "ft" : "m");
  if (!Object.hasOwn(METRES_PER, unit)) return null;
  return amountOf(match[1]!) * METRES_PER[unit]!;
}
