import { failureOf, type Outcome } from "../../shared/failure.ts";
import { SETTINGS, type Setting, type SettingPath } from "../../shared/settings.ts";
import type { KnownQuantity, Quantity } from "./quantity.ts";

/** Smallest and greatest SI value taken, both included. */
export interface Range {
  readonly least: number;
  readonly most: number;
  /** True where only whole numbers make sense. */
  readonly whole?: boolean;
}

/** A field whose figure has a range is of a kind that can be written. */
export type RangedField =
  | { readonly quantity: Quantity; readonly range?: undefined }
  | { readonly quantity: KnownQuantity; readonly range?: Range };

/** The SI range of a setting, both ends taken. */
export function rangeOf(path: SettingPath): Range {
  const { lowSI, highSI, kind }: Setting = SETTINGS[path];
  return { least: lowSI, most: highSI, whole: kind === "count" };
}

/** The value when it is finite and within the range; otherwise what was expected and what came. */
export function checkRange(value: number, { range, quantity }: RangedField): Outcome<number> {
  if (!range) return { ok: true, value };
  const slack = 1e-9 * Math.max(1, Math.abs(range.most));
  const inside = value >= range.least - slack && value <= range.most + slack;
  if (inside && range.whole && !Number.isInteger(value)) {
    return { ok: false, failure: failureOf("field/not-whole", { came: value }) };
  }
  if (inside) return { ok: true, value };
  const { least, most } = range;
  const about = { kind: quantity.kind, least, most, came: value };
  return { ok: false, failure: failureOf("field/out-of-range", about) };
}
