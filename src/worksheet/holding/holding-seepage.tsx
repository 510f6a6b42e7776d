import { holdingOf } from "../../../shared/defaults.ts";
import type { Creep, ExitGradient } from "../../../shared/holding/types.ts";
import { formatFlowRange, formatUnitFlowRange } from "../../../shared/units.ts";
import { leftOutOfHolding, seenWords } from "../../../shared/words/holding.ts";
import { SOIL_NAMES } from "../../../shared/words/soils.ts";
import { plan } from "../../document/store.ts";
import type { HoldingNow } from "../../live/holding-now.ts";
import { unitSystem } from "../../live/screen.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { StationButton } from "../station-button.tsx";
import { SeepageInputs } from "./holding-inputs.tsx";
import { HoldingFigure, Row } from "./holding-parts.tsx";

/** What comes through and under the levee, and what the ground behind it does. */
export function HoldingSeepage({ now }: { readonly now: HoldingNow }) {
  const { seepage, exit, creep } = now.holding;
  const system = unitSystem.value;
  const { sheetLaid, soil, underDepthM } = holdingOf(plan.value);
  const flows = (range: { low: number; high: number }) => formatFlowRange(range, system);
  return (
    <section aria-label="Seepage">
      <h3>Seepage</h3>
      <dl class="amounts">
        <Row name="Through bags alone">
          <HoldingFigure
            make="throughM3PerS"
            title="Through, without poly sheeting"
            holding={now.holding}
          >
            {flows(seepage.throughBareM3PerS)}
          </HoldingFigure>
        </Row>
        <Row name="Through, with poly sheeting">
          <HoldingFigure
            make="throughM3PerS"
            title="Through, with poly sheeting"
            holding={now.holding}
          >
            {flows(seepage.throughSheetM3PerS)}
          </HoldingFigure>
        </Row>
        <Row
          name="Under"
          note={underDepthM > 0 ? null : "Enter the depth of pervious soil below to count it."}
        >
          <HoldingFigure make="underM3PerS" title="Under the levee" holding={now.holding}>
            {underDepthM > 0 ? flows(seepage.underM3PerS) : "not counted"}
          </HoldingFigure>
        </Row>
        <Row
          name={sheetLaid ? "Together, poly sheeting laid" : "Together, no poly sheeting"}
          note={
            seepage.worstM !== null && (
              <>
                most at <StationButton chainageM={seepage.worstM} />,{" "}
                {formatUnitFlowRange(seepage.worstM2PerS, system)}
              </>
            )
          }
        >
          <HoldingFigure make="totalM3PerS" title="Seepage" holding={now.holding}>
            {flows(seepage.totalM3PerS)}
          </HoldingFigure>
        </Row>
        {exit && <Exit now={now} exit={exit} />}
        {creep && <CreepRows now={now} creep={creep} />}
      </dl>
      {seepage.lengthNoDataM > 0 && (
        <p class="field-why">{leftOutOfHolding("no-data", seepage.lengthNoDataM, system)}</p>
      )}
      <p class="hint">
        A boil: clear water, report and watch it; carrying soil, ring it with bags and raise the
        ring until it runs clear. Never plug or cap it (DWR-03, LOM).
      </p>
      <Disclosure
        id="holding-seepage"
        level="part"
        title="Soil, poly sheeting, fill"
        summary={`ground ${SOIL_NAMES[soil]}`}
      >
        <SeepageInputs />
      </Disclosure>
    </section>
  );
}

function Exit({ now, exit }: { readonly now: HoldingNow; readonly exit: ExitGradient }) {
  const { low, high } = exit.gradient;
  const gradient = (value: number) => value.toFixed(1);
  const [from, to] = [low.toFixed(2), high.toFixed(2)];
  return (
    <Row
      name="Gradient at the landside toe"
      note={
        <>
          at <StationButton chainageM={exit.atM} />; on sand, such gradients went with{" "}
          {seenWords(exit.classes)} (NIX-11); sand floats at {gradient(exit.critical.low)} to{" "}
          {gradient(exit.critical.high)}
        </>
      }
    >
      <HoldingFigure make="exitGradient" title="Exit gradient" holding={now.holding}>
        {from === to ? to : `${from} to ${to}`}
      </HoldingFigure>
    </Row>
  );
}

function CreepRows({ now, creep }: { readonly now: HoldingNow; readonly creep: Creep }) {
  const ways = [
    { name: "Lane", value: creep.lane, required: creep.laneRequired },
    { name: "Bligh", value: creep.bligh, required: creep.blighRequired },
  ];
  const place = (
    <>
      least at <StationButton chainageM={creep.atM} />
      {creep.soil === "unknown" && "; choose the soil to see what is required"}
    </>
  );
  return (
    <>
      {ways.map(({ name, value, required }) => (
        <Row key={name} name={`Creep, ${name}`} note={name === "Bligh" ? place : null}>
          <HoldingFigure make="creep" title={`Creep ratio, ${name}`} holding={now.holding}>
            {value.toFixed(1)}
          </HoldingFigure>
          {required !== null && (
            <span class="holding-required" data-short={value < required}>
              {" "}
              of {required} required
            </span>
          )}
        </Row>
      ))}
    </>
  );
}
