import { failureOf, type Outcome } from "../../shared/failure.ts";
import { amountOf, plainText } from "../../shared/parse-length.ts";
import { parseAs } from "../../shared/setting-text.ts";
import {
  SETTINGS,
  type Setting,
  type SettingKind,
  type SettingPath,
} from "../../shared/settings.ts";
import { lengthFrom, parseLength, parseStation, type UnitSystem } from "../../shared/units.ts";
import { type FigureKind, figureWords } from "../../shared/words/figure.ts";

/** A kind of number a field takes: how an SI value is written, and how what a person writes becomes SI again. */
export interface Quantity {
  format(value: number, system: UnitSystem): string;
  parse(text: string, system: UnitSystem): Outcome<number>;
  /** What one press of an arrow key adds, SI. */
  step(system: UnitSystem): number;
}

/** One of a kind that can be written anywhere, so that a field of it may have a range. */
export interface KnownQuantity extends Quantity {
  readonly kind: FigureKind;
}

/** The quantity of a kind, written as its words are. */
export function quantityAs(
  kind: FigureKind,
  { parse, step }: Pick<Quantity, "parse" | "step">,
): KnownQuantity {
  return { kind, format: (value, system) => figureWords(kind, value, system), parse, step };
}

/** Offsets and distances on the site. */
export const OFFSET = quantityAs("offset", {
  parse: parseLength,
  step: (system) => lengthFrom(system === "us" ? 1 : 0.25, system),
});

/** Elevations, two decimals. */
export const ELEVATION = quantityAs("elevation", {
  parse: parseLength,
  step: (system) => lengthFrom(system === "us" ? 0.1 : 0.05, system),
});

/** Stations along the line. */
export const STATION = quantityAs("station", {
  parse: parseStation,
  step: (system) => lengthFrom(system === "us" ? 1 : 0.5, system),
});

/** Compass direction, degrees clockwise from north. */
export const BEARING = quantityAs("bearing", degrees(0, 360, 5));
/** Longitude to seven decimals, about a centimetre. */
export const LONGITUDE = quantityAs("coordinate", degrees(-180, 180, 1e-6));
/** Latitude to seven decimals, about a centimetre. */
export const LATITUDE = quantityAs("coordinate", degrees(-90, 90, 1e-6));

/** The quantity of one adjustable number of the plan, with its units and its range. */
export function settingQuantity(path: SettingPath, hasDefault = true): KnownQuantity {
  return quantityOf(SETTINGS[path], hasDefault);
}

/**
 * The quantity of an adjustable number, with its units and its range.
 * @param hasDefault false for a figure that only the person can give: what is refused does not speak of a default
 */
export function quantityOf(setting: Omit<Setting, "name">, hasDefault = true): KnownQuantity {
  return quantityAs(setting.kind, {
    parse: (text, system) => parseAs(setting, text, system, hasDefault),
    step: (system) => stepOf(setting.kind, setting.defaultSI, system),
  });
}

function stepOf(kind: SettingKind, defaultSI: number, system: UnitSystem): number {
  if (kind === "length" || kind === "elevation") {
    return lengthFrom(system === "us" ? 0.1 : 0.05, system);
  }
  if (kind === "rate" || kind === "count") return 1;
  if (kind === "clock") return 0.5;
  if (kind === "share") return 0.01;
  if (kind === "slope") return 0.0001;
  return defaultSI / 10;
}

function degrees(least: number, most: number, step: number): Pick<Quantity, "parse" | "step"> {
  return {
    step: () => step,
    parse: (text) => {
      const plain = plainText(text).replace(/\s*(°|deg)$/, "");
      const size = amountOf(plain.replace(/^[-+]\s*/, ""));
      const value = plain.startsWith("-") ? -size : size;
      if (value >= least && value <= most) return { ok: true, value };
      return { ok: false, failure: failureOf("degrees/unreadable", { least, most, came: text }) };
    },
  };
}
