import { holdingOf } from "../../../shared/defaults.ts";
import type { Pumping } from "../../../shared/holding/types.ts";
import { formatFlowRange, formatFlowUpTo } from "../../../shared/units.ts";
import { onePumpFails, onePumpFailsNote } from "../../../shared/words/pumping.ts";
import { pumpCountWords, pumpEachWords } from "../../../shared/words/pumps.ts";
import { plan } from "../../document/store.ts";
import type { HoldingNow } from "../../live/holding-now.ts";
import { unitSystem } from "../../live/screen.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { PumpInputs } from "./holding-inputs.tsx";
import { HoldingFigure, Row } from "./holding-parts.tsx";

/** What is to be pumped, with what, and what happens when a pump fails. */
export function HoldingPumps({ now }: { readonly now: HoldingNow }) {
  const { pumping } = now.holding;
  const { demandM3PerS, capacityM3PerS, proposed, options } = pumping;
  const system = unitSystem.value;
  const { pumpMargin } = holdingOf(plan.value);
  return (
    <section aria-label="Pumps">
      <h3>Pumps</h3>
      <dl class="amounts">
        <Row name="To be pumped" note="Leaks at joints and closures come on top.">
          <HoldingFigure make="demandM3PerS" title="To be pumped" holding={now.holding}>
            {formatFlowRange(demandM3PerS, system)}
          </HoldingFigure>
        </Row>
        <Row name={`Pumps for ${pumpMargin} times the most`}>
          <HoldingFigure make="capacityM3PerS" title="Pumps for" holding={now.holding}>
            {formatFlowUpTo(capacityM3PerS, system)}
          </HoldingFigure>
        </Row>
        {proposed && (
          <Row name="Proposed" note={pumpEachWords(proposed, system)}>
            <strong>{pumpCountWords(proposed)}</strong>
          </Row>
        )}
        {pumping.oneFails && (
          <Row name="When one fails" note={onePumpFailsNote(now.holding.pumping)}>
            <HoldingFigure make="oneFails" title="When one pump fails" holding={now.holding}>
              {onePumpFails(pumping.oneFails, unitSystem.value)}
            </HoldingFigure>
          </Row>
        )}
      </dl>
      {options.length > 0 && <Others pumping={pumping} />}
      <p class="hint">
        On site with fuel, hose and power of their own before the water comes; electric ones on
        protected circuits, out of the wet (LSU, NDSU-11). Output falls with head and hose: ask the
        maker.
      </p>
      <Disclosure
        id="holding-pumps"
        level="part"
        title="Margin and spares"
        summary={`${pumpMargin} times`}
      >
        <PumpInputs />
      </Disclosure>
    </section>
  );
}

function Others({ pumping }: { readonly pumping: Pumping }) {
  const system = unitSystem.value;
  return (
    <details class="tables-note">
      <summary>Other pumps that would carry it</summary>
      <ul>
        {pumping.options
          .filter((option) => option !== pumping.proposed)
          .map((option) => (
            <li key={option.kind}>
              <strong>{pumpCountWords(option)}</strong>, {pumpEachWords(option, system)}
            </li>
          ))}
      </ul>
    </details>
  );
}
