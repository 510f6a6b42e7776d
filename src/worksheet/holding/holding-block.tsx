import { pumpsSummary } from "../../../shared/words/pumping.ts";
import "./holding.css";
import { holdingOf } from "../../../shared/defaults.ts";
import { stabilityShort, stabilityWords } from "../../../shared/words/holding.ts";
import { plan } from "../../document/store.ts";
import { ground } from "../../live/ground.ts";
import { holdingNow } from "../../live/holding-now.ts";
import { chosenLine } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import { mustFixOnChosen } from "../../live/water-now.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { HoldingInside } from "./holding-inside.tsx";
import { HoldingPumps } from "./holding-pumps.tsx";
import { HoldingRaise } from "./holding-raise.tsx";
import { HoldingSeepage } from "./holding-seepage.tsx";
import { HoldingStanding } from "./holding-standing.tsx";

/** What stability calculates at, what seeps through and what is to be pumped. */
export function HoldingBlock() {
  const now = holdingNow.value;
  const system = unitSystem.value;
  return (
    <Disclosure
      id="holding"
      title="Stability, seepage, pumps"
      summary={
        now ? stabilityShort(now.line, now.holding, holdingOf(plan.value).soil) : "needs a line"
      }
    >
      {now ? (
        <div class="holding" data-settled={now.isSettled} aria-busy={!now.isSettled}>
          <p class="holding-verdict">
            {stabilityWords(now.line, now.holding, system, mustFixOnChosen.value)}
          </p>
          <p class="hint holding-pumps">{pumpsSummary(now, unitSystem.value)}</p>
          <HoldingStanding now={now} />
          <HoldingSeepage now={now} />
          <HoldingInside now={now} />
          <HoldingPumps now={now} />
          <HoldingRaise now={now} />
        </div>
      ) : (
        <p class="hint">{nextStep()}</p>
      )}
    </Disclosure>
  );
}

function nextStep(): string {
  if (chosenLine.value) return "Calculating…";
  if (!ground.value) return "Open the elevation data first; the heights come from it.";
  return "Draw a ring or a line to calculate stability, seepage and pumps.";
}
