import { Dialog } from "../../ui/dialog.tsx";
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

interface KeysDialogProps {
  readonly open: boolean;
  readonly onClose: () => void;
}

/** The list of keys. */
export function KeysDialog({ open, onClose }: KeysDialogProps) {
  return (
    <Dialog title="Keys" open={open} onClose={onClose}>
      <KeyList rows={SHORTCUTS.map(({ keys, does }) => [keys, does] as const)} />
      <h3>In place</h3>
      <KeyList rows={IN_PLACE} />
      <p class="hint">On a Mac, Command does what Ctrl does here.</p>
      <p class="hint">
        Drystead is open source under the MIT license.{" "}
        <a href="./third-party-notices.md" target="_blank" rel="noreferrer">
          Licenses of the packages it is built from
        </a>
      </p>
    </Dialog>
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
