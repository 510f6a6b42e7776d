interface Props<T extends string> {
  readonly class?: string;
  readonly label: string;
  /** What stands for no choice. */
  readonly none: string;
  readonly value: T | null;
  readonly options: readonly T[];
  readonly words?: (option: T) => string;
  readonly onPick: (option: T | null) => void;
}

/** One of several, or none. */
export function PickRow<T extends string>(props: Props<T>) {
  const { class: name = "select-row", label, none, value, options, words, onPick } = props;
  return (
    <label class={name}>
      {label}
      <select
        value={value ?? ""}
        onChange={({ currentTarget }) =>
          onPick(options.find((each) => each === currentTarget.value) ?? null)
        }
      >
        <option value="">{none}</option>
        {options.map((each) => (
          <option key={each} value={each}>
            {words ? words(each) : each}
          </option>
        ))}
      </select>
    </label>
  );
}
