import type { Outcome } from "../../shared/failure.ts";
import { amountOf, plainText } from "../../shared/parse-length.ts";
import { formatSetting, parseAs } from "../../shared/setting-text.ts";
import {
  SETTINGS,
  type Setting,
  type SettingKind,
  type SettingPath,
} from "../../shared/settings.ts";
import {
  formatElevation,
  formatLength,
  formatStation,
  lengthFrom,
  parseLength,
  parseStation,
  type UnitSystem,
} from "../../shared/units.ts";

/** A kind of number a field takes: how an SI value is written, and how what a person writes becomes SI again. */
export interface Quantity {
  format(value: number, system: UnitSystem): string;
  parse(text: string, system: UnitSystem): Outcome<number>;
  /** What one press of an arrow key adds, SI. */
  step(system: UnitSystem): number;
}

/** Offsets and distances on the site. */
export const OFFSET: Quantity = {
  format: (m, system) => formatLength(m, system),
  parse: parseLength,
  step: (system) => lengthFrom(system === "us" ? 1 : 0.25, system),
};

/** Elevations, two decimals. */
export const ELEVATION: Quantity = {
  format: formatElevation,
  parse: parseLength,
  step: (system) => lengthFrom(system === "us" ? 0.1 : 0.05, system),
};

/** Stations along the line. */
export const STATION: Quantity = {
  format: (m, system) => formatStation(m, system),
  parse: parseStation,
  step: (system) => lengthFrom(system === "us" ? 1 : 0.5, system),
};

/** Compass direction, degrees clockwise from north. */
export const BEARING: Quantity = degrees(0, 360, (value) => `${Math.round(value) % 360}°`, 5);
/** Longitude to seven decimals, about a centimetre. */
export const LONGITUDE: Quantity = degrees(-180, 180, (value) => value.toFixed(7), 1e-6);
/** Latitude to seven decimals, about a centimetre. */
export const LATITUDE: Quantity = degrees(-90, 90, (value) => value.toFixed(7), 1e-6);

/** The quantity of one adjustable number of the plan, with its units and its range. */
export function settingQuantity(path: SettingPath): Quantity {
  return quantityOf(SETTINGS[path]);
}

/** The quantity of an adjustable number, with its units and its range. */
export function quantityOf(setting: Omit<Setting, "name">): Quantity {
  return {
    format: (value, system) => formatSetting(setting.kind, value, system),
    parse: (text, system) => parseAs(setting, text, system),
    step: (system) => stepOf(setting.kind, setting.defaultSI, system),
  };
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

function degrees(
  least: number,
  most: number,
  format: (value: number) => string,
  step: number,
): Quantity {
  return {
    format,
    step: () => step,
    parse: (text) => {
      const plain = plainText(text).replace(/\s*(°|deg)$/, "");
      const size = amountOf(plain.replace(/^[-+]\s*/, ""));
      const value = plain.startsWith("-") ? -size : size;
      if (value >= least && value <= most) return { ok: true, value };
      const shown = text.trim().slice(0, 40);
      return {
        ok: false,
        failure: {
          code: "degrees/unreadable",
          message: `Expected decimal degrees from ${least} to ${most}; ${shown === "" ? "nothing was typed" : `"${shown}" came`}.`,
          remedy: "Type a number of degrees.",
        },
      };
    },
  };
}
