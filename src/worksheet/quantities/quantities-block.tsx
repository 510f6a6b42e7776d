import "./quantities.css";
import { bagOrder } from "../../../shared/bag-order.ts";
import { isCounted } from "../../../shared/completeness.ts";
import type { SizedLine } from "../../../shared/sizing-types.ts";
import { formatCount } from "../../../shared/units.ts";
import { besideBagsWords } from "../../../shared/words/counted.ts";
import { failureWords } from "../../../shared/words/failure.ts";
import { nineInTenWords } from "../../../shared/words/ground-chances.ts";
import { nextStepWords, uncountedWords } from "../../../shared/words/next-steps.ts";
import { plan } from "../../document/store.ts";
import { LevelNotice } from "../../drawing/level-notice.tsx";
import { ground } from "../../live/ground.ts";
import { unitSystem } from "../../live/screen.ts";
import { simulatedLine } from "../../live/simulated.ts";
import { uncounted } from "../../live/uncounted.ts";
import { MoreButton, useMore } from "../../ui/more-button.tsx";
import { Pane } from "../pane.tsx";
import { RowBody } from "../row-body.tsx";
import { Amount } from "./amount.tsx";
import { Takes } from "./takes.tsx";

/** What it takes: one large number, the bags, what else is ordered in four lines, and the rest behind a word. */
export function QuantitiesBlock() {
  const line = simulatedLine.value;
  const more = useMore("all-figures");
  if (!line) {
    return (
      <Pane id="quantities" title="Quantities">
        <p class="hint">{nextStep()}</p>
      </Pane>
    );
  }
  return (
    <Pane
      id="quantities"
      title="Quantities"
      note={isCounted(line) && <MoreButton {...more}>All figures</MoreButton>}
    >
      <Counted line={line} />
      {isCounted(line) && (
        <div id={more.bodyId} class="all-figures" hidden={!more.open}>
          {more.open && <RowBody of="AllFigures" />}
        </div>
      )}
    </Pane>
  );
}

function Counted({ line }: { line: SizedLine }) {
  const system = unitSystem.value;
  const inputs = { plan: plan.value, line, totals: line.totals, system };
  const range = nineInTenWords(line);
  return (
    <>
      <LevelNotice doubt={line.levelDoubt} system={system} />
      <div class="bags">
        <Amount make="bags" title="Bags in the levee, spares included" inputs={inputs}>
          {isCounted(line) ? formatCount(line.totals.bags) : "–"}
        </Amount>
        <span class="bags-words">{besideBagsWords(line.totals, system)}</span>
        {isCounted(line) && (
          <span class="bags-order">
            order{" "}
            <Amount make="bagOrder" title="Bags to order" inputs={inputs}>
              {formatCount(bagOrder(line.totals).total)}
            </Amount>
          </span>
        )}
      </div>
      {range && <p class="bags-range">{range}</p>}
      {isCounted(line) && <Takes line={line} />}
    </>
  );
}

function nextStep(): string {
  if (!ground.value) return nextStepWords("quantities", "ground");
  if (uncounted.value) {
    return uncountedWords("quantities", failureWords(uncounted.value, unitSystem.value).message);
  }
  return nextStepWords("quantities", "line");
}
