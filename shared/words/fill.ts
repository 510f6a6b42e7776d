import { sectionById } from "../sections.ts";
import type { CrossSection } from "../sizing-types.ts";
import { areaIn, formatCount, lengthFrom, type UnitSystem } from "../units.ts";

/** What fills a unit of length of the levee here: "78 bags per foot", "13.5 cu ft of sand per foot". */
export function fillWords(cross: CrossSection, system: UnitSystem): string {
  const declared = sectionById(cross.section);
  const fill = declared.ok ? declared.value.fill : "bags";
  if (fill === "bags") return bagWords(cross, system);
  if (cross.areaM2 === null || cross.areaM2 <= 0) return "";
  const volume = areaIn(cross.areaM2, system).toFixed(system === "us" ? 1 : 2);
  return `${volume} ${system === "us" ? "cu ft" : "m³"} of ${fill} per ${unitWord(system)}`;
}

function bagWords({ bagsPerM }: CrossSection, system: UnitSystem): string {
  if (bagsPerM === null || bagsPerM <= 0) return "";
  const bags = bagsPerM * lengthFrom(1, system);
  const shown = bags < 10 ? bags.toFixed(1) : formatCount(Math.round(bags));
  return `${shown} bags per ${unitWord(system)}`;
}

function unitWord(system: UnitSystem): string {
  return system === "us" ? "foot" : "meter";
}
