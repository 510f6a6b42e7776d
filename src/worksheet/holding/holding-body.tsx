import { stabilityWords } from "../../../shared/words/holding.ts";
import { nextStepWords } from "../../../shared/words/next-steps.ts";
import { pumpsSummary } from "../../../shared/words/pumping.ts";
import { ground } from "../../live/ground.ts";
import { holdingNow } from "../../live/holding-now.ts";
import { chosenLine } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import { mustFixOnChosen } from "../../live/water-now.ts";
import { HoldingInside } from "./holding-inside.tsx";
import { HoldingPumps } from "./holding-pumps.tsx";
import { HoldingRaise } from "./holding-raise.tsx";
import { HoldingSeepage } from "./holding-seepage.tsx";
import { HoldingStanding } from "./holding-standing.tsx";

/** Stability, seepage, the water inside, its pumps and a later raise. */
export function HoldingBody() {
  const now = holdingNow.value;
  const system = unitSystem.value;
  if (!now) return <p class="hint">{nextStep()}</p>;
  return (
    <div class="holding" data-settled={now.isSettled} aria-busy={!now.isSettled}>
      <p class="holding-verdict">
        {stabilityWords(now.line, now.holding, system, mustFixOnChosen.value)}
      </p>
      <p class="hint holding-pumps">{pumpsSummary(now, system)}</p>
      <HoldingStanding now={now} />
      <HoldingSeepage now={now} />
      <HoldingInside now={now} />
      <HoldingPumps now={now} />
      <HoldingRaise now={now} />
    </div>
  );
}

function nextStep(): string {
  if (chosenLine.value) return nextStepWords("holding", "answer");
  return nextStepWords("holding", ground.value ? "line" : "ground");
}
