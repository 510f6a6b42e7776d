import type { Totals } from "../../shared/sizing-types.ts";
import { formatCount, formatHours, formatLength, type UnitSystem } from "../../shared/units.ts";

/** One line of the comparison of what was found with what was chosen before. */
export interface SavingRow {
  readonly name: string;
  /** What the found line has. */
  readonly amount: string;
  /** Against the other: "4,283 fewer", "the same". */
  readonly difference: string;
}

type Sum = Pick<
  Totals,
  "bags" | "builtLengthM" | "jobHours" | "greatestHeightM" | "lengthOverLimitM"
>;

/** What several lines take together. */
export function sumOf(totals: readonly Sum[]): Sum {
  const sum = (pick: (each: Sum) => number) => totals.reduce((all, each) => all + pick(each), 0);
  return {
    bags: sum((each) => each.bags),
    builtLengthM: sum((each) => each.builtLengthM),
    jobHours: sum((each) => each.jobHours),
    lengthOverLimitM: sum((each) => each.lengthOverLimitM),
    greatestHeightM: Math.max(...totals.map((each) => each.greatestHeightM)),
  };
}

/** What was found beside what was chosen before; without that, its own figures alone. */
export function savingRows(found: Sum, against: Sum | null, system: UnitSystem): SavingRow[] {
  const row = (
    name: string,
    pick: (each: Sum) => number,
    write: (value: number) => string,
    [less, more]: readonly [string, string],
  ): SavingRow => {
    const amount = write(pick(found));
    if (!against) return { name, amount, difference: "" };
    const by = pick(found) - pick(against);
    const size = write(Math.abs(by));
    if (size === write(0)) return { name, amount, difference: "the same" };
    return { name, amount, difference: `${size} ${by < 0 ? less : more}` };
  };
  const length = (m: number) => formatLength(m, system, 0);
  const height = (m: number) => formatLength(m, system);
  const rows = [
    row("Bags", (each) => each.bags, formatCount, ["fewer", "more"]),
    row("To build", (each) => each.builtLengthM, length, ["shorter", "longer"]),
    ...(Number.isNaN(found.jobHours)
      ? []
      : [row("Hours", (each: Sum) => each.jobHours, formatHours, ["less", "more"])]),
    row("Greatest height", (each) => each.greatestHeightM, height, ["lower", "higher"]),
  ];
  const over = row("Over the limit", (each) => each.lengthOverLimitM, length, ["less", "more"]);
  const isOver = found.lengthOverLimitM + (against?.lengthOverLimitM ?? 0) > 0;
  return isOver ? [...rows, over] : rows;
}

/** "24 %" fewer bags than another; negative when more. */
export function shareSaved(found: Sum, against: Sum): number {
  return against.bags > 0 ? 1 - found.bags / against.bags : 0;
}
