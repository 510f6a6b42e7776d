import { unitSystem } from "../../live/screen.ts";
import { chooseUnits } from "../../live/units-choice.ts";

const CHOICES = [
  { system: "us", label: "ft", name: "Feet and pounds" },
  { system: "metric", label: "m", name: "Meters and kilograms" },
] as const;

/** Feet or meters, as one line of a menu. */
export function UnitSwitch() {
  return (
    <fieldset class="unit-switch">
      <legend class="unseen">Units</legend>
      <span aria-hidden="true">Units</span>
      {CHOICES.map(({ system, label, name }) => (
        <label key={system} title={name}>
          <input
            type="radio"
            name="unit-system"
            aria-label={name}
            checked={unitSystem.value === system}
            onChange={() => chooseUnits(system)}
          />
          <span>{label}</span>
        </label>
      ))}
    </fieldset>
  );
}
