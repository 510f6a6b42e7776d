import type { Structure } from "../plan.ts";
import { formatElevation, formatLength, type UnitSystem } from "../units.ts";
import type { TracedStructure } from "../water-types.ts";

/**
 * What is known of a building, as sentences: its floor, and the sized-for water there with no levee built.
 * @param traced null while the water is being traced, and where it cannot be
 */
export function structureWords(
  { floorM }: Structure,
  traced: TracedStructure | null,
  system: UnitSystem,
): string {
  const floor = floorM === null ? "Floor not known." : `Floor ${formatElevation(floorM, system)}.`;
  return traced ? `${floor} ${waterWords(traced, system)}` : floor;
}

function waterWords(
  { wet, depthM, overFloorM, wetIfCulvert }: TracedStructure,
  system: UnitSystem,
): string {
  if (wet === null) return "Whether water reaches it is not known.";
  if (!wet)
    return wetIfCulvert
      ? "Sized-for water does not reach it overland, but does if there is a culvert where one may be."
      : "Sized-for water does not reach it overland.";
  const depth = depthM === null ? "" : `, up to ${formatLength(depthM, system)} deep`;
  const floor =
    overFloorM === null
      ? ""
      : `, ${formatLength(Math.abs(overFloorM), system)} ${overFloorM < 0 ? "below" : "above"} the floor`;
  return `With no levee, water reaches it${depth}${floor}.`;
}
