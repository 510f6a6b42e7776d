import type { ProfileFrame } from "../drawing/profile/profile-frame.ts";
import { scaleNote } from "../drawing/profile/profile-frame.ts";
import { textWidth } from "../drawing/text-width.ts";

export const PROFILE_TITLE = "Along the line";

/** Where the row of the heading leaves room for the mark's label, pixels. */
export interface HeadRoom {
  /** True when the label has a row of its own under the heading. */
  readonly isNarrow: boolean;
  readonly labelFromPx: number;
  readonly labelToPx: number;
  readonly rowPx: number;
}

const NARROW_PX = 560;
const ROW_PX = 30;
const NARROW_ROW_PX = 20;
const ONE_BUTTON_PX = 44;
const ALL_BUTTONS_PX = 150;
const SCHEDULE_PX = 66;

/** What stands at the heading's right. */
export interface HeadButtons {
  /** A part of the line is shown. */
  readonly isPart: boolean;
  /** There is work to show or hide. */
  readonly hasSchedule: boolean;
}

/** Room for the mark's label beside the heading, or under it on a narrow screen. */
export function headRoom(frame: ProfileFrame, { isPart, hasSchedule }: HeadButtons): HeadRoom {
  const { widthPx, plot } = frame;
  const isNarrow = widthPx < NARROW_PX;
  if (isNarrow) {
    return { isNarrow, labelFromPx: 12, labelToPx: widthPx - 6, rowPx: NARROW_ROW_PX };
  }
  const words = textWidth(PROFILE_TITLE, 14) + textWidth(scaleNote(frame.exaggeration), 12);
  const buttonsPx = (isPart ? ALL_BUTTONS_PX : ONE_BUTTON_PX) + (hasSchedule ? SCHEDULE_PX : 0);
  return {
    isNarrow,
    labelFromPx: plot.left + words + 24,
    labelToPx: widthPx - buttonsPx,
    rowPx: ROW_PX,
  };
}

interface ProfileHeadProps {
  readonly frame: ProfileFrame | null;
  /** Where the shown part lies, in words; null when the whole line is shown. */
  readonly partWords: string | null;
  /** Whether the work is shown; null when there is none to show. */
  readonly isScheduleOn: boolean | null;
  readonly onSchedule: () => void;
  readonly onCloser: () => void;
  readonly onWider: () => void;
  readonly onWhole: () => void;
}

/** Title, the truth about the scale, and the buttons for those without wheel or fingers. */
export function ProfileHead(props: ProfileHeadProps) {
  const { frame, partWords, isScheduleOn, onSchedule, onCloser, onWider, onWhole } = props;
  const buttons = { isPart: partWords !== null, hasSchedule: isScheduleOn !== null };
  const isNarrow = frame !== null && headRoom(frame, buttons).isNarrow;
  return (
    <header
      class={isNarrow ? "room-head profile-head-narrow" : "room-head"}
      style={{ paddingLeft: `${frame?.plot.left ?? 40}px` }}
    >
      <h2>{PROFILE_TITLE}</h2>
      <span class="room-note">{frame && scaleNote(frame.exaggeration)}</span>
      <span class="profile-zoom">
        {isScheduleOn !== null && (
          <button
            type="button"
            class="profile-schedule"
            aria-pressed={isScheduleOn}
            title="Show the build sequence under the stations"
            onClick={onSchedule}
          >
            Schedule
          </button>
        )}
        {partWords && (
          <>
            <button type="button" title={partWords} onClick={onWhole}>
              Whole line
            </button>
            <button
              type="button"
              aria-label="Show more of the line"
              title="Show more of the line (−)"
              onClick={onWider}
            >
              −
            </button>
          </>
        )}
        <button
          type="button"
          aria-label="Look closer along the line"
          title="Look closer along the line (+, or the wheel)"
          onClick={onCloser}
        >
          +
        </button>
      </span>
    </header>
  );
}
