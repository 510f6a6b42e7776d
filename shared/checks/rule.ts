import type { PlaneLine } from "../alignment.ts";
import type { CutWalk } from "../cut-walk.ts";
import type { Holding } from "../holding/types.ts";
import type { LevelDoubt } from "../level-doubt.ts";
import type { LineSamples } from "../line-samples.ts";
import type { LonLat, Plan } from "../plan.ts";
import type { PlanPlane } from "../plan-plane.ts";
import type { Severity, Totals } from "../sizing-types.ts";
import type { SurveyedGround } from "../survey/surveyed-ground.ts";
import type { LineTime } from "../time/types.ts";
import type { CheckFinding, RuleId } from "./findings.ts";
import type { Listed } from "./listed.ts";
import type { Stretch } from "./stretch.ts";
import { atStation, type Where } from "./where.ts";

/** What a check may look at. */
export interface CheckContext {
  readonly plan: Plan;
  readonly line: PlaneLine;
  readonly plane: PlanPlane;
  readonly samples: LineSamples;
  readonly cuts: CutWalk;
  /** Side the water stands on: left (+1) or right (-1) of chainage. */
  readonly waterSide: 1 | -1;
  /** Chainages at which a reach ends and the next begins. */
  readonly breaksM: readonly number[];
  readonly totals: Totals;
  /** Clear distance from buildings that the line is checked against: its own, or the plan's; metres. */
  readonly setbackM: number;
  /** Longer side of one cell of the elevation raster, metres. */
  readonly cellM: number;
  /** Why nothing can be concluded from water and ground; null where they belong together. */
  readonly levelDoubt: LevelDoubt | null;
  /** Which of the ground was read in the field, and how good the elevation data are taken to be, metres. */
  readonly surveyed: SurveyedGround | null;
  readonly accuracyM: number;
  /** Null while live: what hangs on it is then not looked at. */
  readonly holding: Holding | null;
  readonly time: LineTime | null;
}

/** One thing a rule found: what, how grave, and where. */
export interface Finding {
  readonly severity: Severity;
  /** What was found, with its figures in SI. */
  readonly finding: CheckFinding;
  /** Where along the line; null when it speaks of the whole plan. */
  readonly where: Where | null;
  /** Stretch of the line it marks; null for one place or the whole plan. */
  readonly stretch: Stretch | null;
  /** Chainage of one place when there is no stretch. */
  readonly chainageM?: number;
  /** Sample of the line where a mark stands; null for none. */
  readonly sample: number | null;
  /** Place of the mark when it is not a sample's. */
  readonly at?: LonLat;
}

/** A check. What it requires and where that comes from is in `words/checks`, by its id. */
export interface Rule {
  readonly id: RuleId;
  readonly find: (context: CheckContext) => Finding[];
}

/** A finding about the plan as a whole. */
export function ofWholePlan(severity: Severity, finding: CheckFinding): Finding[] {
  return [{ severity, finding, where: null, stretch: null, sample: null }];
}

/** A finding about listed stretches, marked at the worst sample. */
export function ofStretch(
  severity: Severity,
  { stretch, where }: Pick<Listed, "stretch" | "where">,
  finding: CheckFinding,
): Finding {
  return { severity, finding, where, stretch, sample: stretch.worst };
}

/** A finding about one sample of the line. */
export function ofSample(
  severity: Severity,
  { samples }: CheckContext,
  sample: number,
  finding: CheckFinding,
): Finding {
  const chainageM = samples.chainageM[sample]!;
  return { severity, finding, where: atStation(chainageM), stretch: null, chainageM, sample };
}
