import type { CheckFinding } from "../checks/findings.ts";
import { A_STRETCH_M } from "../completeness.ts";
import { FOOT_M } from "../constants.ts";
import type { Check } from "../sizing-types.ts";
import { isLate, type TimeVerdict } from "../time/time-verdict.ts";
import { formatCount, type UnitSystem } from "../units.ts";
import type { Cure, OverallVerdict } from "../verdict.ts";
import type { FindingOf } from "./checks/text.ts";
import { checkWords } from "./checks.ts";
import { hourWords } from "./clock.ts";
import { WATER_NOT_KNOWN } from "./dry.ts";
import { levelDoubtRemedy, levelDoubtShort } from "./level-doubt.ts";
import { mustFixWords } from "./must-fix.ts";
import { SEVERITY_NAMES } from "./severity.ts";
import { timeVerdictWords } from "./time-verdict.ts";
import { type Units, unitsOf } from "./units.ts";
import { whereWords } from "./where.ts";

/** What is first to fix on a line, and what to do. */
export interface HeadlineWords {
  /** `Must fix` or `Caution`. */
  readonly severity: string;
  /** `Too high at 4+09 to 4+38: 4.4 ft, height limit 4.0 ft`, without a full stop. */
  readonly headline: string;
  /** One sentence. */
  readonly remedy: string;
}

/**
 * A line's verdict on its card: `30 ft over limit, late at slow pace`; `in time, nothing over limit`. Where something
 * must be fixed, nothing good is said beside it; where nothing is, that the water is not known, if it is not.
 */
export function overallVerdictWords(verdict: OverallVerdict, system: UnitSystem): string {
  const { notKnown, mustFix, otherMustFix, overLimitM, gapM, getsIn, time } = verdict;
  const units = unitsOf(system);
  if (notKnown === "no-data") return "not known: no elevation data";
  if (notKnown) return `not known: ${levelDoubtShort(notKnown)}`;
  const named = [
    overLimitM > 0 && `${overLengthWords(overLimitM, units)} over limit`,
    gapM > A_STRETCH_M && `${units.distance(gapM)} without elevation data`,
    getsIn === true && "water gets in",
  ].filter((words) => words !== false);
  const rest = named.length > 0 ? `${otherMustFix} other Must fix` : mustFixWords(otherMustFix);
  const bad = [...named, ...(otherMustFix > 0 ? [rest] : [])];
  const inTime = timeVerdictWords(time, system);
  const unknown = getsIn !== null ? [] : [WATER_NOT_KNOWN];
  if (time.kind !== "in-time") {
    const saysNothingOver = bad.length === 0 && mustFix === 0 && !isBad(time);
    return (saysNothingOver ? [NOTHING_OVER, inTime, ...unknown] : [...bad, inTime]).join(", ");
  }
  if (bad.length > 0) return bad.join(", ");
  return mustFix > 0 ? mustFixWords(mustFix) : [inTime, NOTHING_OVER, ...unknown].join(", ");
}

const NOTHING_OVER = "nothing over limit";

/** True where the verdict's words are of water that comes first, or higher. */
function isBad(time: TimeVerdict): boolean {
  return isLate(time) || time.kind === "late-if-high" || time.kind === "too-low";
}

/** What is first to fix or to mind; null where there is nothing. */
export function headlineWords(check: Check | null, system: UnitSystem): HeadlineWords | null {
  if (!check) return null;
  const { message, remedy } = checkWords(check, system);
  const made = HEADLINES[check.finding.kind] as Headline<CheckFinding> | undefined;
  return {
    severity: SEVERITY_NAMES[check.severity],
    ...(made?.(check.finding, unitsOf(system), check) ?? { headline: message, remedy }),
  };
}

/** In the place of a headline where no Must fix and no caution is found. */
export function noneFoundWords({ getsIn }: Pick<OverallVerdict, "getsIn">): HeadlineWords {
  return getsIn !== null
    ? {
        severity: "No Must fix",
        headline: "No Must fix and no caution found on this line",
        remedy: "Read the cautions under All checks: they apply to every line.",
      }
    : {
        severity: "Not known",
        headline: "Not known whether water gets in",
        remedy: "See under All checks why.",
      };
}

/**
 * What the line that cures it comes to, after its letter: `nothing over limit, 3,603 fewer bags`; and what is
 * still wrong with it, or not known of it alone: `late if the river runs high`.
 */
export function cureWords(cure: Cure, of: OverallVerdict, system: UnitSystem): string {
  const { fewerBags, hasOtherMaterials, verdict } = cure;
  const bags =
    fewerBags === 0
      ? "as many bags"
      : `${formatCount(Math.abs(fewerBags))} ${fewerBags > 0 ? "fewer" : "more"} bags`;
  const better =
    of.overLimitM > 0
      ? NOTHING_OVER
      : isLate(of.time)
        ? timeVerdictWords(verdict.time, system)
        : "no Must fix";
  const isUnknownOfBoth = verdict.time.kind === "not-known" && of.time.kind === "not-known";
  const isStill = verdict.time.kind !== "in-time" && !isUnknownOfBoth;
  const still = isStill && timeVerdictWords(verdict.time, system);
  const parts = [
    better,
    bags,
    hasOtherMaterials && "other materials beside",
    still !== better && still,
  ];
  return parts.filter((part) => part !== false).join(", ");
}

/** Where no line cures it: the others may have a Must fix, be late, or not be known. */
export const NO_CURE = "No other line is known to fix this.";

/** A length over the limit, whole; where it is that short, `less than 1 ft`. */
function overLengthWords(lengthM: number, units: Units): string {
  const shown = units.distance(lengthM);
  return lengthM < NAMED_M[units.system]
    ? `less than ${units.distance(ONE_M[units.system])}`
    : shown;
}

const ONE_M = { us: FOOT_M, metric: 1 } as const;
const NAMED_M = { us: FOOT_M / 2, metric: 0.5 } as const;

type Headline<F> = (
  finding: F,
  units: Units,
  check: Check,
) => Pick<HeadlineWords, "headline" | "remedy">;

const HIGHER_GROUND = "Move the line to higher ground, or ask a licensed engineer.";

const HEADLINES: { readonly [K in CheckFinding["kind"]]?: Headline<FindingOf<K>> } = {
  "over-limit": (finding, units, check) => ({
    headline: tooHigh(finding, units, check),
    remedy: finding.doubtsData
      ? "Check the elevation data, its unit and the water first: no emergency levee is that high."
      : HIGHER_GROUND,
  }),
  "type-limit": (finding, units, check) => ({
    headline: tooHigh(finding, units, check),
    remedy: "Choose another levee type there, or move the line to higher ground.",
  }),
  "no-ground": (_, units, check) => ({
    headline: `No elevation data${placeWords(check, units)}`,
    remedy: "Open elevation data that covers it, or lead the line around the gap.",
  }),
  "water-level": ({ doubt }) => ({
    headline:
      doubt.kind === "far-above"
        ? "The sized-for water is far above the ground on this line"
        : "No ground on this line is below the sized-for water",
    remedy: levelDoubtRemedy(doubt),
  }),
  datum: ({ of }) => ({
    headline: `${of === "gauge-zero" ? "Gauge zero" : "Water elevation"} and elevation data: same vertical datum not stated`,
    remedy: "Find the datum of both: common datums differ by several feet.",
  }),
  late: ({ by, startAt, behindFromH, behindAtM }, units) => ({
    headline: `${LATE[by]}: behind the water from ${hourWords(startAt, behindFromH, units.system)}, near ${units.station(behindAtM)}`,
    remedy: "Enter more people, start sooner, or choose a line of fewer bags.",
  }),
  "over-a-year": ({ people }) => ({
    headline: `Late: over a year with ${formatCount(people)} people`,
    remedy: "Enter more people, or choose a line of fewer bags.",
  }),
};

const LATE = {
  likely: "Late",
  "slow-pace": "Late at slow pace",
  "high-forecast": "Late if the river runs high",
} as const;

function tooHigh(
  { heightM, limitM }: { readonly heightM: number; readonly limitM: number },
  units: Units,
  check: Check,
): string {
  return `Too high${placeWords(check, units)}: ${units.lengthOver(heightM, limitM)}, height limit ${units.length(limitM)}`;
}

/** ` at 4+09 to 4+38`, ` along the whole line`, ` on 240 ft in 4 stretches, ...`. */
function placeWords({ where }: Check, units: Units): string {
  if (!where) return "";
  if (where.at === "whole-line") return " along the whole line";
  return `${where.at === "stretches" ? " on " : " at "}${whereWords(where, units)}`;
}
