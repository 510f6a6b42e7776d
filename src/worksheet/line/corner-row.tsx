import type { Outcome } from "../../../shared/failure.ts";
import { pinsOf } from "../../../shared/pins.ts";
import type { Alignment, LonLat } from "../../../shared/plan.ts";
import {
  type CornerFrame,
  deleteCorner,
  insertCorner,
  pinCorner,
  placeCorner,
} from "../../document/edits/corners.ts";
import { unitSystem } from "../../live/screen.ts";
import { Icon } from "../../ui/icons.tsx";
import { NumberField } from "../../ui/number-field.tsx";
import { LATITUDE, LONGITUDE, OFFSET } from "../../ui/quantity.ts";
import { nudgeOfKey } from "./nudge-pad.tsx";

interface CornerRowProps {
  readonly alternative: Alignment;
  readonly corner: LonLat;
  readonly index: number;
  readonly frame: CornerFrame;
  readonly shown: "offsets" | "degrees";
  readonly isPicked: boolean;
  /** The last corner of a line: nothing can be inserted after it. */
  readonly isLast: boolean;
  readonly mayDelete: boolean;
  readonly onPick: () => void;
  /** Moves the picked corner, in the person's unit. */
  readonly onNudge: (east: number, north: number) => void;
}

/** One corner: its number takes the arrow keys, its two figures can be typed. */
export function CornerRow(props: CornerRowProps) {
  const { alternative, corner, index, frame, shown } = props;
  const [eastM, northM] = frame.plane.toPlane(corner);
  const put = (at: LonLat, gesture?: string): Outcome<void> | undefined => {
    placeCorner(alternative, index, at, gesture);
    return undefined;
  };
  const putOffset = (x: number, y: number, gesture?: string) =>
    put(frame.plane.toLonLat(x, y), gesture);
  const name = `corner ${index + 1}`;
  const isPinned = pinsOf(alternative).includes(index);
  return (
    <tr data-picked={props.isPicked}>
      <th scope="row">
        <button
          type="button"
          class="corner-handle"
          aria-pressed={props.isPicked}
          aria-label={`Corner ${index + 1}: arrow keys move it`}
          onFocus={props.onPick}
          onKeyDown={(event) => {
            const nudge = nudgeOfKey(event);
            if (!nudge) return;
            event.preventDefault();
            props.onNudge(...nudge);
          }}
        >
          {index + 1}
        </button>
      </th>
      <td>
        {shown === "offsets" ? (
          <NumberField
            system={unitSystem.value}
            label={`East of ${name}`}
            labelHidden
            value={eastM}
            quantity={OFFSET}
            onValue={(x, gesture) => putOffset(x ?? eastM, northM, gesture)}
          />
        ) : (
          <NumberField
            system={unitSystem.value}
            label={`Longitude of ${name}`}
            labelHidden
            value={corner[0]}
            quantity={LONGITUDE}
            onValue={(lon, gesture) => put([lon ?? corner[0], corner[1]], gesture)}
          />
        )}
      </td>
      <td>
        {shown === "offsets" ? (
          <NumberField
            system={unitSystem.value}
            label={`North of ${name}`}
            labelHidden
            value={northM}
            quantity={OFFSET}
            onValue={(y, gesture) => putOffset(eastM, y ?? northM, gesture)}
          />
        ) : (
          <NumberField
            system={unitSystem.value}
            label={`Latitude of ${name}`}
            labelHidden
            value={corner[1]}
            quantity={LATITUDE}
            onValue={(lat, gesture) => put([corner[0], lat ?? corner[1]], gesture)}
          />
        )}
      </td>
      <td class="corner-acts">
        <button
          type="button"
          class="icon-button corner-pin"
          aria-label={`Pin ${name}`}
          aria-pressed={isPinned}
          title="A pinned corner stays where it is when the line is improved"
          onClick={() => pinCorner(alternative, index, !isPinned)}
        >
          <Icon name="pin" />
        </button>
        <button
          type="button"
          class="icon-button"
          aria-label={`Insert a corner after ${name}`}
          disabled={props.isLast}
          onClick={() => insertCorner(alternative, index)}
        >
          <Icon name="plus" />
        </button>
        <button
          type="button"
          class="icon-button"
          aria-label={`Delete ${name}`}
          disabled={!props.mayDelete}
          onClick={() => deleteCorner(alternative, index)}
        >
          <Icon name="trash" />
        </button>
      </td>
    </tr>
  );
}
