import type { PublishedCount, SizedLine } from "../../../shared/sizing-types.ts";
import {
  formatCount,
  formatLength,
  grouped,
  lengthIn,
  type UnitSystem,
} from "../../../shared/units.ts";

/** Shorter than this is a rounding, metres. */
const A_STRETCH_M = 0.5;

/** What published tables say for the same heights, for how much of the line, and why they differ. */
export function PublishedTables({ line, system }: { line: SizedLine; system: UnitSystem }) {
  const { builtLengthM } = line.totals;
  const counts = line.published.flatMap(({ bags, coveredM }) =>
    bags !== null && coveredM > builtLengthM - A_STRETCH_M ? [formatCount(bags)] : [],
  );
  return (
    <details class="tables-note">
      <summary>
        {counts.length > 0
          ? `Published tables say ${counts.join(" · ")} bags. Why they differ`
          : "Published tables: none covers the whole line"}
      </summary>
      <ul>
        {line.published.map((count) => (
          <li key={count.key}>
            <strong>{tableWords(count, builtLengthM, system)}</strong>, {count.name} ({count.key}).{" "}
            {count.why}
            {count.beyondM > A_STRETCH_M &&
              ` ${formatLength(count.beyondM, system, 0)} of the line is higher than it goes and is not in its count.`}
          </li>
        ))}
      </ul>
    </details>
  );
}

/** `8,027 bags`, or for how much of the line they are: `8,027 bags for 480 of 1,120 ft`. */
function tableWords(
  { bags, coveredM }: PublishedCount,
  builtM: number,
  system: UnitSystem,
): string {
  if (bags === null) return "No answer";
  const words = `${formatCount(bags)} bags`;
  if (coveredM > builtM - A_STRETCH_M) return words;
  return `${words} for ${grouped(lengthIn(coveredM, system), 0)} of ${formatLength(builtM, system, 0)}`;
}
