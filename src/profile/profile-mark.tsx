import { plan } from "../document/store.ts";
import { chosenLine, markedM, unitSystem } from "../state.ts";
import type { ProfileFrame } from "./profile-frame.ts";
import { greatestWords, markWords, readingAt } from "./profile-reading.ts";
import { textWidth } from "./text-width.ts";

const LABEL_PX = 12;
/** Room the label needs in the header's row, and how far above the picture that row's baseline lies. */
const GAP_PX = 7;

interface ProfileMarkProps {
  readonly frame: ProfileFrame;
  /** True when the mark stays where it is until pressed again. */
  readonly isPinned: boolean;
  /** Where the label may begin, pixels from the left of the picture; what stands before it is the heading. */
  readonly labelFromPx: number;
  /** Height of the label's row above the picture, pixels. */
  readonly rowPx: number;
}

/** The marked station, drawn over the picture: the only part that follows the pointer. */
export function ProfileMark({ frame, isPinned, labelFromPx, rowPx }: ProfileMarkProps) {
  const line = chosenLine.value;
  if (!line) return null;
  const isMarked = markedM.value !== null;
  const reading = readingAt(line, markedM.value ?? line.totals.greatestHeightAtM);
  if (!reading) return null;
  const { plot, stretch, widthPx, heightPx } = frame;
  const text = isMarked
    ? markWords(reading, plan.value.section, unitSystem.value)
    : greatestWords(reading, unitSystem.value);
  const isInView = reading.chainageM >= stretch.fromM && reading.chainageM <= stretch.toM;
  const x = Math.min(plot.right, Math.max(plot.left, frame.x(reading.chainageM)));
  const y = frame.y(line.walk.groundM[reading.index]!);
  const width = textWidth(text, LABEL_PX);
  const wished = x + GAP_PX + width <= widthPx - 6 ? x + GAP_PX : x - GAP_PX - width;
  const left = Math.max(labelFromPx, wished);
  const baseline = rowPx - 9;
  return (
    <svg
      class={isMarked ? "profile-pointer" : "profile-pointer profile-pointer-rest"}
      width={widthPx}
      height={heightPx + rowPx}
      style={{ top: `${-rowPx}px` }}
      aria-hidden="true"
    >
      {isInView && (
        <>
          <path class="profile-pointer-line" d={`M${x} ${rowPx - 16}V${rowPx + plot.bottom}`} />
          {Number.isFinite(y) && <circle cx={x} cy={rowPx + Math.max(plot.top, y)} r={3.6} />}
          {isPinned && isMarked && (
            <path class="profile-pin" d={`M${x - 5} ${rowPx - 19}h10l-5 7z`} />
          )}
        </>
      )}
      <text x={left} y={baseline}>
        {isInView ? text : `${text}, not in view`}
      </text>
    </svg>
  );
}
