import { useState } from "preact/hooks";
import type { Outcome } from "../../../shared/failure.ts";
import { centreLineDistanceM, offsetRing } from "../../../shared/offset-ring.ts";
import type { Structure } from "../../../shared/plan.ts";
import { isProtected } from "../../../shared/protected.ts";
import { formatLength } from "../../../shared/units.ts";
import { addRing } from "../../document/edits/alternatives.ts";
import { tell } from "../../document/notices.ts";
import { plan } from "../../document/store.ts";
import { chosenLine } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import { Icon } from "../../ui/icons.tsx";
import { NumberField } from "../../ui/number-field.tsx";
import { OFFSET } from "../../ui/quantity.ts";

const MOST_HEIGHT_M = 3;

/** A ring from the footprint, without drawing: setback plus half the base at the height allowed for. */
export function SetbackRing() {
  const { practice, section } = plan.value;
  const structures = plan.value.structures.filter(isProtected);
  const [typedHeightM, setHeightM] = useState<number | null>(null);
  const [typedSetbackM, setSetbackM] = useState<number | null>(null);
  const [round, setRound] = useState("all");
  if (structures.length === 0) return null;
  const setbackM = typedSetbackM ?? practice.setbackM;
  const heightM = typedHeightM ?? chosenHeightM() ?? practice.limitM;
  const distanceM = centreLineDistanceM(setbackM, heightM, section.baseRatio);
  const picked = structures.filter((each) => round === "all" || each.id === round);
  const make = () => {
    const outcome = offsetRing({ structures: picked, distanceM });
    if (outcome.ok) addRing("Ring at a setback", outcome.value, setbackM);
    else tell("error", outcome.failure);
  };
  return (
    <fieldset class="setback-ring">
      <legend>Ring at a setback, without drawing</legend>
      {structures.length > 1 && (
        <Around structures={structures} value={round} onChange={setRound} />
      )}
      <NumberField
        system={unitSystem.value}
        label="Landside toe from the building"
        value={setbackM}
        quantity={OFFSET}
        range={{ least: 0, most: 100 }}
        onValue={(value) => keep(setSetbackM, value)}
      />
      <NumberField
        system={unitSystem.value}
        label="Height to allow for"
        value={heightM}
        quantity={OFFSET}
        range={{ least: 0.1, most: MOST_HEIGHT_M }}
        onValue={(value) => keep(setHeightM, value)}
      />
      <div class="tool-row">
        <button type="button" class="tool-button" onClick={make}>
          <Icon name="setback" /> Make the ring
        </button>
        <span class="hint">Its middle runs {formatLength(distanceM, unitSystem.value)} away.</span>
      </div>
    </fieldset>
  );
}

function keep(set: (value: number | null) => void, value: number | null): Outcome<void> {
  set(value);
  return { ok: true, value: undefined };
}

function chosenHeightM(): number | null {
  const heightM = chosenLine.value?.totals.greatestHeightM ?? 0;
  return heightM > 0.1 ? Math.min(heightM, MOST_HEIGHT_M) : null;
}

interface AroundProps {
  readonly structures: readonly Structure[];
  readonly value: string;
  readonly onChange: (value: string) => void;
}

function Around({ structures, value, onChange }: AroundProps) {
  return (
    <label class="select-row">
      Round
      <select value={value} onChange={(event) => onChange(event.currentTarget.value)}>
        <option value="all">all {structures.length} buildings</option>
        {structures.map((structure) => (
          <option key={structure.id} value={structure.id}>
            {structure.name || "unnamed building"}
          </option>
        ))}
      </select>
    </label>
  );
}
