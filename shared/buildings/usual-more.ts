import { CUBIC_YARD_M3 } from "../constants.ts";
import type { UnitSystem } from "../units.ts";
import type { More } from "./choice-types.ts";

/** What is looked at as more to build with, each alone, in round figures of the person's units. */
export function usualMore(system: UnitSystem): readonly More[] {
  const sandM3 = system === "us" ? 100 * CUBIC_YARD_M3 : 75;
  return [{ bags: 10_000 }, { sandM3 }, { people: 20 }, { people: 40, sandM3 }, { hours: 6 }];
}

/**
 * Numbers of bags at which a curve over bags is drawn: up to a little over today's or all that could be used, in at
 * most `points` round steps, with today's among them.
 */
export function curveBags(today: number | null, ofAll: number, points = 48): number[] {
  const most = Math.max(1.1 * (today ?? 0), ofAll, points);
  const least = most / points;
  const ten = 10 ** Math.floor(Math.log10(least));
  const step = [1, 2, 5, 10].map((times) => times * ten).find((each) => each >= least) ?? least;
  const all = Array.from({ length: Math.ceil(most / step) + 1 }, (_, i) => i * step);
  return today === null ? all : [...new Set([...all, today])].sort((a, b) => a - b);
}
