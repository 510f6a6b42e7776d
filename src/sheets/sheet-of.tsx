import type { Plan } from "../../shared/plan.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { letterOf } from "../worksheet/alternative-edits.ts";
import { printedNow } from "./paper.ts";

interface SheetOfProps {
  readonly plan: Plan;
  readonly line: SizedLine;
}

/** What a sheet that is handed out alone is of: site, alternative, and when it was printed. */
export function SheetOf({ plan, line }: SheetOfProps) {
  const letter = letterOf(plan.alignments.findIndex(({ id }) => id === line.id));
  return (
    <p class="sheet-of">
      {plan.title}, alternative {letter}: {line.name}. {printedNow()}
    </p>
  );
}
