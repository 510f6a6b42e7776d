import { type Extent, isComplete } from "../../../shared/completeness.ts";
import type { Totals } from "../../../shared/sizing-types.ts";
import {
  formatCount,
  formatHours,
  formatLength,
  shownHours,
  shownLengthM,
  type UnitSystem,
} from "../../../shared/units.ts";

/** One line of the comparison of what was found with what was chosen before. */
export interface SavingRow {
  readonly name: string;
  /** What the found line has. */
  readonly amount: string;
  /** Against the other: "4,283 fewer", "the same". */
  readonly difference: string;
}

type Sum = Extent &
  Pick<Totals, "bags" | "builtLengthM" | "jobPersonHours" | "greatestHeightM" | "lengthOverLimitM">;

/** What several lines take together. */
export function sumOf(totals: readonly Sum[]): Sum {
  const sum = (pick: (each: Sum) => number) => totals.reduce((all, each) => all + pick(each), 0);
  return {
    lengthM: sum((each) => each.lengthM),
    lengthNoDataM: sum((each) => each.lengthNoDataM),
    bags: sum((each) => each.bags),
    builtLengthM: sum((each) => each.builtLengthM),
    jobPersonHours: sum((each) => each.jobPersonHours),
    lengthOverLimitM: sum((each) => each.lengthOverLimitM),
    greatestHeightM: Math.max(...totals.map((each) => each.greatestHeightM)),
  };
}

/**
 * What was found beside what was chosen before; its own figures alone without that, and where either is not
 * counted in full.
 */
export function savingRows(found: Sum, before: Sum | null, system: UnitSystem): SavingRow[] {
  const against = before && canCompare(found, before) ? before : null;
  const row = (
    name: string,
    pick: (each: Sum) => number,
    write: (value: number) => string,
    [less, more]: readonly [string, string],
    shown: (value: number) => number = (value) => value,
  ): SavingRow => {
    const amount = write(pick(found));
    if (!against) return { name, amount, difference: "" };
    const by = shown(pick(found)) - shown(pick(against));
    const size = write(Math.abs(by));
    if (size === write(0)) return { name, amount, difference: "the same" };
    return { name, amount, difference: `${size} ${by < 0 ? less : more}` };
  };
  const length = (m: number) => formatLength(m, system, 0);
  const height = (m: number) => formatLength(m, system);
  const whole = (m: number) => shownLengthM(m, system, 0);
  const rows = [
    row("Bags", (each) => each.bags, formatCount, ["fewer", "more"]),
    row("To build", (each) => each.builtLengthM, length, ["shorter", "longer"], whole),
    row("Person-hours", (each) => each.jobPersonHours, formatHours, ["less", "more"], shownHours),
    row(
      "Greatest height",
      (each) => each.greatestHeightM,
      height,
      ["lower", "higher"],
      (m) => shownLengthM(m, system),
    ),
  ];
  const over = row(
    "Over the height limit",
    (each) => each.lengthOverLimitM,
    length,
    ["less", "more"],
    whole,
  );
  const isOver = found.lengthOverLimitM + (against?.lengthOverLimitM ?? 0) > 0;
  return isOver ? [...rows, over] : rows;
}

/** Whether both are counted in full. */
export function canCompare(one: Extent, other: Extent): boolean {
  return isComplete(one) && isComplete(other);
}

/** "24 %" fewer bags than another; negative when more, 0 where they cannot be compared. */
export function shareSaved(found: Sum, against: Sum): number {
  return canCompare(found, against) && against.bags > 0 ? 1 - found.bags / against.bags : 0;
}
