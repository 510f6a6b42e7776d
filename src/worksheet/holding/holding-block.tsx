import "./holding.css";
import { A_STRETCH_M, isCounted } from "../../../shared/completeness.ts";
import { holdingOf } from "../../../shared/defaults.ts";
import { formatLength } from "../../../shared/units.ts";
import { spanWords, stabilityShort, stabilityWords } from "../../../shared/words/holding.ts";
import { pumpCountWords } from "../../../shared/words/pumps.ts";
import { plan } from "../../document/store.ts";
import { ground } from "../../live/ground.ts";
import { type HoldingNow, holdingNow } from "../../live/holding-now.ts";
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
          <p class="hint holding-pumps">{pumpsWords(now)}</p>
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

function pumpsWords({ line, holding }: HoldingNow): string | undefined {
  const { proposed, hoursToStructure } = holding.pumping;
  if (!proposed || !isCounted(line)) return undefined;
  const { soonest } = hoursToStructure;
  const without =
    soonest === null ? "" : `; without pumps, water at a building in ${spanWords(soonest)}`;
  const overM = line.totals.lengthOverLimitM;
  const over =
    overM > A_STRETCH_M
      ? `. ${formatLength(overM, unitSystem.value, 0)} over the height limit: see All checks`
      : "";
  return `Pumps: ${pumpCountWords(proposed)}${without}${over}`;
}

function nextStep(): string {
  if (chosenLine.value) return "Calculating…";
  if (!ground.value) return "Open the elevation data first; the heights come from it.";
  return "Draw a ring or a line to calculate stability, seepage and pumps.";
}
