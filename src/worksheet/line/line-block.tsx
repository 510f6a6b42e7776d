import { lineSizeWords } from "../../../shared/words/line.ts";
import { chosenAlternative } from "../../document/chosen.ts";
import { chosenLine } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { RowBody } from "../row-body.tsx";

/** Where the levee runs, what it goes round and what it keeps away from. */
export function LineBlock() {
  const alternative = chosenAlternative.value;
  const lengthM = chosenLine.value?.totals.lengthM ?? null;
  return (
    <Disclosure
      id="line"
      title="Line"
      summary={
        alternative
          ? lineSizeWords(lengthM, alternative.corners.length, unitSystem.value)
          : "none drawn"
      }
    >
      <RowBody of="LineBody" />
    </Disclosure>
  );
}
