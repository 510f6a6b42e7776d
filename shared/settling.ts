import { reachAt } from "./reaches.ts";
import { sectionById } from "./sections.ts";
import type { CrossSection, SizedLine } from "./sizing-types.ts";

/** Wet bags settle: they are built higher by at least this share of the height. Source: MB. */
export const SETTLING_SHARE = 0.05;

/** What the height that bags are laid to is calculated from, at a station or a cross-section. */
type Laid = Pick<CrossSection, "crestM" | "heightM" | "courses">;

/**
 * Elevation to lay bags to, so that they come to the top of levee when wet: the height above the ground at that
 * station times 1.05, metres. Null where nothing is built of bags or the ground is not known.
 */
export function bagTopM({ crestM, heightM, courses }: Laid): number | null {
  if (!courses || heightM === null) return null;
  return crestM + SETTLING_SHARE * heightM;
}

/** Most that bags are laid above the top of levee between two chainages, metres; null where none are laid. */
export function mostSettlingM(
  line: Pick<SizedLine, "walk" | "reaches">,
  fromM: number,
  toM: number,
): number | null {
  const { chainageM, heightM } = line.walk;
  let mostM = 0;
  chainageM.forEach((atM, i) => {
    if (atM < fromM || atM > toM || !(heightM[i]! > mostM)) return;
    const type = sectionById(reachAt(line, atM).section);
    if (type.ok && type.value.fill === "bags") mostM = heightM[i]!;
  });
  return mostM > 0 ? SETTLING_SHARE * mostM : null;
}
