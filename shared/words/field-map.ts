import { HEIGHT_CLASSES } from "../height-class.ts";
import { lengthIn, lengthUnit, type UnitSystem } from "../units.ts";

/** A height class as a range in few letters: `0–1 ft`, `1–2`, `over limit`. */
export function classRangeWords(index: number, limitM: number, system: UnitSystem): string {
  if (index === HEIGHT_CLASSES - 1) return "over limit";
  const steps = HEIGHT_CLASSES - 1;
  const [from, to] = [index, index + 1].map((step) =>
    String(Number(lengthIn((limitM * step) / steps, system).toFixed(1))),
  );
  return `${from}–${to}${index === 0 ? ` ${lengthUnit(system)}` : ""}`;
}
