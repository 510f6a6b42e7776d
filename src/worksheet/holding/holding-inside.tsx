import { holdingOf, timeOf } from "../../../shared/defaults.ts";
import type { Inside } from "../../../shared/holding/types.ts";
import { formatSetting } from "../../../shared/setting-text.ts";
import { SETTINGS } from "../../../shared/settings.ts";
import { formatArea, formatElevation, formatFlowRange } from "../../../shared/units.ts";
import { holesInsideWords, insideCapWords } from "../../../shared/words/inside.ts";
import { wetInNote, wetInWords } from "../../../shared/words/pumping.ts";
import { plan } from "../../document/store.ts";
import type { HoldingNow } from "../../live/holding-now.ts";
import { pointedCheck, unitSystem } from "../../live/screen.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { RainInputs } from "./holding-inputs.tsx";
import { HoldingLevel } from "./holding-level.tsx";
import { HoldingFigure, Row } from "./holding-parts.tsx";

const HOLES_WORTH_TELLING = 0.01;

/** Water inside: rain, the sump, and how long until a structure is wet when nothing is pumped. */
export function HoldingInside({ now }: { readonly now: HoldingNow }) {
  const { inside, pumping } = now.holding;
  const system = unitSystem.value;
  const { rainMPerS } = holdingOf(plan.value);
  const rain = formatSetting(SETTINGS["holding.rainMPerS"].kind, rainMPerS, system);
  return (
    <section aria-label="Inside">
      <h3>Inside</h3>
      <dl class="amounts">
        <Row
          name={`Rain of ${rain}`}
          note={pumping.rainM3PerS ? null : "The area that drains to a line is not known."}
        >
          <HoldingFigure make="rainM3PerS" title="Rain inside" holding={now.holding}>
            {pumping.rainM3PerS ? formatFlowRange(pumping.rainM3PerS, system) : "not counted"}
          </HoldingFigure>
        </Row>
        {inside && <Ground now={now} inside={inside} />}
      </dl>
      {!inside && now.line.kind === "ring" && (
        <p class="hint">No elevation data inside: find the lowest place on site.</p>
      )}
      <HoldingLevel now={now} />
      {inside && <p class="hint">{insideCapWords(timeOf(plan.value).forecast !== null)}</p>}
      <p class="hint">
        A ring does not keep groundwater out of a basement. Do not pump a basement out early: its
        floor and walls can give way (BASE-N, BASE-F).
      </p>
      <Disclosure id="holding-rain" level="part" title="Rain and runoff" summary={rain}>
        <RainInputs />
      </Disclosure>
    </section>
  );
}

function Ground({ now, inside }: { readonly now: HoldingNow; readonly inside: Inside }) {
  const system = unitSystem.value;
  const { lowestAt, lowestM, areaM2, holeShare, structureBy } = inside;
  const isPointed = pointedCheck.value?.at === lowestAt;
  const point = () => {
    pointedCheck.value = isPointed ? null : { fromM: 0, toM: 0, at: lowestAt };
  };
  return (
    <>
      <Row
        name="Ground inside the toes"
        note={holeShare >= HOLES_WORTH_TELLING && holesInsideWords(holeShare)}
      >
        <HoldingFigure make="insideM" title="Ground inside" holding={now.holding}>
          {formatArea(areaM2, system)}
        </HoldingFigure>
      </Row>
      <Row name="Lowest place, the sump">
        <HoldingFigure make="insideM" title="Lowest place inside" holding={now.holding}>
          {formatElevation(lowestM, system)}
        </HoldingFigure>{" "}
        <button type="button" class="station-button" aria-pressed={isPointed} onClick={point}>
          on the map
        </button>
      </Row>
      <Row name="Without pumps, wet in" note={wetInNote(structureBy)}>
        <HoldingFigure make="hoursToStructure" title="Hours without pumps" holding={now.holding}>
          {wetInWords(now.holding)}
        </HoldingFigure>
      </Row>
    </>
  );
}
