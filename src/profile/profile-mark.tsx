import type { LevelDoubt } from "../../shared/level-doubt.ts";
import type { LineTime } from "../../shared/time/types.ts";
import { levelDoubtShort } from "../../shared/words/level-doubt.ts";
import { plan } from "../document/store.ts";
import type { ProfileFrame } from "../drawing/profile/profile-frame.ts";
import {
  type BuiltAs,
  builtAt,
  greatestWords,
  markWords,
  type Reading,
  readingAt,
  shortMarkWords,
} from "../drawing/profile/profile-reading.ts";
import { shortWorkWords, workAt } from "../drawing/profile/work-words.ts";
import { textWidth } from "../drawing/text-width.ts";
import { chosenLine } from "../live/results.ts";
import { markedM, pointedCheck, unitSystem } from "../live/screen.ts";
import type { HeadRoom } from "./profile-head.tsx";

const LABEL_PX = 12;
/** Between the mark's line and its label. */
const GAP_PX = 7;

interface ProfileMarkProps {
  readonly frame: ProfileFrame;
  /** True when the mark stays where it is until pressed again. */
  readonly isPinned: boolean;
  readonly room: HeadRoom;
  /** The work that the lane shows; null for none. */
  readonly time: LineTime | null;
}

/** The marked station, drawn over the picture: the only part that follows the pointer. */
export function ProfileMark({ frame, isPinned, room, time }: ProfileMarkProps) {
  const { labelFromPx, rowPx } = room;
  const line = chosenLine.value;
  const isMarked = markedM.value !== null;
  const reading = line && readingAt(line, markedM.value ?? line.totals.greatestHeightAtM);
  if (!line || !reading) return null;
  const { plot, stretch, widthPx, heightPx } = frame;
  const isInView = reading.chainageM >= stretch.fromM && reading.chainageM <= stretch.toM;
  const x = Math.min(plot.right, Math.max(plot.left, frame.x(reading.chainageM)));
  const y = frame.y(line.walk.groundM[reading.index]!);
  const note = isInView ? "" : ", out of view";
  const label = labelBeside(
    x,
    room,
    wordings(
      reading,
      builtAt(line, reading.chainageM, plan.value),
      { time, levelDoubt: line.levelDoubt },
      isMarked,
    ).map((words) => words + note),
  );
  const isUnderHeading = room.isNarrow || x < labelFromPx - GAP_PX;
  const topPx = isUnderHeading ? rowPx + 1 : rowPx - 16;
  return (
    <svg
      class={isMarked ? "profile-pointer" : "profile-pointer profile-pointer-rest"}
      width={widthPx}
      height={heightPx + rowPx}
      style={{ top: `${-rowPx}px` }}
      aria-hidden="true"
    >
      <PointedStretch frame={frame} topPx={rowPx} />
      {isInView && (
        <>
          <path class="profile-pointer-line" d={`M${x} ${topPx}V${rowPx + plot.bottom}`} />
          {Number.isFinite(y) && <circle cx={x} cy={rowPx + Math.max(plot.top, y)} r={3.6} />}
          {isPinned && isMarked && (
            <path class="profile-pin" d={`M${x - 5} ${topPx - 3}h10l-5 7z`} />
          )}
        </>
      )}
      <text x={label.left} y={rowPx - 9}>
        {label.text}
      </text>
    </svg>
  );
}

/** What may be said at the mark, the fullest first. */
function wordings(
  reading: Reading,
  built: BuiltAs,
  { time, levelDoubt }: { time: LineTime | null; levelDoubt: LevelDoubt | null },
  isMarked: boolean,
): string[] {
  const system = unitSystem.value;
  if (levelDoubt?.countsUnknown) return [`Not known: ${levelDoubtShort(levelDoubt)}`];
  if (!isMarked) return [greatestWords(reading, system)];
  const full = markWords(reading, built, system);
  const short = shortMarkWords(reading, system);
  const work = workAt(time, reading.chainageM);
  if (!work) return [full, short];
  const done = shortWorkWords(work);
  return [`${full} · ${done}`, `${short} · ${done}`, full, short];
}

/** The fullest words that fit beside the line at `x` without crossing it, to its right if they can. */
function labelBeside(x: number, room: HeadRoom, texts: readonly string[]) {
  const { labelFromPx, labelToPx, isNarrow } = room;
  const places = texts.flatMap((text) => {
    const width = textWidth(text, LABEL_PX);
    const most = isNarrow ? labelToPx - width : Infinity;
    const right = Math.max(labelFromPx, Math.min(x + GAP_PX, most));
    return [right, x - GAP_PX - width].map((left) => ({ text, left, right: left + width }));
  });
  const free = places.find(({ left, right }) => left >= labelFromPx && right <= labelToPx);
  return free ?? { text: texts.at(-1)!, left: labelFromPx };
}

/** The stretch of a check that the person points at, here, on the map or in the worksheet. */
function PointedStretch({
  frame,
  topPx,
}: {
  readonly frame: ProfileFrame;
  readonly topPx: number;
}) {
  const pointed = pointedCheck.value;
  if (!pointed || !(pointed.toM > 0)) return null;
  const { plot } = frame;
  const from = Math.max(plot.left, frame.x(pointed.fromM) - 1);
  const to = Math.min(plot.right, frame.x(pointed.toM) + 1);
  if (to <= from) return null;
  return (
    <rect
      class="profile-pointed"
      x={from}
      y={topPx + plot.top}
      width={to - from}
      height={plot.bottom - plot.top}
    />
  );
}
