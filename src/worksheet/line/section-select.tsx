import { SECTIONS } from "../../../shared/sections.ts";

interface SectionSelectProps {
  readonly label: string;
  readonly value: string;
  readonly onSection: (id: string) => void;
}

/** Chooses among the emergency sections there are. */
export function SectionSelect({ label, value, onSection }: SectionSelectProps) {
  return (
    <select
      class="section-select"
      aria-label={label}
      value={value}
      onChange={(event) => onSection(event.currentTarget.value)}
    >
      {SECTIONS.map(({ id, name }) => (
        <option key={id} value={id}>
          {name}
        </option>
      ))}
    </select>
  );
}
