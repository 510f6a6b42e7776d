import type { Section } from "../plan.ts";
import { coursesFor } from "../quantities.ts";
import { isStandard } from "../reaches.ts";
import type { CrossSection } from "../sizing-types.ts";
import { formatLength, type UnitSystem } from "../units.ts";
import { baseWidths, toesOf } from "./base-width.ts";
import { courseWords } from "./courses.ts";
import { fillWords } from "./fill.ts";
import { topWords } from "./settling.ts";

/** What a cross-section takes: `78 bags per foot, 13 courses`. */
export function takesWords(cross: CrossSection, section: Section, system: UnitSystem): string {
  return [fillWords(cross, system), coursesOf(cross, section)].filter(Boolean).join(", ");
}

/** A cross-section as it is read out. */
export function crossSectionWords(
  cross: CrossSection,
  section: Section,
  station: string,
  system: UnitSystem,
): string {
  return [`Cross-section at ${station}`, ...figures(cross, section, system)].join(", ");
}

function figures(cross: CrossSection, section: Section, system: UnitSystem): string[] {
  if (cross.greatestHeightM === null) return ["no elevation data under the base"];
  if (cross.greatestHeightM <= 0) return ["the ground is above the top of levee"];
  return [
    isStandard(cross) ? "" : cross.sectionName,
    `greatest height ${formatLength(cross.greatestHeightM, system)}`,
    cross.baseM === null ? "" : `base ${baseWidths(toesOf(cross), system).inUnit}`,
    takesWords(cross, section, system),
    topWords(cross, system),
  ].filter((each) => each !== "");
}

function coursesOf({ courses, greatestHeightM }: CrossSection, section: Section): string {
  if (!courses || greatestHeightM === null) return "";
  return courseWords(coursesFor(greatestHeightM, section));
}
