import { A_STRETCH_M } from "../../../shared/completeness.ts";
import { holdingOf } from "../../../shared/defaults.ts";
import { lengthBracedM } from "../../../shared/holding/bracing.ts";
import { factorWords } from "../../../shared/holding/factor-words.ts";
import type { Verdict, Weakest } from "../../../shared/holding/types.ts";
import type { Severity } from "../../../shared/sizing-types.ts";
import { formatLength } from "../../../shared/units.ts";
import { leftOutOfHolding, verdictWord } from "../../../shared/words/holding.ts";
import { plan } from "../../document/store.ts";
import { SeverityMark } from "../../drawing/severity-mark.tsx";
import type { HoldingNow } from "../../live/holding-now.ts";
import { unitSystem } from "../../live/screen.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { StationButton } from "../station-button.tsx";
import { StandingInputs } from "./holding-inputs.tsx";
import { HoldingFigure, Row } from "./holding-parts.tsx";

const SEVERITIES: Readonly<Record<Verdict, Severity | null>> = {
  "meets-required": null,
  doubtful: "caution",
  "below-required": "stop",
};

/** Whether the water can push the levee away or turn it over, where the line is weakest. */
export function HoldingStanding({ now }: { readonly now: HoldingNow }) {
  const { holding } = now;
  const system = unitSystem.value;
  const bracedM = lengthBracedM(now.line);
  const overM = now.line.totals.lengthOverLimitM;
  const { frictionLow, frictionHigh, uplift } = holdingOf(plan.value);
  return (
    <section aria-label="Stability">
      <h3>Stability</h3>
      {holding.standing ? (
        <dl class="amounts">
          <Against now={now} way="sliding" weakest={holding.standing.sliding} />
          <Against now={now} way="overturning" weakest={holding.standing.overturning} />
        </dl>
      ) : (
        <p class="hint">{nothingWords(bracedM)}</p>
      )}
      {holding.standing && bracedM > 0 && (
        <p class="field-why">{leftOutOfHolding("bracing", bracedM, system)}</p>
      )}
      {overM > A_STRETCH_M && (
        <p class="field-why">{leftOutOfHolding("over-limit", overM, system)}</p>
      )}
      <p class="hint">
        Statics of the levee alone, at the friction assumed; scour, a wet foundation and poor laying
        are not in it. Local codes and licensed engineers decide.
      </p>
      <Disclosure
        id="holding-standing"
        level="part"
        title="Friction, weight, uplift"
        summary={`${frictionLow} to ${frictionHigh}, ${uplift}`}
      >
        <StandingInputs />
      </Disclosure>
    </section>
  );
}

function nothingWords(bracedM: number): string {
  return bracedM > 0
    ? "Held by bracing, which is not calculated: have an engineer check it."
    : "No water against it at this level, where there is elevation data.";
}

interface AgainstProps {
  readonly now: HoldingNow;
  readonly way: "sliding" | "overturning";
  readonly weakest: Weakest;
}

function Against({ now, way, weakest }: AgainstProps) {
  const { verdict, factor, required, chainageM, waterDepthM, lengthShortM } = weakest;
  const system = unitSystem.value;
  const severity = SEVERITIES[verdict];
  const short = lengthShortM > 0 ? `; short on ${formatLength(lengthShortM, system, 0)}` : "";
  return (
    <Row
      name={
        <>
          Against {way} {severity && <SeverityMark severity={severity} />}
        </>
      }
      note={
        <>
          {verdictWord(verdict)}; least at <StationButton chainageM={chainageM} />, in{" "}
          {formatLength(waterDepthM, system)} of water{short}
        </>
      }
    >
      <HoldingFigure make={way} title={`Factor against ${way}`} holding={now.holding}>
        {factorWords(factor)}
      </HoldingFigure>{" "}
      <span class="holding-required">of {required} required</span>
    </Row>
  );
}
