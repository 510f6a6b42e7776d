import type { SizedLine } from "../../../shared/sizing-types.ts";
import type { UnitSystem } from "../../../shared/units.ts";
import { beyondTableWords, publishedWords, tableWords } from "../../../shared/words/published.ts";

/** What published tables say for the same heights, for how much of the line, and why they differ. */
export function PublishedTables({ line, system }: { line: SizedLine; system: UnitSystem }) {
  const { builtLengthM } = line.totals;
  return (
    <details class="tables-note">
      <summary>{publishedWords(line.published, line.totals)}</summary>
      <ul>
        {line.published.map((count) => (
          <li key={count.key}>
            <strong>{tableWords(count, builtLengthM, system)}</strong>, {count.name} ({count.key}).{" "}
            {count.why} {beyondTableWords(count, system)}
          </li>
        ))}
      </ul>
    </details>
  );
}
