import { failureOf, type Outcome } from "./failure.ts";
import type { Plan, ReachSection } from "./plan.ts";
import { cameOf } from "./plan-text.ts";
import { bracedWall } from "./sections/braced-wall.ts";
import { earthLevee } from "./sections/earth-levee.ts";
import { lumberTopping } from "./sections/lumber-topping.ts";
import { plywoodBox } from "./sections/plywood-box.ts";
import { pyramid } from "./sections/pyramid.ts";
import { raised } from "./sections/raised.ts";
import { twoBagWall } from "./sections/two-bag-wall.ts";
import type { EmergencySection, SectionFigures } from "./sections/types.ts";

/** What a reach is built as when nothing else is said. */
export const PYRAMID: EmergencySection = pyramid;

/** Every emergency section there is, the standard one first. A new one is a file and a name here. */
export const SECTIONS: readonly EmergencySection[] = [
  pyramid,
  bracedWall,
  plywoodBox,
  lumberTopping,
  earthLevee,
  raised,
  twoBagWall,
];

/** The section of an identifier. The failure `plan/unknown-section` names the known ones. */
export function sectionById(id: unknown): Outcome<EmergencySection> {
  const value = SECTIONS.find((section) => section.id === id);
  if (value) return { ok: true, value };
  const known = SECTIONS.map((section) => section.id);
  return { ok: false, failure: failureOf("plan/unknown-section", { known, came: cameOf(id) }) };
}

/** All figures of a section in a plan: those a reach states, and the defaults of the others. */
export function figuresOf(
  section: EmergencySection,
  stated: ReachSection | null,
  plan: Plan,
): SectionFigures {
  return Object.fromEntries(
    section.figures.map(({ key, defaultFor }) => [key, stated?.figures[key] ?? defaultFor(plan)]),
  );
}
