import { formatArea, formatLength, type UnitSystem } from "../units.ts";

/** `480 ft, 9 corners`; without the length where the line is not sized. */
export function lineSizeWords(lengthM: number | null, corners: number, system: UnitSystem): string {
  const length = lengthM === null ? "" : `${formatLength(lengthM, system, 0)}, `;
  return `${length}${corners} corners`;
}

/** What a ring encloses, null for none, and how far it stays away from what is in it. */
export function enclosedWords(areaM2: number | null, setbackM: number, system: UnitSystem): string {
  const area = areaM2 ? `Encloses ${formatArea(areaM2, system)}. ` : "";
  return `${area}Setback of the landside toe: ${formatLength(setbackM, system)}.`;
}
