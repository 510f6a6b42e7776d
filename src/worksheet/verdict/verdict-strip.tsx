import "./verdict.css";
import { useRef } from "preact/hooks";
import { letterOf } from "../../../shared/line-letter.ts";
import type { Cure, OverallVerdict } from "../../../shared/verdict.ts";
import { lesserWords } from "../../../shared/words/check-list.ts";
import { mustFixWords } from "../../../shared/words/must-fix.ts";
import {
  cureWords,
  headlineWords,
  NO_CURE,
  noneFoundWords,
} from "../../../shared/words/verdict.ts";
import { chosenId } from "../../document/chosen.ts";
import { plan } from "../../document/store.ts";
import { SeverityMark } from "../../drawing/severity-mark.tsx";
import { chooseAlternative } from "../../live/actions.ts";
import { sizedIsWhole } from "../../live/current.ts";
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
  const found = useFound();
  return (
    <section class="verdict" aria-label="Verdict" data-short={isShort}>
      {isCounted && found ? <Found {...found} /> : <NothingSized />}
      <LeaveLine />
      <p class="not-a-permit">
        Not a permit.<span> Local codes and licensed engineers decide.</span>
      </p>
    </section>
  );
}

interface WhatIsFound {
  readonly verdict: OverallVerdict;
  readonly cure: Cure | null;
  /** `6 cautions, 5 notes`; empty where there is none. */
  readonly more: string;
}

/**
 * What is found on the chosen line; null before it is sized. While a change is counted it stays what it was, out of
 * sight (stale.css): so that nothing moves under the hand that drags the stage.
 */
function useFound(): WhatIsFound | null {
  const last = useRef<{ readonly of: string | null; readonly found: WhatIsFound } | null>(null);
  const of = chosenId.value;
  const verdict = chosenVerdict.value;
  if (!verdict) return null;
  if (sizedIsWhole.value || last.current?.of !== of) {
    const found = { verdict, cure: cureNow.value, more: lesserWords(chosenChecks.value) };
    last.current = { of, found };
  }
  return last.current.found;
}

function Found(found: WhatIsFound) {
  const { verdict, more } = found;
  const words = headlineWords(verdict.first, unitSystem.value) ?? noneFoundWords(verdict);
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
        <Cured {...found} />
      </div>
    </>
  );
}

/** Another line without a Must fix; that none is known, where others were drawn. */
function Cured({ verdict, cure }: WhatIsFound) {
  const { alignments } = plan.value;
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
