import type { CheckFinding, RuleId } from "../checks/findings.ts";
import type { Where } from "../checks/where.ts";
import type { LonLat, Plan } from "../plan.ts";
import type { Check, Severity } from "../sizing-types.ts";
import type { TracedAlternative, WaterTrace } from "../water-types.ts";

/** What a check of the whole plan's water may look at. */
export interface WaterContext
  extends Omit<WaterTrace, "alternatives" | "mask" | "nearMask" | "checks"> {
  readonly plan: Plan;
  /** Root mean square error taken for the ground, metres. */
  readonly groundRmseM: number;
}

/** What a check of one alternative may look at. `structures` are those without any levee. */
export interface LineContext {
  readonly plan: Plan;
  readonly line: Omit<TracedAlternative, "checks">;
  readonly pipes: WaterTrace["pipes"];
  readonly structures: WaterTrace["structures"];
}

/** One thing a rule found. Without a chainage it speaks of the whole plan. */
export interface TraceFinding {
  readonly severity: Severity;
  /** What was found, with its figures in SI. */
  readonly finding: CheckFinding;
  readonly fromM?: number;
  readonly toM?: number;
  readonly at: LonLat | null;
}

/** A check that follows from the traced water. What it requires is in `words/checks`, by its id. */
export interface TraceRule<Context> {
  readonly id: RuleId;
  readonly find: (context: Context) => TraceFinding[];
}

/** What a rule found, as checks. */
export function checksFrom<Context>({ id, find }: TraceRule<Context>, context: Context): Check[] {
  return find(context).map(({ fromM = 0, toM = fromM, ...found }) => {
    const where: Where | null =
      toM > fromM ? { at: "stretch", fromM, toM, overClosing: false } : null;
    return { id, fromM, toM, where, ...found };
  });
}

/** Name of a structure; null for the ground inside a ring that has none. */
export function nameOf({ line }: LineContext, id: string): string | null {
  const found = line.structures.find((each) => each.id === id);
  return found && found.id !== line.id ? found.name : null;
}
