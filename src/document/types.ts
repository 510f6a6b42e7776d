import type { Outcome } from "../../shared/failure.ts";
import type { Plan } from "../../shared/plan.ts";

/** A named change of the plan. `change` is pure; the gate validates what it returns. */
export interface Edit {
  /** Names the step for undo, e.g. "Move corner 3 of B". */
  readonly note: string;
  /** What is said once it is done, e.g. "Corner 3 moved"; the note when left out. */
  readonly said?: string | undefined;
  readonly change: (plan: Plan) => Plan;
  /** Edits in a row that carry the same gesture are one step of undo (a drag, a slider); one without is a step of its own. */
  readonly gesture?: string | undefined;
}

export type ApplyEdit = (edit: Edit) => Outcome<void>;
