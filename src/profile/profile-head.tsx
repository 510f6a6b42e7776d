import type { ComponentChildren } from "preact";
import { type ProfileFrame, scaleNote } from "../drawing/profile/profile-frame.ts";
import { LaneTabs } from "./lane-tabs.tsx";

export const PROFILE_TITLE = "Along the line";

interface ProfileHeadProps {
  readonly frame: ProfileFrame | null;
  /** Where the shown part lies, in words; null when the whole line is shown. */
  readonly partWords: string | null;
  /** What the lane's colors mean. */
  readonly legend: ComponentChildren;
  /** Id of the picture that the tabs change. */
  readonly panelId: string;
  readonly onCloser: () => void;
  readonly onWider: () => void;
  readonly onWhole: () => void;
}

/** Title, the truth about the scale, the lanes to choose from, and buttons back from a part of the line. */
export function ProfileHead(props: ProfileHeadProps) {
  const { frame, partWords, legend, panelId, onCloser, onWider, onWhole } = props;
  return (
    <header class="room-head profile-head">
      <h2>{PROFILE_TITLE}</h2>
      <span class="room-note">{frame && scaleNote(frame.exaggeration)}</span>
      <span class="profile-legend">{legend}</span>
      {partWords && (
        <span class="profile-zoom">
          <button type="button" title={partWords} onClick={onWhole}>
            Whole line
          </button>
          <button type="button" aria-label="Show more of the line" title="-" onClick={onWider}>
            −
          </button>
          <button
            type="button"
            aria-label="Look closer along the line"
            title="+"
            onClick={onCloser}
          >
            +
          </button>
        </span>
      )}
      <LaneTabs panelId={panelId} />
    </header>
  );
}
