import { reachAt } from "../../shared/reaches.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import type { LineTime } from "../../shared/time/types.ts";
import { workAt } from "../../shared/time/work-tone.ts";
import { levelDoubtShort } from "../../shared/words/level-doubt.ts";
import { stationWords } from "../../shared/words/reading.ts";
import { shortWorkWords } from "../../shared/words/work.ts";
import { type Obstacle, placeLabels, type Spot } from "../drawing/place-labels.ts";
import { nearestSample } from "../drawing/profile/picked-samples.ts";
import type { ProfileFrame } from "../drawing/profile/profile-frame.ts";
import { drawnGroundM } from "../drawing/profile/profile-paths.ts";
import { type Reading, readingAt } from "../drawing/profile/profile-reading.ts";
import { textWidth } from "../drawing/text-width.ts";
import { chosenLine } from "../live/results.ts";
import { markedM, pointedCheck, unitSystem } from "../live/screen.ts";

const TYPE_PX = 13;
const HIGH_PX = 18;
/** Between the mark's line and its label, and between places tried for it. */
const GAPS_PX = [10, 18, 26, 34];
/** Kept free between the label and what stands beside it. */
const CLEAR_PX = 3;
const STEP_PX = 8;
/** The stations' room at the foot. */
const FOOT_PX = 20;

interface ProfileMarkProps {
  readonly frame: ProfileFrame;
  /** True when the mark stays where it is until pressed again. */
  readonly isPinned: boolean;
  /** The work that the lane shows; null for none. */
  readonly time: LineTime | null;
}

/** The marked station, drawn over the picture: the only part that follows the pointer. */
export function ProfileMark({ frame, isPinned, time }: ProfileMarkProps) {
  const line = chosenLine.value;
  const isMarked = markedM.value !== null;
  const reading = line && readingAt(line, markedM.value ?? line.totals.greatestHeightAtM);
  if (!line || !reading) return null;
  const { plot, stretch, widthPx, heightPx } = frame;
  const { chainageM, index } = reading;
  const isInView = chainageM >= stretch.fromM && chainageM <= stretch.toM;
  const x = Math.min(plot.right, Math.max(plot.left, frame.x(chainageM)));
  const crestY = frame.y(line.walk.crestM[index]!);
  const groundY = frame.y(drawnGroundM(line.walk, index));
  const topY = plot.top - 6;
  const toY = Number.isFinite(groundY) ? Math.max(groundY, crestY) : plot.bottom;
  const label = labelBeside(x, line, frame, wordings(line, reading, time, isInView));
  return (
    <svg class="profile-pointer" width={widthPx} height={heightPx} aria-hidden="true">
      <PointedStretch frame={frame} />
      {isInView && (
        <>
          <path class="profile-pointer-line" d={`M${x} ${topY}V${toY}`} />
          <circle cx={x} cy={crestY} r={4} />
          {isPinned && isMarked && (
            <path class="profile-pin" d={`M${x - 5} ${topY - 6}h10l-5 7z`} />
          )}
        </>
      )}
      <text x={label.left} y={label.bottom - 4}>
        {label.text}
      </text>
    </svg>
  );
}

/** What may be said at the mark, the fullest first. */
function wordings(
  line: SizedLine,
  reading: Reading,
  time: LineTime | null,
  isInView: boolean,
): string[] {
  const system = unitSystem.value;
  if (line.levelDoubt?.countsUnknown) return [`Not known: ${levelDoubtShort(line.levelDoubt)}`];
  const { limitM } = reachAt(line, reading.chainageM);
  const short = `${stationWords(reading, system, limitM)}${isInView ? "" : ", out of view"}`;
  const work = workAt(time, reading.chainageM);
  return work && time ? [`${short}, ${shortWorkWords(work, time)}`, short] : [short];
}

/** The fullest words beside the line at `x`, in the ground, off the ground's edge and the height limit. */
function labelBeside(x: number, line: SizedLine, frame: ProfileFrame, texts: readonly string[]) {
  const { plot } = frame;
  const spots = texts.flatMap((text, shorter) => {
    const width = textWidth(text, TYPE_PX);
    const beside = GAPS_PX.flatMap((gap) => [x + gap, x - gap - width]);
    return beside.flatMap((left, place) =>
      Array.from({ length: Math.floor((plot.bottom - plot.top) / STEP_PX) }, (_, k): Spot => {
        const bottom = plot.bottom - FOOT_PX - k * STEP_PX;
        const box = { left, right: left + width, top: bottom - HIGH_PX, bottom };
        return { ...box, text, cost: 40 * shorter + 6 * place + k };
      }),
    );
  });
  const key = "mark";
  const obstacles = obstaclesOf(line, frame);
  const [placed] = placeLabels([{ key, text: texts[0]!, spots }], obstacles, plot);
  return placed
    ? { ...placed.box, text: placed.text }
    : { left: plot.left + 4, bottom: plot.bottom - FOOT_PX, text: texts.at(-1)! };
}

/** The levee over its ground and the height limit, in columns. */
function obstaclesOf(line: SizedLine, { plot, y, chainageAt }: ProfileFrame): Obstacle[] {
  const { walk } = line;
  const columns = Math.ceil((plot.right - plot.left) / STEP_PX);
  return Array.from({ length: columns }, (_, i) => plot.left + i * STEP_PX).flatMap((left) => {
    const index = nearestSample(walk.chainageM, chainageAt(left));
    const sides = { left: left - CLEAR_PX, right: left + STEP_PX + CLEAR_PX };
    const crestM = walk.crestM[index]!;
    const groundY = y(drawnGroundM(walk, index));
    const limitY = y(crestM - reachAt(line, walk.chainageM[index]!).limitM);
    const levee = Number.isFinite(groundY) ? groundY : plot.bottom;
    return [
      { ...sides, top: y(crestM) - 2, bottom: levee + 2, cost: 1 },
      { ...sides, top: limitY - 1, bottom: limitY + 1, cost: 1 },
    ];
  });
}

/** The stretch of a check that the person points at, here, on the map or in the worksheet. */
function PointedStretch({ frame }: { readonly frame: ProfileFrame }) {
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
      y={plot.top}
      width={to - from}
      height={plot.bottom - plot.top}
    />
  );
}
