import { A_STRETCH_M } from "./completeness.ts";
import { HEIGHT_CLASSES, heightClass } from "./height-class.ts";
import type { Alignment, ReachSection } from "./plan.ts";
import { PYRAMID } from "./sections.ts";
import type { Reach, SizedLine } from "./sizing-types.ts";

/** What a reach is built as when its line says nothing: the sandbag pyramid of the plan's own section. */
export const STANDARD: ReachSection = { section: PYRAMID.id, figures: {} };

/** True for a reach or a cut that is built as the plan's own section. */
export function isStandard({ section }: { readonly section: string }): boolean {
  return section === STANDARD.section;
}

/** What each reach of a line is built as, in order: one more than it has breaks. */
export function sectionsOf({ reachBreaksM, reachSections }: Alignment): readonly ReachSection[] {
  return Array.from(
    { length: reachBreaksM.length + 1 },
    (_, index) => reachSections?.[index] ?? STANDARD,
  );
}

/** True where a line is not all of the plan's own section: only then is a section worth naming. */
export function hasOtherSections({ reaches }: Pick<SizedLine, "reaches">): boolean {
  return reaches.some((reach) => !isStandard(reach));
}

/** The first reach of another section that is higher than that section may be built; null when none is. */
export function reachOverItsLimit({ reaches }: Pick<SizedLine, "reaches">): Reach | null {
  const isOver = ({ totals }: Reach) => totals.lengthOverLimitM > A_STRETCH_M;
  return reaches.find((reach) => !isStandard(reach) && isOver(reach)) ?? null;
}

/** The reach a chainage lies in: at a break the one that begins there. */
export function reachAt({ reaches }: Pick<SizedLine, "reaches">, chainageM: number): Reach {
  return reaches.findLast((reach) => reach.fromM <= chainageM) ?? reaches[0]!;
}

/**
 * Height class of a place on a reach with a limit of its own: by the plan's steps, so that one colour is one
 * height everywhere, and over only where its own limit is passed.
 */
export function classOnReach(greatestHeightM: number, stepsToM: number, limitM: number): number {
  const byHeight = heightClass(greatestHeightM, stepsToM);
  if (byHeight < 0) return byHeight;
  const over = HEIGHT_CLASSES - 1;
  return heightClass(greatestHeightM, limitM) === over ? over : Math.min(byHeight, over - 1);
}
