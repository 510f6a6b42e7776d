import { useId, useState } from "preact/hooks";

interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly placeholder?: string;
  readonly labelHidden?: boolean;
  readonly maxLength?: number;
  readonly autoFocus?: boolean;
  readonly class?: string;
  /** Called once with the trimmed text when it changed and the person is done. */
  readonly onText: (text: string) => void;
  /** Called when the person leaves the field, changed or not. */
  readonly onDone?: () => void;
}

/** A line of text to type; Enter or leaving the field keeps it, Escape brings back what was there. */
export function TextField(props: TextFieldProps) {
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const commit = () => {
    const text = typed?.trim();
    if (text !== undefined && text !== props.value) props.onText(text);
    setTyped(null);
    props.onDone?.();
  };
  return (
    <div class={`text-field ${props.class ?? ""}`}>
      <label for={id} class={props.labelHidden ? "unseen" : undefined}>
        {props.label}
      </label>
      <input
        id={id}
        type="text"
        autocomplete="off"
        value={typed ?? props.value}
        placeholder={props.placeholder}
        maxLength={props.maxLength ?? 120}
        data-pending={typed !== null}
        ref={(input) => {
          if (!input || !props.autoFocus || document.activeElement === input) return;
          input.focus();
          input.select();
        }}
        onInput={(event) => setTyped(event.currentTarget.value)}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === "Enter") event.currentTarget.blur();
          if (event.key !== "Escape") return;
          event.stopPropagation();
          setTyped(null);
          props.onDone?.();
        }}
      />
    </div>
  );
}
