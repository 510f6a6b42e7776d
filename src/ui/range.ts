import type { Outcome } from "../../shared/failure.ts";
import { SETTINGS, type Setting, type SettingPath } from "../../shared/settings.ts";
import type { UnitSystem } from "../../shared/units.ts";
import type { Quantity } from "./quantity.ts";

/** Smallest and greatest SI value taken, both included. */
export interface Range {
  readonly least: number;
  readonly most: number;
  /** True where only whole numbers make sense. */
  readonly whole?: boolean;
}

/** The SI range of a setting, both ends taken. */
export function rangeOf(path: SettingPath): Range {
  const { lowSI, highSI, kind }: Setting = SETTINGS[path];
  return { least: lowSI, most: highSI, whole: kind === "count" };
}

/** The value when it is finite and within the range; otherwise what was expected and what came. */
export function checkRange(
  value: number,
  field: { readonly range?: Range; readonly quantity: Quantity },
  system: UnitSystem,
): Outcome<number> {
  const { range, quantity } = field;
  if (!range) return { ok: true, value };
  const slack = 1e-9 * Math.max(1, Math.abs(range.most));
  const inside = value >= range.least - slack && value <= range.most + slack;
  if (inside && range.whole && !Number.isInteger(value)) {
    return refused(`Expected a whole number; ${value} came.`, "Leave the decimals out.");
  }
  if (inside) return { ok: true, value };
  const least = quantity.format(range.least, system);
  const most = quantity.format(range.most, system);
  return refused(
    `Expected ${least} to ${most}; ${quantity.format(value, system)} came.`,
    "Check the figure and its unit.",
  );
}

function refused(message: string, remedy: string): Outcome<number> {
  return { ok: false, failure: { code: "field/out-of-range", message, remedy } };
}
