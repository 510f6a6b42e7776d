import { isCounted } from "../completeness.ts";
import type { Water } from "../plan.ts";
import type { SizedLine } from "../sizing-types.ts";
import { isWaterGiven } from "../stage.ts";
import { formatElevation, formatLength, type UnitSystem } from "../units.ts";
import { bagsWords } from "./counted.ts";
import { mustFixWords } from "./must-fix.ts";
import { againstRival, type Rival } from "./rival.ts";

/** A line as it is announced; null where it is not sized. */
interface Announced {
  readonly letter: string;
  readonly line: SizedLine | null;
}

/** What a person who does not see the screen is told once it has come to rest. */
export type Announcement =
  | { readonly kind: "water"; readonly water: Water; readonly chosen: Announced | null }
  | { readonly kind: "found"; readonly lines: readonly Announced[]; readonly rival: Rival | null };

/**
 * `Sized-for stage 32.0 ft. A: 21,204 bags, 2 Must fix.`; `Found D: 14,276 bags, 3,603 fewer than A.`
 * @param mustFixOn how many things must be fixed on a line
 */
export function announcementWords(
  announcement: Announcement,
  system: UnitSystem,
  mustFixOn: (line: SizedLine) => number,
): string {
  const bagsOf = ({ letter, line }: Announced) =>
    `${letter}: ${line && isCounted(line) ? bagsWords(line.totals, system) : "bags not known"}`;
  const fixOf = ({ line }: Announced) => {
    const count = line ? mustFixOn(line) : 0;
    return count > 0 ? `, ${mustFixWords(count)}` : "";
  };
  if (announcement.kind === "water") {
    const { water, chosen } = announcement;
    const level = levelWords(water, system);
    return chosen ? `${level}. ${bagsOf(chosen)}${fixOf(chosen)}.` : `${level}.`;
  }
  const { lines, rival } = announcement;
  const compared = ({ line }: Announced) =>
    line && rival && lines.length === 1 ? againstRival(line, rival, mustFixOn) : "";
  return `Found ${lines.map((each) => bagsOf(each) + (compared(each) || fixOf(each))).join("; ")}.`;
}

function levelWords(water: Water, system: UnitSystem): string {
  const { by, stageM, elevationM } = water;
  if (!isWaterGiven(water)) return "Sized-for water not known";
  return by === "stage"
    ? `Sized-for stage ${formatLength(stageM, system)}`
    : `Sized-for water elevation ${formatElevation(elevationM, system)}`;
}
