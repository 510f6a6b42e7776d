/** What a setting measures; decides its units on screen. */
export type SettingKind =
  | "length"
  | "small-length"
  | "elevation"
  | "ratio"
  | "share"
  | "slope"
  | "bag-volume"
  | "load-volume"
  | "volume-per-length"
  | "mass"
  | "density"
  | "rate"
  | "count"
  | "conductivity"
  | "rain"
  | "hours"
  | "clock";

/** One adjustable number, SI: its name in a refusal, default, range and source. Range ends are allowed values. */
export interface Setting {
  /** `the crown`. */
  readonly name: string;
  readonly kind: SettingKind;
  readonly defaultSI: number;
  readonly lowSI: number;
  readonly highSI: number;
  /** Keys of the sources, or "common practice, no source", "judgement", "from memory". */
  readonly source: string;
}

/** One adjustable number, all SI. */
export function setting(
  name: string,
  kind: SettingKind,
  defaultSI: number,
  range: readonly [number, number],
  source: string,
): Setting {
  return { name, kind, defaultSI, lowSI: range[0], highSI: range[1], source };
}

/** Units of each kind in a plan file, SI; none for a pure number. */
export const FILE_UNITS: Readonly<Record<SettingKind, string>> = {
  length: "m",
  "small-length": "m",
  elevation: "m",
  ratio: "",
  share: "",
  slope: "m per m",
  "bag-volume": "m3",
  "load-volume": "m3",
  "volume-per-length": "m3 per m",
  mass: "kg",
  density: "kg per m3",
  rate: "bags per person-hour",
  count: "",
  conductivity: "m/s",
  rain: "m/s",
  hours: "h",
  clock: "h",
};
