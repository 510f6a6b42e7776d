import { formatLength, lengthIn, type UnitSystem } from "../units.ts";
import type { TracedAlternative, TracedStructure } from "../water-types.ts";

/** A height below half of the last decimal that is written is 0 as written. */
const LEAST_SHOWN: Readonly<Record<UnitSystem, number>> = { us: 0.05, metric: 0.005 };

/** `water 0.4 ft above the floor`: the sized-for water without a levee; null where the floor is not known. */
export function floorWords(
  { wet, overFloorM }: Pick<TracedStructure, "wet" | "overFloorM">,
  system: UnitSystem,
): string | null {
  if (overFloorM === null || wet === null) return null;
  const isLevel = Math.abs(lengthIn(overFloorM, system)) < LEAST_SHOWN[system];
  const where = isLevel
    ? "at the floor"
    : `${formatLength(Math.abs(overFloorM), system)} ${overFloorM < 0 ? "below" : "above"} the floor`;
  return wet ? `water ${where}` : `water does not reach it; its level is ${where}`;
}

/**
 * `left outside, will be flooded 1.3 ft deep`: a building that is not to be protected.
 * @param line the water with the chosen line built; null without one
 */
export function leftOutsideWords(
  { id, wet, depthM }: Pick<TracedStructure, "id" | "wet" | "depthM">,
  line: Pick<TracedAlternative, "leftWet"> | null,
  system: UnitSystem,
): string {
  if (wet === null) return "left outside, whether water reaches it is not known";
  if (!wet) return "left outside, not reached by this water";
  if (line && !line.leftWet.includes(id)) {
    return "to be left outside, but no overland path to it with this line";
  }
  const deep = depthM === null ? "" : ` ${formatLength(depthM, system)} deep`;
  return `left outside, will be flooded${deep}`;
}
