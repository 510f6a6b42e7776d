import type { Alignment, Plan } from "../plan.ts";
import type { Check, SizedLine } from "../sizing-types.ts";
import type { UnitSystem } from "../units.ts";

/** A line as it leaves the program in a file: its figures in one unit system, with what must be read beside them. */
export interface Exported {
  readonly plan: Plan;
  readonly alternative: Alignment;
  readonly line: SizedLine;
  /** Every check of the line, and of the water where it was traced. */
  readonly checks: readonly Check[];
  /** False where the water was not traced, so that no check says what it shows of the line. */
  readonly isTraced: boolean;
  /** What its elevations count from. */
  readonly verticalDatum: string;
  readonly system: UnitSystem;
}

/** One value of a file: rounded text, a number, or null where it is not known. */
export type Value = string | number | boolean | null;

/** Names with their unit and values, in order. */
export type Named = Readonly<Record<string, Value>>;
