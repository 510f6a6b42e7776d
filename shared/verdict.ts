import type { CheckFinding } from "./checks/findings.ts";
import { hasAnyData, isCounted, isWhole, listedOnce } from "./completeness.ts";
import type { LevelDoubt } from "./level-doubt.ts";
import { hasOtherSections } from "./reaches.ts";
import { severityRank } from "./severity.ts";
import type { Check, SizedLine } from "./sizing-types.ts";
import { isLate, isSooner, type TimeVerdict, timeVerdict } from "./time/time-verdict.ts";
import type { TracedAlternative } from "./water-types.ts";

/** What is known of a line. */
export interface KnownLine {
  readonly line: SizedLine;
  /** All its checks: its own, those of traced water and those of the plan. */
  readonly checks: readonly Check[];
  /** The water with it built; null while that is not traced. */
  readonly traced: TracedAlternative | null;
}

/** What a line comes to in one line of words. Metres. */
export interface OverallVerdict {
  /** Why nothing can be said of its heights; null where something can. */
  readonly notKnown: "no-data" | LevelDoubt | null;
  readonly mustFix: number;
  /** Of `mustFix`, those that the other members do not name. */
  readonly otherMustFix: number;
  /** Length over the limit, as its checks count it. */
  readonly overLimitM: number;
  /** Length without elevation data. */
  readonly gapM: number;
  /** Whether water gets in with it built; null where that is not known, as before the water is traced. */
  readonly getsIn: boolean | null;
  readonly time: TimeVerdict;
  /** What to fix first; without a Must fix the first caution; null where there is neither. */
  readonly first: Check | null;
}

/** Another line that has nothing that must be fixed. */
export interface Cure {
  readonly id: string;
  /** Bags it takes less, below 0 more; whole, so that the figures shown add up. */
  readonly fewerBags: number;
  /** True where either line takes more than bags. */
  readonly hasOtherMaterials: boolean;
  readonly verdict: OverallVerdict;
}

type Concern = "doubt" | "over-limit" | "gap" | "gets-in" | "late";

/** What is fixed first: figures that are no answer, then height, ground that is not known, water, time, all else. */
const CONCERNS: readonly (Concern | null)[] = [
  "doubt",
  "over-limit",
  "gap",
  "late",
  "gets-in",
  null,
];

const CONCERN_OF: Readonly<Partial<Record<CheckFinding["kind"], Concern>>> = {
  "water-level": "doubt",
  "over-limit": "over-limit",
  "type-limit": "over-limit",
  "no-ground": "gap",
  "incomplete-totals": "gap",
  late: "late",
  "over-a-year": "late",
  "water-gets-in": "gets-in",
};

/** The verdict on a line, from what is known of it and nothing else. */
export function overallVerdict(known: KnownLine): OverallVerdict {
  const { line, traced } = known;
  const mustFix = listedOnce(known.checks).filter(({ severity }) => severity === "stop");
  const { totals, levelDoubt } = line;
  return {
    notKnown: levelDoubt?.countsUnknown ? levelDoubt : hasAnyData(totals) ? null : "no-data",
    mustFix: mustFix.length,
    otherMustFix: mustFix.filter((check) => concernOf(check) === null).length,
    overLimitM: totals.lengthOverLimitM,
    gapM: totals.lengthNoDataM,
    getsIn: traced === null || traced.dry === null ? null : !traced.dry,
    time: timeVerdict(line),
    first: firstOf(known.checks),
  };
}

/**
 * The line of fewest bags that has no Must fix; where the chosen one is late, of those that are in time, or late only
 * if the river runs high. Null where there is none, where nothing is to be fixed or late, and while water is not
 * traced.
 */
export function cureOf(
  chosen: KnownLine,
  verdict: OverallVerdict,
  others: readonly KnownLine[],
): Cure | null {
  if (!isCounted(chosen.line)) return null;
  if (verdict.mustFix === 0 && !isLate(verdict.time)) return null;
  const cures = others
    .filter(({ line, traced }) => traced && line.id !== chosen.line.id && isWhole(line))
    .map((known) => ({ line: known.line, verdict: overallVerdict(known) }))
    .filter((each) => each.verdict.mustFix === 0)
    .filter((each) => !isLate(verdict.time) || isSooner(each.line, each.verdict.time))
    .sort((a, b) => a.line.totals.bags - b.line.totals.bags);
  const [best] = cures;
  return best
    ? {
        id: best.line.id,
        fewerBags: chosen.line.totals.bags - best.line.totals.bags,
        hasOtherMaterials: hasOtherSections(chosen.line) || hasOtherSections(best.line),
        verdict: best.verdict,
      }
    : null;
}

function concernOf({ finding }: Check): Concern | null {
  return CONCERN_OF[finding.kind] ?? null;
}

/** Of one gravity by concern, then by what is worst: the greatest height, else the place along the line. */
function firstOf(checks: readonly Check[]): Check | null {
  const grave = listedOnce(checks).filter(({ severity }) => severity !== "note");
  const rank = (check: Check) => CONCERNS.indexOf(concernOf(check));
  const [first] = grave.sort(
    (a, b) =>
      severityRank(a) - severityRank(b) ||
      rank(a) - rank(b) ||
      isWholePlan(a) - isWholePlan(b) ||
      heightOf(b) - heightOf(a) ||
      a.fromM - b.fromM,
  );
  return first ?? null;
}

function isWholePlan({ where }: Check): number {
  return where === null ? 1 : 0;
}

function heightOf({ finding }: Check): number {
  return "heightM" in finding ? finding.heightM : 0;
}
