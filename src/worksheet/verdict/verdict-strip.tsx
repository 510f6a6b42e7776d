import "./verdict.css";
import { letterOf } from "../../../shared/line-letter.ts";
import type { OverallVerdict } from "../../../shared/verdict.ts";
import { lesserWords } from "../../../shared/words/check-list.ts";
import { mustFixWords } from "../../../shared/words/must-fix.ts";
import {
  cureWords,
  headlineWords,
  NO_CURE,
  noneFoundWords,
} from "../../../shared/words/verdict.ts";
import { plan } from "../../document/store.ts";
import { SeverityMark } from "../../drawing/severity-mark.tsx";
import { chooseAlternative } from "../../live/actions.ts";
import { sizingFailure } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import { uncounted } from "../../live/uncounted.ts";
import { chosenVerdict, cureNow } from "../../live/verdict-now.ts";
import { chosenChecks } from "../../live/water-now.ts";
import { openDisclosure } from "../../ui/disclosure.tsx";
import { LeaveLine } from "./leave-line.tsx";
import { NothingSized } from "./nothing-sized.tsx";

/** The answer first: what to fix, what to do, which other line cures it, and what the program is not. */
export function VerdictStrip({ isShort }: { readonly isShort: boolean }) {
  const isCounted = !uncounted.value && !sizingFailure.value;
  const verdict = isCounted ? chosenVerdict.value : null;
  return (
    <section class="verdict" aria-label="Verdict" data-short={isShort}>
      {verdict ? <Found verdict={verdict} /> : <NothingSized />}
      <LeaveLine />
      <p class="not-a-permit">
        Not a permit.<span> Local codes and licensed engineers decide.</span>
      </p>
    </section>
  );
}

function Found({ verdict }: { readonly verdict: OverallVerdict }) {
  const words = headlineWords(verdict.first, unitSystem.value) ?? noneFoundWords(verdict);
  const more = lesserWords(chosenChecks.value);
  return (
    <>
      <div class="verdict-level">
        {verdict.first && <SeverityMark severity={verdict.first.severity} />}
        <strong data-severity={verdict.first?.severity ?? "none"}>
          {verdict.mustFix > 1 ? mustFixWords(verdict.mustFix) : words.severity}
        </strong>
        <button type="button" class="verdict-more" onClick={() => openDisclosure("checks")}>
          {more || "All checks"}
        </button>
      </div>
      <div class="verdict-words">
        <p class="verdict-headline">{words.headline}</p>
        <p class="verdict-remedy">{words.remedy}</p>
        <Cured verdict={verdict} />
      </div>
    </>
  );
}

/** Another line without a Must fix; that none is known, where others were drawn. */
function Cured({ verdict }: { readonly verdict: OverallVerdict }) {
  const { alignments } = plan.value;
  const cure = cureNow.value;
  if (cure) {
    const letter = letterOf(alignments.findIndex(({ id }) => id === cure.id));
    return (
      <p class="verdict-remedy">
        <button type="button" class="verdict-cure" onClick={() => chooseAlternative(cure.id)}>
          <strong>Line {letter}</strong>: {cureWords(cure, verdict, unitSystem.value)}
        </button>
      </p>
    );
  }
  if (verdict.mustFix === 0 || alignments.length < 2) return null;
  return <p class="verdict-remedy">{NO_CURE}</p>;
}
