import { HEIGHT_CLASSES } from "../height-class.ts";
import { lengthIn, lengthUnit, type UnitSystem } from "../units.ts";
import { NO_GRAPHICS } from "./no-graphics.ts";

/** A height class as a range in few letters: `0–1 ft`, `1–2`, `over limit`. */
export function classRangeWords(index: number, limitM: number, system: UnitSystem): string {
  if (index === HEIGHT_CLASSES - 1) return "over limit";
  const steps = HEIGHT_CLASSES - 1;
  const [from, to] = [index, index + 1].map((step) =>
    String(Number(lengthIn((limitM * step) / steps, system).toFixed(1))),
  );
  return `${from}–${to}${index === 0 ? ` ${lengthUnit(system)}` : ""}`;
}

/** Why there is no map: the browser cannot draw one at all, or has lost it for now. */
export type NoMap = "no-graphics" | "lost";

/** In the place of the map of a crew: that it is not shown, what it would have warned of, and how to go on. */
export function noMapWords(why: NoMap): readonly [title: string, ...rest: string[]] {
  const isLost = why === "lost";
  return [
    isLost ? "The map is not shown: the browser lost its graphics." : NO_GRAPHICS.title,
    "Water may lie here that you do not see on this screen. Look before you walk.",
    "Go by the number on the stake: stakes, cross-section, watch list and codes work without the map.",
    isLost
      ? "The map comes back by itself. If it does not, reload the page: marks are kept."
      : "To see the map, open the plan on another phone or in another browser.",
  ];
}
