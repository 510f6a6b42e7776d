import type { PlaneLine } from "../alignment.ts";
import type { CutWalk } from "../cut-walk.ts";
import type { Holding } from "../holding/types.ts";
import type { LevelDoubt } from "../level-doubt.ts";
import type { LonLat, Plan } from "../plan.ts";
import type { PlanPlane } from "../plan-plane.ts";
import type { Severity, Totals } from "../sizing-types.ts";
import type { LineTime } from "../time/types.ts";
import type { Trace } from "../trace.ts";
import type { Stretch } from "./stretch.ts";

/** What a check may look at. */
export interface CheckContext {
  readonly plan: Plan;
  readonly line: PlaneLine;
  readonly plane: PlanPlane;
  readonly trace: Trace;
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
  /** Null while live: what hangs on it is then not looked at. */
  readonly holding: Holding | null;
  readonly time: LineTime | null;
}

/** One thing a rule found. `stretch` is null when it speaks of the whole plan or of one place. */
export interface Finding {
  readonly severity: Severity;
  readonly stretch: Stretch | null;
  /** Chainage of one place when there is no stretch. */
  readonly chainageM?: number;
  /** Sample of the trace where a mark stands; null for none. */
  readonly sample: number | null;
  /** Place of the mark when it is not a sample's. */
  readonly at?: LonLat;
  /** Where it comes from, when that is not the rule's own source. */
  readonly source?: string;
  readonly message: string;
  readonly remedy: string;
}

/** A check: what it asks for, where that comes from, and how it is looked for. */
export interface Rule {
  readonly id: string;
  readonly rule: string;
  readonly source: string;
  readonly find: (context: CheckContext) => Finding[];
}

/** A finding about the plan as a whole. */
export function ofWholePlan(severity: Severity, message: string, remedy: string): Finding[] {
  return [{ severity, stretch: null, sample: null, message, remedy }];
}
