import { timeOf } from "../../../shared/defaults.ts";
import type { LineTime, WorkStretch } from "../../../shared/time/types.ts";
import {
  formatCount,
  formatLength,
  formatStation,
  type UnitSystem,
} from "../../../shared/units.ts";
import { hourWords } from "../../../shared/words/clock.ts";
import { plan } from "../../document/store.ts";
import { markedM, unitSystem } from "../../live/screen.ts";
import { Disclosure } from "../../ui/disclosure.tsx";

/** Who builds which stretch when, lowest ground first; a press marks the stretch on map and profile. */
export function OrderPart({ time }: { readonly time: LineTime }) {
  const system = unitSystem.value;
  const { liftM } = timeOf(plan.value);
  const count = time.stretches.length;
  const stretches = [...time.stretches].sort((a, b) => a.order - b.order);
  if (count === 0) return null;
  return (
    <Disclosure
      id="time-order"
      title="Build sequence"
      level="part"
      summary={count === 1 ? "1 stretch" : `${count} stretches`}
    >
      <p class="hint">
        Lowest ground first, raised {formatLength(liftM, system)} at a time all along, at the slow
        pace: hours are from a stretch's first bag to its last.
      </p>
      <ol class="time-order">
        {stretches.map((stretch) => (
          <li key={stretch.fromM}>
            <Stretch stretch={stretch} time={time} system={system} />
          </li>
        ))}
      </ol>
    </Disclosure>
  );
}

interface StretchProps {
  readonly stretch: WorkStretch;
  readonly time: LineTime;
  readonly system: UnitSystem;
}

function Stretch({ stretch, time, system }: StretchProps) {
  const { fromM, toM, order, crew, bags } = stretch;
  const marked = markedM.value;
  return (
    <button
      type="button"
      aria-pressed={marked !== null && marked >= fromM && marked < toM}
      onClick={() => {
        markedM.value = (fromM + toM) / 2;
      }}
    >
      <span class="time-order-place">{order}</span>
      <span class="time-order-what">
        <strong>{stretchWords(stretch, system)}</strong>, {formatCount(bags)} bags
        {crew !== null && `, crew ${crew}`}
      </span>
      <span class="time-order-when">{whenWords(stretch, time, system)}</span>
      <WetWords stretch={stretch} time={time} system={system} />
    </button>
  );
}

/** When a stretch gets wet, and how far its crest is above the water then at the least. */
function WetWords({ stretch, time, system }: StretchProps) {
  const { wetH, leastAheadM } = stretch;
  if (time.verdicts.length === 0) return null;
  if (wetH === null) return <span class="time-order-wet">not reached</span>;
  const isLow = leastAheadM !== null && leastAheadM < Math.min(time.marginM, 0);
  return (
    <span class="time-order-wet" data-late={isLow}>
      wet {hourWords(time.startAt, wetH, system)}
      {leastAheadM !== null && `, ${aheadWords(leastAheadM, system)}`}
    </span>
  );
}

function aheadWords(leastAheadM: number, system: UnitSystem): string {
  const height = formatLength(Math.abs(leastAheadM), system);
  return leastAheadM < 0 ? `water ${height} over it` : `${height} above the water at least`;
}

function stretchWords({ fromM, toM }: WorkStretch, system: UnitSystem): string {
  return `${formatStation(fromM, system)} to ${formatStation(toM, system)}`;
}

function whenWords(
  { startH, finishH }: WorkStretch,
  { startAt, missing }: LineTime,
  system: UnitSystem,
): string {
  if (missing.length > 0) return "hours not known";
  if (startH === null || finishH === null) return "not within a year";
  return `${hourWords(startAt, startH, system)} to ${hourWords(startAt, finishH, system)}`;
}
