import { lengthUnit } from "../../../shared/units.ts";
import { unitSystem } from "../../live/screen.ts";
import { Icon, type IconName } from "../../ui/icons.tsx";

const FAR = 10;

/** East and north of one step. */
type Nudge = readonly [east: number, north: number];

const DIRECTIONS: Readonly<Record<string, Nudge>> = {
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
};

const BUTTONS: readonly { readonly icon: IconName; readonly name: string; readonly by: Nudge }[] = [
  { icon: "left", name: "west", by: [-1, 0] },
  { icon: "right", name: "east", by: [1, 0] },
  { icon: "up", name: "north", by: [0, 1] },
  { icon: "down", name: "south", by: [0, -1] },
];

/** The move an arrow key asks for, ten times as far with Shift; null for any other key. */
export function nudgeOfKey(event: { key: string; shiftKey: boolean }): Nudge | null {
  const by = Object.hasOwn(DIRECTIONS, event.key) ? DIRECTIONS[event.key] : undefined;
  if (!by) return null;
  const times = event.shiftKey ? FAR : 1;
  return [by[0] * times, by[1] * times];
}

interface NudgePadProps {
  readonly corner: number;
  readonly onNudge: (east: number, north: number) => void;
}

/** Moves the picked corner a step at a time by press or touch. */
export function NudgePad({ corner, onNudge }: NudgePadProps) {
  const unit = lengthUnit(unitSystem.value);
  return (
    <fieldset class="tool-row" aria-label={`Move corner ${corner}`}>
      {BUTTONS.map(({ icon, name, by }) => (
        <button
          key={name}
          type="button"
          class="icon-button"
          aria-label={`Corner ${corner} one ${unit} ${name}`}
          onClick={(event) => {
            const times = event.shiftKey ? FAR : 1;
            onNudge(by[0] * times, by[1] * times);
          }}
        >
          <Icon name={icon} />
        </button>
      ))}
      <span class="hint">
        Corner {corner}, 1 {unit} a step; {FAR} with Shift
      </span>
    </fieldset>
  );
}
