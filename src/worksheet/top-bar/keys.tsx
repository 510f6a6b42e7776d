import { SHORTCUTS } from "./shortcuts.ts";

/** Keys that belong to one place of the screen. */
const IN_PLACE: readonly (readonly [string, string])[] = [
  ["← →", "Along the line: the marked station, ten times as far with Shift"],
  ["↑ ↓", "In a figure: one step more or less"],
  ["← → ↑ ↓", "On a corner's number in the table: the corner, ten times as far with Shift"],
  ["← → ↑ ↓", "While drawing: the map under the cross, in small steps with Shift"],
  ["Enter", "While drawing: a corner at the cross; with Shift, close the ring or end the line"],
  ["Backspace", "While drawing: remove the last corner"],
  ["Enter", "In a figure: keep it"],
  ["Escape", "In a figure: bring back what was there"],
];

/** The list of keys. */
export function Keys() {
  return (
    <>
      <KeyList rows={SHORTCUTS.map(({ keys, does }) => [keys, does] as const)} />
      <h3>In place</h3>
      <KeyList rows={IN_PLACE} />
      <p class="hint">On a Mac, Command does what Ctrl does here.</p>
    </>
  );
}

function KeyList({ rows }: { rows: readonly (readonly [string, string])[] }) {
  return (
    <dl class="key-list">
      {rows.map(([keys, does]) => (
        <div key={keys + does}>
          <dt>
            <kbd>{keys}</kbd>
          </dt>
          <dd>{does}</dd>
        </div>
      ))}
    </dl>
  );
}
