import type { ComponentChildren } from "preact";
import type { BuildStep, CrewPart, HoldStretch, LineTime } from "../../../shared/time/types.ts";
import { formatCount } from "../../../shared/units.ts";
import {
  doneWords,
  earlyWords,
  holdWords,
  isLateStep,
  movingWords,
  neededWords,
  onHoldWords,
  type SequenceSaid,
} from "../../../shared/words/build-sequence.ts";
import { CLOSURE_HEADS, closureRows } from "../../../shared/words/closure-rows.ts";
import {
  crewName,
  layToWords,
  ON_HOLD,
  stationsWords,
  stepName,
} from "../../../shared/words/crew-parts.ts";
import { plan } from "../../document/store.ts";
import { chosenLine } from "../../live/results.ts";
import { markedM, unitSystem } from "../../live/screen.ts";
import { Disclosure } from "../../ui/disclosure.tsx";

/** Which crew lays which step when; a press marks the stretch on map and profile. */
export function OrderPart({ time }: { readonly time: LineTime }) {
  const said = { plan: plan.value, time, system: unitSystem.value };
  const steps = time.parts.reduce((sum, part) => sum + part.steps.length, 0);
  if (time.parts.length === 0) return null;
  return (
    <Disclosure
      id="time-order"
      title="Build sequence"
      level="part"
      summary={steps === 1 ? "1 step" : `${steps} steps`}
    >
      <p class="hint">
        Each crew has one part of the line, and its steps in the order in which the water needs
        them. {movingWords(said.system)} {onHoldWords(time)}
      </p>
      {time.parts.map((part) => (
        <section key={part.crew} aria-label={crewName(part)}>
          <h4 class="time-crew">
            {crewName(part)}{" "}
            <span>
              {stationsWords(part, said.system)}, {formatCount(part.bags)} bags
            </span>
          </h4>
          <ol class="time-order">
            {part.holds.map((hold) => (
              <li key={hold.fromM}>
                <Hold hold={hold} said={said} />
              </li>
            ))}
            {part.steps.map((step) => (
              <li key={step.number}>
                <Step part={part} step={step} said={said} />
              </li>
            ))}
          </ol>
        </section>
      ))}
      {time.closures.length > 0 && <WaysLeftOpen said={said} />}
    </Disclosure>
  );
}

function WaysLeftOpen({ said }: { readonly said: SequenceSaid }) {
  return (
    <section aria-label={CLOSURE_HEADS.title}>
      <h4 class="time-crew">{CLOSURE_HEADS.title}</h4>
      <ol class="time-order">
        {closureRows(said).map((row, index) => (
          <li key={row.name}>
            <StretchButton of={said.time.closures[index]!}>
              <span class="time-order-place">{row.name}</span>
              <span class="time-order-what">
                <strong>{row.stations}</strong>, {row.bags} bags, people: {row.people}
              </span>
              <span class="time-order-when">
                close from {row.closeFrom}, takes {row.takes}, needed by {row.neededBy}
              </span>
              <span class="time-order-wet" data-late={row.isLate}>
                {row.state}
              </span>
            </StretchButton>
          </li>
        ))}
      </ol>
    </section>
  );
}

interface StepProps {
  readonly part: CrewPart;
  readonly step: BuildStep;
  readonly said: SequenceSaid;
}

function Step({ part, step, said }: StepProps) {
  const isLate = isLateStep(step);
  return (
    <StretchButton of={step}>
      <span class="time-order-place">{stepName(part, step.number)}</span>
      <span class="time-order-what">
        <strong>{stationsWords(step, said.system)}</strong>, {layToWords(step, said.system)},{" "}
        {formatCount(step.bags)} bags
      </span>
      <span class="time-order-when">
        done {doneWords(step.finishSlowH, said)}, needed by {neededWords(step, said)}
      </span>
      {step.earlyH !== null && (
        <span class="time-order-wet" data-late={isLate}>
          {earlyWords(step, said.time)}
        </span>
      )}
    </StretchButton>
  );
}

function Hold({ hold, said }: { readonly hold: HoldStretch; readonly said: SequenceSaid }) {
  return (
    <StretchButton of={hold}>
      <span class="time-order-place time-order-hold">{ON_HOLD}</span>
      <span class="time-order-what">
        <strong>{stationsWords(hold, said.system)}</strong>, {formatCount(hold.bags)} bags
      </span>
      <span class="time-order-wet" data-late={true}>
        {holdWords(hold, said)}
      </span>
    </StretchButton>
  );
}

interface StretchButtonProps {
  readonly of: { readonly fromM: number; readonly toM: number };
  readonly children: ComponentChildren;
}

function StretchButton({ of: { fromM, toM }, children }: StretchButtonProps) {
  const lengthM = chosenLine.value?.totals.lengthM ?? 0;
  const marked = markedM.value;
  const isOver = fromM > toM;
  const isIn =
    marked !== null && (isOver ? marked >= fromM || marked < toM : marked >= fromM && marked < toM);
  const middleM = ((fromM + toM + (isOver ? lengthM : 0)) / 2) % (lengthM || 1);
  return (
    <button
      type="button"
      aria-pressed={isIn}
      onClick={() => {
        markedM.value = middleM;
      }}
    >
      {children}
    </button>
  );
}
