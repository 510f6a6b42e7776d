import { letterOf } from "../../shared/line-letter.ts";
import type { Plan } from "../../shared/plan.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { LineWarning } from "./line-warning.tsx";
import { printedNow } from "./paper.ts";

interface SheetOfProps {
  readonly plan: Plan;
  readonly line: SizedLine;
  readonly system: UnitSystem;
}

/** What a sheet that is handed out alone is of: site, alternative, and when it was printed. */
export function SheetOf({ plan, line, system }: SheetOfProps) {
  const letter = letterOf(plan.alignments.findIndex(({ id }) => id === line.id));
  return (
    <>
      <p class="sheet-of">
        {plan.title}, alternative {letter}: {line.name}. {printedNow()}
      </p>
      <LineWarning line={line} system={system} />
    </>
  );
}
