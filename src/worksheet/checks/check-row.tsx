import { useState } from "preact/hooks";
import { isFoundAtRest } from "../../../shared/checks.ts";
import type { Check } from "../../../shared/sizing-types.ts";
import { type CheckWords, checkBrief, checkWords } from "../../../shared/words/checks.ts";
import { SeverityMark, severityWord } from "../../drawing/severity-mark.tsx";
import { chosenLine } from "../../live/results.ts";
import { markedM, pointedCheck, unitSystem } from "../../live/screen.ts";
import { buildOtherwise, proposedSection } from "../line/stretch-draft.ts";

/** One finding in a line: how grave, where, what, one thing to do. Pressed, it is shown on the map and said in full. */
export function CheckRow({ check }: { check: Check }) {
  const words = checkWords(check, unitSystem.value);
  const brief = checkBrief(check, unitSystem.value);
  const pointed = pointedCheck.value;
  const isPointed =
    pointed !== null &&
    pointed.fromM === check.fromM &&
    pointed.toM === check.toM &&
    pointed.at === check.at;
  const [isOpen, setOpen] = useState(false);
  return (
    <li
      class="check"
      data-check={check.id}
      data-severity={check.severity}
      data-at-rest={isFoundAtRest(check)}
    >
      <button
        type="button"
        class="check-face"
        aria-expanded={isOpen}
        aria-pressed={isPointed}
        onClick={() => {
          point(isOpen ? null : check);
          setOpen(!isOpen);
        }}
      >
        <SeverityMark severity={check.severity} />
        <span class="check-what">
          {words.where && <strong>{words.where} </strong>}
          {brief?.what ?? words.what}
        </span>
        {brief && <span class="check-act">{brief.act}</span>}
      </button>
      {isOpen && <InFull check={check} words={words} />}
    </li>
  );
}

function InFull({ check, words }: { readonly check: Check; readonly words: CheckWords }) {
  const { fromM, toM } = check;
  const proposed = proposedSection(check);
  return (
    <div class="check-full">
      <p>{words.message}</p>
      <p>{words.remedy}</p>
      <p class="check-rule">
        {severityWord(check.severity)}. Rule: {words.rule} Source: {words.source}.
      </p>
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
    </div>
  );
}

function point(check: Check | null): void {
  pointedCheck.value = check && { fromM: check.fromM, toM: check.toM, at: check.at };
  if (check && (check.fromM !== 0 || check.toM !== 0)) {
    markedM.value = (check.fromM + check.toM) / 2;
  }
}
