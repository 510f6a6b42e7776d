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

/** Default, range and source of one adjustable number, SI. Range ends are allowed values. */
export interface Setting {
  readonly kind: SettingKind;
  readonly defaultSI: number;
  readonly lowSI: number;
  readonly highSI: number;
  /** Keys of the sources, or "common practice, no source", "judgement", "from memory". */
  readonly source: string;
}

/** One adjustable number, all SI. */
export function setting(
  kind: SettingKind,
  defaultSI: number,
  range: readonly [number, number],
  source: string,
): Setting {
  return { kind, defaultSI, lowSI: range[0], highSI: range[1], source };
}
