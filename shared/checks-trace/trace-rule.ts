import type { LonLat, Plan } from "../plan.ts";
import type { Check, Severity } from "../sizing-types.ts";
import type {
  TracedAlternative,
  TracedSource,
  TracedStructure,
  TracedWater,
} from "../water-types.ts";

/** What a check of the whole plan's water may look at. */
export interface WaterContext {
  readonly plan: Plan;
  /** Root mean square error taken for the ground, metres. */
  readonly groundRmseM: number;
  readonly water: TracedWater;
  readonly sources: readonly TracedSource[];
  readonly structures: readonly TracedStructure[];
}

/** What a check of one alternative may look at. `structures` are those without any levee. */
export interface LineContext {
  readonly plan: Plan;
  readonly line: Omit<TracedAlternative, "checks">;
  readonly structures: readonly TracedStructure[];
}

/** One thing a rule found. Without a chainage it speaks of the whole plan. */
export interface TraceFinding {
  readonly severity: Severity;
  readonly fromM?: number;
  readonly toM?: number;
  readonly at: LonLat | null;
  readonly message: string;
  readonly remedy: string;
}

/** A check that follows from the traced water: what it asks for, where that comes from, how it is found. */
export interface TraceRule<Context> {
  readonly id: string;
  readonly rule: string;
  readonly source: string;
  readonly find: (context: Context) => TraceFinding[];
}

/** What a rule found, as checks. */
export function checksFrom<Context>(rule: TraceRule<Context>, context: Context): Check[] {
  const { id, source } = rule;
  return rule.find(context).map(({ fromM = 0, toM = fromM, ...finding }) => ({
    ...{ id, rule: rule.rule, source, fromM, toM },
    ...finding,
  }));
}

/** A structure by its id; the ground inside a ring that holds none has no structure. */
export function nameOf({ line }: LineContext, id: string): string {
  const found = line.structures.find((each) => each.id === id);
  return found && found.id !== line.id ? `"${found.name}"` : "the ground inside the ring";
}
