import {
  CUBIC_FOOT_M3,
  CUBIC_YARD_M3,
  DAY_S,
  FOOT_M,
  HOUR_S,
  INCH_M,
  MILE_FT,
  PCF_KG_PER_M3,
  POUND_KG,
} from "./constants.ts";
import { failureOf, type Outcome } from "./failure.ts";
import { amountOf, parseLength, plainText } from "./parse-length.ts";
import { SETTINGS, type Setting, type SettingKind, type SettingPath } from "./settings.ts";
import {
  formatCount,
  formatElevation,
  formatLength,
  formatShare,
  formatSmallMass,
  formatSmallVolume,
  grouped,
  type UnitSystem,
} from "./units.ts";

const CY_PER_100_FT = CUBIC_YARD_M3 / (100 * FOOT_M);

/** SI in one of each unit that may be typed for a kind; `us` and `metric` are what a bare number means. */
interface KindUnits {
  readonly us: string;
  readonly metric: string;
  readonly per: Readonly<Record<string, number>>;
}

const CUBIC: Readonly<Record<string, number>> = {
  "cu ft": CUBIC_FOOT_M3,
  ft3: CUBIC_FOOT_M3,
  "cu yd": CUBIC_YARD_M3,
  yd3: CUBIC_YARD_M3,
  m3: 1,
  l: 0.001,
  litre: 0.001,
  litres: 0.001,
  liter: 0.001,
  liters: 0.001,
};

const UNITS: Readonly<
  Record<Exclude<SettingKind, "length" | "small-length" | "elevation" | "clock">, KindUnits>
> = {
  ratio: { us: "", metric: "", per: { "": 1, ":1": 1 } },
  count: { us: "", metric: "", per: { "": 1, people: 1 } },
  rate: { us: "", metric: "", per: { "": 1, "bags/h": 1, "/h": 1 } },
  share: { us: "%", metric: "%", per: { "%": 0.01 } },
  slope: {
    us: "ft/mi",
    metric: "m/km",
    per: {
      "ft/mi": 1 / MILE_FT,
      "ft/mile": 1 / MILE_FT,
      "m/km": 0.001,
      "cm/km": 1e-5,
      "ft/ft": 1,
      "m/m": 1,
      "%": 0.01,
    },
  },
  "bag-volume": { us: "cu ft", metric: "l", per: CUBIC },
  "load-volume": { us: "cu yd", metric: "m3", per: CUBIC },
  "volume-per-length": {
    us: "cu yd/100 ft",
    metric: "m3/m",
    per: { "cu yd/100 ft": CY_PER_100_FT, "m3/m": 1 },
  },
  mass: {
    us: "lb",
    metric: "kg",
    per: { lb: POUND_KG, lbs: POUND_KG, pound: POUND_KG, pounds: POUND_KG, kg: 1 },
  },
  conductivity: {
    us: "cm/s",
    metric: "cm/s",
    per: { "cm/s": 0.01, "mm/s": 0.001, "m/s": 1, "m/day": 1 / DAY_S, "ft/day": FOOT_M / DAY_S },
  },
  rain: {
    us: "in/h",
    metric: "mm/h",
    per: { "in/h": INCH_M / HOUR_S, "mm/h": 0.001 / HOUR_S },
  },
  hours: {
    us: "h",
    metric: "h",
    per: { h: 1, hour: 1, hours: 1, min: 1 / 60, minutes: 1 / 60, days: 24 },
  },
  density: {
    us: "lb/cu ft",
    metric: "kg/m3",
    per: { "lb/cu ft": PCF_KG_PER_M3, pcf: PCF_KG_PER_M3, "kg/m3": 1 },
  },
};

type Writer = (valueSI: number, us: boolean, system: UnitSystem) => string;

const WRITERS: Readonly<Record<SettingKind, Writer>> = {
  length: (m, us, system) => formatLength(m, system, us ? 2 : 3),
  "small-length": (m, us) =>
    us ? `${trimmed((m / FOOT_M) * 12, 2)} in` : `${trimmed(m * 100, 1)} cm`,
  elevation: (m, _us, system) => formatElevation(m, system),
  share: formatShare,
  mass: (kg, _us, system) => formatSmallMass(kg, system),
  "bag-volume": (m3, _us, system) => formatSmallVolume(m3, system),
  "load-volume": (m3, us) =>
    us ? `${grouped(m3 / CUBIC_YARD_M3, 1)} cu yd` : `${grouped(m3, 1)} m³`,
  "volume-per-length": (value, us) =>
    us ? `${grouped(value / CY_PER_100_FT, 1)} cu yd/100 ft` : `${grouped(value, 3)} m³/m`,
  density: (value, us) =>
    us ? `${grouped(value / PCF_KG_PER_M3, 0)} lb/cu ft` : `${grouped(value, 0)} kg/m³`,
  slope: (value, us) =>
    us ? `${grouped(value * MILE_FT, 2)} ft/mi` : `${grouped(value * 1000, 3)} m/km`,
  count: formatCount,
  ratio: (value) => trimmed(value, 3),
  rate: (value) => trimmed(value, 1),
  conductivity: (value) => `${trimmed(value * 100, 6)} cm/s`,
  rain: (value, us) =>
    us
      ? `${trimmed((value / FOOT_M) * 12 * HOUR_S, 2)} in/h`
      : `${trimmed(value * 1000 * HOUR_S, 1)} mm/h`,
  hours: (value) => `${trimmed(value, 2)} h`,
  clock: clockText,
};

/** The number of one setting as the person reads it, with its unit. */
export function formatSetting(kind: SettingKind, valueSI: number, system: UnitSystem): string {
  return WRITERS[kind](valueSI, system === "us", system);
}

/**
 * What a person typed for the setting at `path`, in SI and inside its range. A bare number is in the
 * unit in which the setting is shown. Fails with the range and an example in their units.
 */
export function parseSetting(path: SettingPath, text: string, system: UnitSystem): Outcome<number> {
  return parseAs(SETTINGS[path], text, system);
}

/**
 * As {@link parseSetting}, for a number that is adjustable but no setting of the plan.
 * @param hasDefault false for a figure that only the person can give
 */
export function parseAs(
  setting: Omit<Setting, "name">,
  text: string,
  system: UnitSystem,
  hasDefault = true,
): Outcome<number> {
  const valueSI = read(setting.kind, text, system);
  const slack = 1e-9 * Math.max(1, Math.abs(setting.highSI));
  if (valueSI >= setting.lowSI - slack && valueSI <= setting.highSI + slack) {
    return { ok: true, value: Math.min(setting.highSI, Math.max(setting.lowSI, valueSI)) };
  }
  const code = Number.isNaN(valueSI) ? "setting/unreadable" : "setting/out-of-range";
  return { ok: false, failure: failureOf(code, { setting, hasDefault, came: text }) };
}

function read(kind: SettingKind, text: string, system: UnitSystem): number {
  if (kind === "length" || kind === "elevation") return lengthOf(text, system);
  if (kind === "clock") return clockOf(text);
  const plain = plainText(text).replace(/³/g, "3");
  const match = /^([-+]?)\s*([\d.,]+(?:\s+\d+\/\d+)?)\s*(.*)$/.exec(plain);
  if (!match) return Number.NaN;
  if (kind === "small-length") {
    const own = system === "us" ? "in" : "cm";
    return lengthOf(match[3] ? plain : `${plain} ${own}`, system);
  }
  const units = UNITS[kind];
  const unit = match[3]!.replace(/\s*\/\s*/g, "/") || units[system];
  if (!Object.hasOwn(units.per, unit)) return Number.NaN;
  const value = amountOf(match[2]!) * units.per[unit]!;
  if (kind === "count" && !Number.isInteger(value)) return Number.NaN;
  return match[1] === "-" ? -value : value;
}

/** Hour of the day from `6:30`, `06:30` or `6.5`. */
function clockOf(text: string): number {
  const match = /^(\d{1,2})(?::([0-5]\d)|(\.\d+))?$/.exec(text.trim());
  if (!match) return Number.NaN;
  return Number(match[1]) + Number(match[2] ?? 0) / 60 + Number(match[3] ?? 0);
}

function clockText(hour: number): string {
  const minutes = Math.round(hour * 60);
  const two = (n: number) => String(n).padStart(2, "0");
  return Number.isFinite(hour) ? `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}` : "–";
}

function lengthOf(text: string, system: UnitSystem): number {
  const length = parseLength(text, system);
  return length.ok ? length.value : Number.NaN;
}

function trimmed(value: number, places: number): string {
  return Number.isFinite(value) ? String(Number(value.toFixed(places))) : "–";
}
