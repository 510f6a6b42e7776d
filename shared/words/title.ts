import { letterOfLine } from "../line-letter.ts";
import type { Plan, Water } from "../plan.ts";
import type { SizedLine } from "../sizing-types.ts";
import { waterElevationAtGauge } from "../stage.ts";
import { formatElevation, formatLength, lengthIn, type UnitSystem } from "../units.ts";

/** `Line A: By high ground`. */
export function lineTitle(plan: Plan, { id, name }: Pick<SizedLine, "id" | "name">): string {
  return `Line ${letterOfLine(plan, id)}: ${name}`;
}

/** `stage 31.00 ft at Weir, water at 873.93 ft`: the water a plan is sized for. */
export function sizedForWords({ water, gauge }: Plan, system: UnitSystem): string {
  const elevation = formatElevation(waterElevationAtGauge(water), system);
  if (water.by === "elevation") return `water at ${elevation}`;
  const at = gauge?.name ? ` at ${gauge.name}` : "";
  return `stage ${formatLength(water.stageM, system, 2)}${at}, water at ${elevation}`;
}

/** `Water at 31.0` for a stage, `Water at 31.25` where tenths would be another one, `Water 873.06` for an elevation: where there is room for little, and no unit. */
export function waterLabel(water: Water, system: UnitSystem): string {
  if (water.by === "elevation") return `Water ${lengthIn(water.elevationM, system).toFixed(2)}`;
  const stage = lengthIn(water.stageM, system);
  const isTenth = system === "us" && Math.abs(stage * 10 - Math.round(stage * 10)) < 0.05;
  return `Water at ${stage.toFixed(isTenth ? 1 : 2)}`;
}

/** `874.93 ft`, or `874.71 to 874.93 ft` where the top falls along the line. */
export function topRangeWords(
  { stations }: Pick<SizedLine, "stations">,
  system: UnitSystem,
): string {
  const tops = stations.map(({ crestM }) => crestM);
  const low = formatElevation(Math.min(...tops), system);
  const high = formatElevation(Math.max(...tops), system);
  return low === high ? high : `${low} to ${high}`;
}
