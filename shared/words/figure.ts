import type { SettingKind } from "../setting.ts";
import { formatSetting } from "../setting-text.ts";
import { formatLength, formatStation, type UnitSystem } from "../units.ts";

/** What a typed figure is, which decides how it is written. */
export type FigureKind =
  | SettingKind
  | "offset"
  | "fine-length"
  | "station"
  | "bearing"
  | "coordinate"
  | "fall-in-100"
  | "times-height";

/** An SI figure as its field shows it, with its unit. */
export function figureWords(kind: FigureKind, value: number, system: UnitSystem): string {
  switch (kind) {
    case "offset":
      return formatLength(value, system);
    case "fine-length":
      return formatLength(value, system, 2);
    case "station":
      return formatStation(value, system);
    case "bearing":
      return `${Math.round(value) % 360}°`;
    case "coordinate":
      return value.toFixed(7);
    case "fall-in-100":
      return `${(value * 100).toFixed(1)} in 100`;
    case "times-height":
      return `${value.toFixed(1)} × height`;
    default:
      return formatSetting(kind, value, system);
  }
}
