import { holdingOf } from "../defaults.ts";
import { Refusal } from "../failure.ts";
import type { Alignment, Plan } from "../plan.ts";
import { raiseToM } from "../quantities.ts";
import { figuresOf, sectionById } from "../sections.ts";
import type { EmergencySection, SectionFigures, SectionShape } from "./types.ts";

/** What a reach is built as, with everything a cut across asks for. */
export interface BuiltReach {
  readonly section: EmergencySection;
  /** Complete. */
  readonly figures: SectionFigures;
  /** Greatest height it may be built to, metres: its section's limit, or the plan's. */
  readonly limitM: number;
  /** Mass of the body as built, kg/m3. */
  readonly kgPerM3: number;
}

/** What a reach without a section of its own is built as. */
const STANDARD = { section: "pyramid", figures: {} } as const;

/**
 * What each of a line's first `count` reaches is built as; entries of the plan beyond them are left alone.
 * Throws a {@link Refusal} for a section that is not known.
 */
export function builtReaches(plan: Plan, alignment: Alignment, count: number): BuiltReach[] {
  return Array.from({ length: count }, (_, i) => {
    const stated = alignment.reachSections?.[i] ?? STANDARD;
    const found = sectionById(stated.section);
    if (!found.ok) throw new Refusal(found.failure);
    const section = found.value;
    return {
      section,
      figures: figuresOf(section, stated, plan),
      limitM: section.limitM ?? plan.practice.limitM,
      kgPerM3: section.kgPerM3(holdingOf(plan)),
    };
  });
}

/** Index of the reach at a chainage; at a break, the one that begins there. */
export function reachAt(breaksM: readonly number[], chainageM: number): number {
  return breaksM.filter((breakM) => breakM <= chainageM + 1e-6).length;
}

/** Whether two reaches are built in the same way. */
export function sameBuild(a: BuiltReach, b: BuiltReach): boolean {
  if (a.section !== b.section) return false;
  return a.section.figures.every(({ key }) => a.figures[key] === b.figures[key]);
}

/**
 * The same reach when the water stands `riseM` higher over the ground: what stands already stays where it is,
 * so that it is to be raised by as much more.
 */
export function withWaterHigher(reach: BuiltReach, riseM: number): BuiltReach {
  if (!reach.section.earlierInto) return reach;
  const raiseM = Math.max(0, reach.figures.raiseM! + riseM);
  return { ...reach, figures: { ...reach.figures, raiseM } };
}

/**
 * Height at the centre line that the base could later carry, metres; see `raiseToM`. NaN for a section that is
 * no pyramid: how far it may be raised is not published.
 */
export function reserveM(
  { section, figures }: BuiltReach,
  heightM: number,
  greatestHeightM: number,
  plan: Plan,
): number {
  const ratio = baseRatioAt(section, figures, heightM);
  if (Number.isNaN(ratio)) return Number.NaN;
  const { leastBaseRatio } = plan.section;
  return raiseToM(heightM, greatestHeightM, { baseRatio: ratio, leastBaseRatio }, plan.practice);
}

/** Base over height of a pyramid, or of one that is raised; NaN for all others. */
function baseRatioAt(section: EmergencySection, figures: SectionFigures, heightM: number): number {
  if (section.id === "pyramid") return figures.baseRatio!;
  if (!section.earlierInto || !(heightM > 0)) return Number.NaN;
  const shape: SectionShape = { crownM: 0, runWater: 0, runLand: 0 };
  section.shapeInto(shape, heightM, figures);
  return shape.crownM / heightM + shape.runWater + shape.runLand;
}
