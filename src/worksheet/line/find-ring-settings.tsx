import { failureOf, type Outcome } from "../../../shared/failure.ts";
import { letterOf } from "../../../shared/line-letter.ts";
import { amountOf, plainText } from "../../../shared/parse-length.ts";
import { isProtected } from "../../../shared/protected.ts";
import { formatLength } from "../../../shared/units.ts";
import { plan } from "../../document/store.ts";
import { unitSystem } from "../../live/screen.ts";
import {
  goneRound,
  type RingSettings,
  reachesM,
  ringSettings,
  ringsOf,
} from "../../live/search/ring-settings.ts";
import { NumberField } from "../../ui/number-field.tsx";
import { OFFSET, quantityAs } from "../../ui/quantity.ts";

const FEWEST = 4;
const MOST = 200;
const MOST_KEY_IN_M = 50;

const CORNERS = quantityAs("count", {
  step: () => 1,
  parse: (text) => {
    const value = amountOf(plainText(text));
    if (Number.isInteger(value) && value >= FEWEST && value <= MOST) return { ok: true, value };
    const about = { least: FEWEST, most: MOST };
    return { ok: false, failure: failureOf("corners/unreadable", about) };
  },
});

/** What the search is asked: round which buildings, how far away, how simple a line. */
export function FindSettings() {
  const settings = ringSettings.value;
  return (
    <>
      {plan.value.structures.length > 1 && <Round />}
      <Reach />
      <NumberField
        system={unitSystem.value}
        label="Corners at most"
        value={settings.maxCorners}
        quantity={CORNERS}
        onValue={(value) => change({ maxCorners: value ?? settings.maxCorners })}
      />
      <NumberField
        system={unitSystem.value}
        label="Carried on into high ground"
        value={settings.keyInM}
        quantity={OFFSET}
        range={{ least: 0, most: MOST_KEY_IN_M }}
        onValue={(value) => change({ keyInM: value ?? settings.keyInM })}
      />
    </>
  );
}

function change(part: Partial<RingSettings>): Outcome<void> {
  ringSettings.value = { ...ringSettings.value, ...part };
  return { ok: true, value: undefined };
}

function Round() {
  const { structures } = plan.value;
  const settings = ringSettings.value;
  const chosen = goneRound(settings, plan.value);
  return (
    <fieldset class="find-ring-round" aria-label="Buildings to go around">
      <span>Round</span>
      <div>
        {structures.filter(isProtected).map(({ id, name }) => (
          <label key={id} class="check-line">
            <input
              type="checkbox"
              checked={chosen.includes(id)}
              onChange={(event) => {
                const others = settings.leftOut.filter((each) => each !== id);
                change({ leftOut: event.currentTarget.checked ? others : [...others, id] });
              }}
            />
            {name || "unnamed building"}
          </label>
        ))}
      </div>
    </fieldset>
  );
}

function Reach() {
  const { reach, withinId } = ringSettings.value;
  const rings = ringsOf(plan.value);
  const system = unitSystem.value;
  const inside = reach === null && rings.some(({ id }) => id === withinId);
  const value = inside ? `within ${withinId}` : `reach ${reach ?? 1}`;
  return (
    <label class="select-row">
      Stay within
      <select
        value={value}
        onChange={(event) => {
          const [kind, ...rest] = event.currentTarget.value.split(" ");
          const word = rest.join(" ");
          change(
            kind === "reach"
              ? { reach: Number(word), withinId: null }
              : { reach: null, withinId: word },
          );
        }}
      >
        {reachesM(system).map((m, k) => (
          <option key={k} value={`reach ${k}`}>
            {formatLength(m, system, 0)}
          </option>
        ))}
        {rings.map((ring) => (
          <option key={ring.id} value={`within ${ring.id}`}>
            {letterOf(plan.value.alignments.indexOf(ring))}, {ring.name}
          </option>
        ))}
      </select>
    </label>
  );
}
