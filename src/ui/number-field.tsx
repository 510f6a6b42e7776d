import { useId, useRef, useState } from "preact/hooks";
import type { Failure, Outcome } from "../../shared/failure.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { FailureText } from "./failure-text.tsx";
import { checkRange, type RangedField } from "./range.ts";

export type NumberFieldProps = RangedField & {
  readonly label: string;
  /** SI; null when nothing is set (only where `blank` says what that means). */
  readonly value: number | null;
  readonly system: UnitSystem;
  /** Shown in an empty field; makes an empty field allowed. */
  readonly blank?: string | undefined;
  /** Keeps the label for screen readers alone, as in a table. */
  readonly labelHidden?: boolean;
  readonly disabled?: boolean;
  /** Takes the new SI value; what it refuses is said under the field. */
  readonly onValue: (value: number | null, gesture?: string) => Outcome<void> | undefined;
};

let gestures = 0;

/**
 * A figure to type, with its unit. What cannot be read or lies out of range stays in the field with the reason
 * under it, and the value from before still holds; Escape brings it back. Arrow keys step it.
 */
export function NumberField(props: NumberFieldProps) {
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [failure, setFailure] = useState<Failure | null>(null);
  const gesture = useRef("");
  const { system } = props;
  const shown = props.value === null ? "" : props.quantity.format(props.value, system);

  const settle = (outcome: Outcome<void> | undefined) => {
    const refused = outcome && !outcome.ok ? outcome.failure : null;
    setFailure(refused);
    if (!refused) setTyped(null);
  };
  const commit = () => {
    if (typed === null || typed === shown) return settle(undefined);
    if (typed.trim() === "" && props.blank !== undefined) return settle(props.onValue(null));
    const parsed = props.quantity.parse(typed, system);
    const checked = parsed.ok ? checkRange(parsed.value, props) : parsed;
    return checked.ok ? settle(props.onValue(checked.value)) : setFailure(checked.failure);
  };
  const step = (direction: 1 | -1) => {
    if (props.value === null) return;
    const next = props.value + direction * props.quantity.step(system);
    const checked = checkRange(next, props);
    if (checked.ok) settle(props.onValue(checked.value, gesture.current));
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === "Enter") commit();
    if (event.key === "Escape" && typed !== null) {
      event.stopPropagation();
      setTyped(null);
      setFailure(null);
    }
    if (event.key === "ArrowUp" || event.key === "ArrowDown") {
      event.preventDefault();
      step(event.key === "ArrowUp" ? 1 : -1);
    }
  };
  return (
    <div class="field" data-invalid={failure !== null}>
      <label for={id} class={props.labelHidden ? "unseen" : undefined}>
        {props.label}
      </label>
      <input
        id={id}
        class="field-input"
        type="text"
        autocomplete="off"
        spellcheck={false}
        value={typed ?? shown}
        placeholder={props.blank}
        disabled={props.disabled}
        size={Math.max(5, (typed ?? shown).length || (props.blank ?? "").length)}
        data-pending={typed !== null}
        aria-invalid={failure !== null}
        aria-describedby={failure ? `${id}-why` : undefined}
        onFocus={(event) => {
          gesture.current = `field-${++gestures}`;
          event.currentTarget.select();
        }}
        onInput={(event) => setTyped(event.currentTarget.value)}
        onBlur={commit}
        onKeyDown={onKeyDown}
      />
      {failure && (
        <p id={`${id}-why`} class="field-why" role="alert">
          <FailureText failure={failure} system={system} />
          {shown !== "" && ` Until then ${shown} is used.`}
        </p>
      )}
    </div>
  );
}
