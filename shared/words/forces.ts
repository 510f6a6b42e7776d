import { sectionById } from "../sections.ts";
import type { CrossSection } from "../sizing-types.ts";

/** Why there are no forces to show at a cross-section. */
export function noForcesWords({ section, areaM2 }: CrossSection): string {
  if (areaM2 === null) return "No elevation data here.";
  if (!(areaM2 > 0)) return "Nothing is built here.";
  const kind = sectionById(section);
  return kind.ok && kind.value.carriedBy === "bracing"
    ? "Held by its bracing, which is not calculated."
    : "The forces are not known here.";
}
