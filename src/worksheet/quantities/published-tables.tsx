import type { PublishedCount, SizedLine } from "../../../shared/sizing-types.ts";
import { formatCount, formatLength, type UnitSystem } from "../../../shared/units.ts";

/** What published tables would have said for the same heights, and why they differ. */
export function PublishedTables({ line, system }: { line: SizedLine; system: UnitSystem }) {
  const counts = line.published.map((each) => (each.bags === null ? "–" : formatCount(each.bags)));
  return (
    <details class="tables-note">
      <summary>Published tables would say {counts.join(" · ")} bags. Why they differ</summary>
      <ul>
        {line.published.map((count) => (
          <li key={count.key}>
            <strong>{tableWords(count)}</strong>, {count.name} ({count.key}). {count.why}
            {count.beyondM > 0.5 &&
              ` ${formatLength(count.beyondM, system, 0)} of the line is higher than it goes and is not in its count.`}
          </li>
        ))}
      </ul>
    </details>
  );
}

function tableWords({ bags }: PublishedCount): string {
  return bags === null ? "No answer" : `${formatCount(bags)} bags`;
}
