import type { Alignment, Closure } from "../../../shared/plan.ts";
import { momentOf, momentText } from "../../../shared/time/forecast-time.ts";
import { setClosures } from "../../document/edits/closures.ts";
import { plan } from "../../document/store.ts";
import { chosenLine } from "../../live/results.ts";
import { markedM, unitSystem } from "../../live/screen.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { Icon } from "../../ui/icons.tsx";
import { NumberField } from "../../ui/number-field.tsx";
import { OFFSET, quantityOf, STATION } from "../../ui/quantity.ts";
import { momentQuantity } from "../time/time-start-field.tsx";

/** Width of a way for vehicles as it is first put in, metres. Source: judgement. */
const WAY_M = 6;
const PEOPLE = quantityOf({ kind: "count", defaultSI: 10, lowSI: 1, highSI: 10_000, source: "" });

/** Stretches of the chosen line that are left open for vehicles, and when each is closed. */
export function ClosuresList({ alternative }: { readonly alternative: Alignment }) {
  const { closures = [] } = alternative;
  const line = chosenLine.value;
  return (
    <Disclosure
      id="closures"
      title="Ways left open"
      level="part"
      summary={closures.length === 0 ? "none" : `${closures.length}`}
    >
      <p class="hint">
        A stretch left open for vehicles until a stage or an hour. Its bags are in the order; its
        people stay beside it and are not among the crews.
      </p>
      <ul class="plain-list">
        {closures.map((closure, index) => (
          <ClosureRow key={index} alternative={alternative} closure={closure} index={index} />
        ))}
      </ul>
      {line && (
        <button
          type="button"
          class="tool-button"
          onClick={() => addClosure(alternative, line.totals.lengthM)}
        >
          <Icon name="plus" /> Leave a way open
        </button>
      )}
    </Disclosure>
  );
}

/** About the marked station, as far as the line goes. */
function addClosure(alternative: Alignment, lengthM: number): void {
  const middleM = markedM.peek() ?? lengthM / 2;
  const fromM = Math.max(0, Math.min(middleM - WAY_M / 2, lengthM - WAY_M));
  const toM = Math.min(lengthM, fromM + WAY_M);
  const fresh = { fromM, toM, closeBy: { stageM: null, at: null }, people: null };
  setClosures(alternative, [...(alternative.closures ?? []), fresh]);
}

interface ClosureRowProps {
  readonly alternative: Alignment;
  readonly closure: Closure;
  readonly index: number;
}

function ClosureRow({ alternative, closure, index }: ClosureRowProps) {
  const { closures = [] } = alternative;
  const system = unitSystem.value;
  const { fromM, toM, closeBy, people } = closure;
  const change = (next: Partial<Closure>, gesture?: string) =>
    setClosures(
      alternative,
      closures.map((each, k) => (k === index ? { ...each, ...next } : each)),
      gesture,
    );
  const lengthM = chosenLine.value?.totals.lengthM;
  const along = lengthM === undefined ? null : { least: 0, most: lengthM };
  const at = closeBy.at === null ? null : momentOf(closeBy.at);
  const first = plan.value.time?.forecast?.rows[0];
  const offsetMin = at?.offsetMin ?? (first ? (momentOf(first.at)?.offsetMin ?? null) : null);
  return (
    <li class="closure">
      <div class="named-row">
        <NumberField
          label="From"
          value={fromM}
          quantity={STATION}
          system={system}
          {...(along && { range: along })}
          onValue={(m, gesture) => (m === null ? undefined : change({ fromM: m }, gesture))}
        />
        <NumberField
          label="to"
          value={toM}
          quantity={STATION}
          system={system}
          {...(along && { range: along })}
          onValue={(m, gesture) => (m === null ? undefined : change({ toM: m }, gesture))}
        />
        <button
          type="button"
          class="icon-button"
          aria-label={`Delete closure ${index + 1}`}
          onClick={() => {
            setClosures(
              alternative,
              closures.filter((_, k) => k !== index),
            );
          }}
        >
          <Icon name="trash" />
        </button>
      </div>
      <NumberField
        label="Close at stage"
        value={closeBy.stageM}
        quantity={OFFSET}
        system={system}
        range={{ least: -100, most: 200 }}
        blank="not set"
        onValue={(stageM, gesture) => change({ closeBy: { ...closeBy, stageM } }, gesture)}
      />
      <NumberField
        label="or at"
        value={at?.atS ?? null}
        quantity={momentQuantity(offsetMin)}
        system={system}
        blank="not set"
        onValue={(atS) =>
          change({
            closeBy: { ...closeBy, at: atS === null ? null : momentText({ atS, offsetMin }) },
          })
        }
      />
      <NumberField
        label="People kept for it"
        value={people}
        quantity={PEOPLE}
        system={system}
        range={{ least: 1, most: 10_000, whole: true }}
        blank="not entered"
        onValue={(count, gesture) => change({ people: count }, gesture)}
      />
    </li>
  );
}
