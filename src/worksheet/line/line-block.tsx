import type { Alignment } from "../../../shared/plan.ts";
import { formatLength } from "../../../shared/units.ts";
import { chosenAlternative } from "../../document/chosen.ts";
import { chosenLine } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { RowBody } from "../row-body.tsx";

/** Where the levee runs, what it goes round and what it keeps away from. */
export function LineBlock() {
  const alternative = chosenAlternative.value;
  return (
    <Disclosure
      id="line"
      title="Line"
      summary={alternative ? <LineSummary alternative={alternative} /> : "none drawn"}
    >
      <RowBody of="LineBody" />
    </Disclosure>
  );
}

function LineSummary({ alternative }: { alternative: Alignment }) {
  const line = chosenLine.value;
  const length = line ? `${formatLength(line.totals.lengthM, unitSystem.value, 0)}, ` : "";
  return (
    <>
      {length}
      {alternative.corners.length} corners
    </>
  );
}
