import { A_STRETCH_M } from "../completeness.ts";
import { DAY_H } from "../constants.ts";
import { lengthBracedM } from "../holding/bracing.ts";
import { roundedDown } from "../holding/factor-words.ts";
import { lineVerdict } from "../holding/line-verdict.ts";
import type { FillingHour, GradientClass, Holding, Verdict } from "../holding/types.ts";
import type { Soil, Uplift } from "../plan.ts";
import { reachOverItsLimit } from "../reaches.ts";
import type { SizedLine } from "../sizing-types.ts";
import { formatLength, formatStation, type UnitSystem } from "../units.ts";
import { levelDoubtShort } from "./level-doubt.ts";
import { butMustFix } from "./must-fix.ts";

const HOUR_MIN = 60;

const VERDICTS: Readonly<Record<Verdict, string>> = {
  "meets-required": "as required",
  doubtful: "in doubt",
  "below-required": "below required",
};

/** What a verdict is called in a table. */
export function verdictWord(verdict: Verdict): string {
  return VERDICTS[verdict];
}

/**
 * What sliding and overturning of a line calculate at, in one short line: "calculates at 1.5 or more, at the friction assumed", "below the 1.5 required at 3+40".
 * What is not known or not calculated, and what must be fixed, is said beside it. Statics take a wall as one body,
 * so a reach over its height limit is never said to be as required.
 */
export function stabilityWords(
  line: SizedLine,
  holding: Holding,
  system: UnitSystem,
  mustFix: number,
): string {
  const { lengthNoDataM, lengthM } = line.totals;
  if (lengthNoDataM >= lengthM) return "no elevation data under it";
  if (line.levelDoubt?.countsUnknown) return `not known: ${levelDoubtShort(line.levelDoubt)}`;
  const isBraced = lengthBracedM(line) > 0;
  const known = lengthNoDataM > 0 ? ", where there is elevation data" : "";
  const beside = `${isBraced ? ", bracing not calculated" : known}${butMustFix(mustFix)}`;
  if (!holding.standing) {
    return isBraced ? "bracing not calculated" : `no water against it${known}`;
  }
  const { verdict, weakest } = lineVerdict(holding.standing);
  const at = formatStation(weakest.chainageM, system);
  if (verdict === "below-required") return `below the ${weakest.required} required at ${at}`;
  const over = reachOverItsLimit(line);
  if (over) {
    const station = formatStation(over.totals.greatestHeightAtM, system);
    return `over the height limit of its levee type at ${station}${beside}`;
  }
  if (verdict === "meets-required") {
    const { sliding, overturning } = holding.standing;
    const least = Math.min(sliding.required, overturning.required);
    return `calculates at ${least} or more, at the friction assumed${beside}`;
  }
  const short = formatLength(weakest.lengthShortM, system, 0);
  return `below the ${weakest.required} required on ${short}, at low friction${beside}`;
}

/** The same in two or three words, for a line of its own; the Must fix of the line stand beside it. */
export function stabilityShort(line: SizedLine, holding: Holding, soil: Soil): string {
  const { lengthNoDataM, lengthM } = line.totals;
  if (lengthNoDataM >= lengthM || line.levelDoubt?.countsUnknown) return "not known";
  const { standing } = holding;
  const verdict = standing && lineVerdict(standing).verdict;
  if (verdict === "below-required") return "below required";
  if (line.totals.lengthOverLimitM > A_STRETCH_M) return "over limit";
  if (lengthBracedM(line) > 0) return "bracing not calculated";
  if (lengthNoDataM > 0) return "part not known";
  if (!standing) return "no water against it";
  if (verdict === "doubtful") return "in doubt";
  if (soil === "unknown") return "soil not stated";
  return `${Math.min(standing.sliding.required, standing.overturning.required)} or more`;
}

/** A span of hours, rounded down: "25 min", "3.4 h", "18 h", "3 days", "over a week". */
export function spanWords(hours: number): string {
  if (hours < 0.1) return "a few minutes";
  if (hours < 1.5) return `${Math.max(5, Math.floor((hours * HOUR_MIN) / 5) * 5)} min`;
  if (hours < 10) return `${roundedDown(hours)} h`;
  if (hours < 2 * DAY_H) return `${Math.floor(hours)} h`;
  if (hours < 7 * DAY_H) return `${Math.floor(hours / DAY_H)} days`;
  return "over a week";
}

const SEEN: Readonly<Record<GradientClass, string>> = {
  light: "light seepage",
  medium: "medium seepage",
  heavy: "heavy seepage",
  boils: "sand boils",
  "new-boils": "new sand boils",
};

/** The same before another kind of seepage. */
const DEGREES: Readonly<Record<GradientClass, string>> = {
  ...SEEN,
  ...{ light: "light", medium: "medium", heavy: "heavy" },
};

/** What was seen at such gradients, from the mildest to the gravest; empty when nothing is known. */
export function seenWords(classes: readonly GradientClass[]): string {
  const [first, last] = [classes[0], classes.at(-1)];
  if (!first || !last) return "";
  if (first === last) return SEEN[last];
  const isBoil = last === "boils" || last === "new-boils";
  return `${isBoil ? SEEN[first] : DEGREES[first]} to ${SEEN[last]}`;
}

/** The level inside by hour, for those who cannot see its drawing. */
export function levelsSpoken(hours: readonly FillingHour[], level: (m: number) => string): string {
  const end = (m: number | null) => (m === null ? "as high as outside" : level(m));
  return hours
    .map(({ hours: after, lowM, highM }) => `after ${after} h ${end(lowM)} to ${end(highM)}`)
    .join("; ");
}

export const UPLIFT_NAMES: Readonly<Record<Uplift, string>> = {
  none: "none",
  triangular: "triangular, toe drained",
  full: "full, toe drowned",
};

/** What the figures of seepage and stability leave out: each with the length it is of. */
export function leftOutOfHolding(
  of: "no-data" | "bracing" | "over-limit",
  lengthM: number,
  system: UnitSystem,
) {
  const length = formatLength(lengthM, system, 0);
  return {
    "no-data": `${length} without elevation data is not in these figures.`,
    bracing: `${length} held by bracing, which is not calculated: have an engineer check it.`,
    "over-limit": `${length} over the height limit of its levee type. No factor here makes up for that: see All checks.`,
  }[of];
}

/** What the least room to raise comes to, where it is not enough or is with the freeboard kept; empty at none. */
export function raiseRoomWords(leastM: number, system: UnitSystem): string {
  if (leastM > 0) return ", with its freeboard kept";
  return leastM < 0
    ? `: ${formatLength(-leastM, system)} higher than base and height limit allow`
    : "";
}
