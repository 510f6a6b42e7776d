import { isFoundAtRest } from "../../../shared/checks.ts";
import type { Check } from "../../../shared/sizing-types.ts";
import { checkWords } from "../../../shared/words/checks.ts";
import { SeverityMark, severityWord } from "../../drawing/severity-mark.tsx";
import { chosenLine } from "../../live/results.ts";
import { markedM, pointedCheck, unitSystem } from "../../live/screen.ts";
import { buildOtherwise, proposedSection } from "../line/reach-wish.ts";

/** One finding: how grave, where, what, what to do, and by which rule. Pressed, it is shown on the map. */
export function CheckRow({ check }: { check: Check }) {
  const { where, what, remedy, rule, source } = checkWords(check, unitSystem.value);
  const { fromM, toM } = check;
  const proposed = proposedSection(check);
  const pointed = pointedCheck.value;
  const isPointed =
    pointed !== null &&
    pointed.fromM === check.fromM &&
    pointed.toM === check.toM &&
    pointed.at === check.at;
  return (
    <li
      class="check"
      data-check={check.id}
      data-severity={check.severity}
      data-at-rest={isFoundAtRest(check)}
    >
      <SeverityMark severity={check.severity} />
      <button
        type="button"
        class="check-face"
        aria-pressed={isPointed}
        onClick={() => point(isPointed ? null : check)}
      >
        <span class="check-what">
          {where && <strong>{where}: </strong>}
          {what}
        </span>
        <span>{remedy}</span>
        {isPointed && <span>Rule: {rule}</span>}
        <small>
          {severityWord(check.severity)} · {source}
        </small>
      </button>
      {proposed !== null && (
        <button
          type="button"
          class="text-button check-lead"
          onClick={() =>
            buildOtherwise(
              { fromM, toM, section: proposed },
              chosenLine.value?.totals.lengthM ?? toM,
              unitSystem.value,
            )
          }
        >
          Build this stretch otherwise
        </button>
      )}
    </li>
  );
}

function point(check: Check | null): void {
  pointedCheck.value = check && { fromM: check.fromM, toM: check.toM, at: check.at };
  if (check && (check.fromM !== 0 || check.toM !== 0)) {
    markedM.value = (check.fromM + check.toM) / 2;
  }
}
