import "./holding.css";
import { isCounted } from "../../../shared/completeness.ts";
import { formatLength } from "../../../shared/units.ts";
import { spanWords, standsWords } from "../../../shared/words/holding.ts";
import { pumpCountWords } from "../../../shared/words/pumps.ts";
import { ground } from "../../live/ground.ts";
import { type HoldingNow, holdingNow } from "../../live/holding-now.ts";
import { chosenLine } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { HoldingInside } from "./holding-inside.tsx";
import { HoldingPumps } from "./holding-pumps.tsx";
import { HoldingRaise } from "./holding-raise.tsx";
import { HoldingSeepage } from "./holding-seepage.tsx";
import { HoldingStanding } from "./holding-standing.tsx";

/** Shorter than this is a rounding, metres. */
const A_STRETCH_M = 0.05;

/** Whether the line stands, what seeps through it and what is to be pumped. */
export function HoldingBlock() {
  const now = holdingNow.value;
  const system = unitSystem.value;
  return (
    <Disclosure
      id="holding"
      title="Holding"
      summary={now ? standsWords(now.line, now.holding, system) : undefined}
      line={now ? closedLine(now) : undefined}
    >
      {now ? (
        <div class="holding" data-settled={now.isSettled} aria-busy={!now.isSettled}>
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

function closedLine({ line, holding }: HoldingNow): string | undefined {
  const { proposed, hoursToStructure } = holding.pumping;
  if (!proposed || !isCounted(line)) return undefined;
  const { soonest } = hoursToStructure;
  const without = soonest === null ? "" : `; without, a building wet in ${spanWords(soonest)}`;
  const overM = line.totals.lengthOverLimitM;
  const over =
    overM > A_STRETCH_M
      ? `. ${formatLength(overM, unitSystem.value, 0)} over the height limit: see Checks`
      : "";
  return `Pumps: ${pumpCountWords(proposed)}${without}${over}`;
}

function nextStep(): string {
  if (chosenLine.value) return "Working it out…";
  if (!ground.value) return "Open the ground first; the heights come from it.";
  return "Draw a ring or a line, and whether it holds stands here.";
}
