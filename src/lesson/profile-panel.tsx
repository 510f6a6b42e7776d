import "../drawing/profile/profile.css";
import { useId } from "preact/hooks";
import type { TeachingGround } from "../../shared/lesson/teaching-ground.ts";
import { lengthIn } from "../../shared/units.ts";
import {
  alongWords,
  fallWords,
  heightWords,
  LESSON,
  readWords,
  STATION_NAME,
  shapeSpoken,
  stationWords,
} from "../../shared/words/lesson.ts";
import { classLook } from "../drawing/class-bar.tsx";
import { Hatches } from "../drawing/hatches.tsx";
import { profilePaths } from "../drawing/profile/profile-paths.ts";
import { textWidth } from "../drawing/text-width.ts";
import { type LineName, lineNames } from "./line-names.ts";
import { type LessonFrame, lessonFrame } from "./profile-frame.ts";
import type { Drawn } from "./shown.ts";
import { Slide } from "./slide.tsx";
import { useDrawing } from "./use-drawing.ts";

const HATCH_SCALE = 2;

interface ProfilePanelProps extends Drawn {
  /** Takes the station that is read; left out while it cannot be moved. */
  readonly onStation: ((stationM: number, touch: string) => void) | null;
}

/** The line along its length, with the shape before it dotted; the station that is read slides along it. */
export function ProfilePanel({ onStation, ...drawn }: ProfilePanelProps) {
  const [ref, size] = useDrawing(drawn.typePx);
  const frame = size && lessonFrame(drawn, size.widthPx, size.heightPx);
  return (
    <section class="lesson-panel lesson-along" aria-label={LESSON.along}>
      <h2>
        {LESSON.along} <small>{frame && alongWords(frame.exaggeration)}</small>
      </h2>
      <div class="lesson-drawing" ref={ref}>
        {frame && size && (
          <>
            <Picture {...drawn} frame={frame} widthPx={size.widthPx} heightPx={size.heightPx} />
            <StationSlider {...drawn} frame={frame} onStation={onStation} />
          </>
        )}
      </div>
    </section>
  );
}

interface StationSliderProps extends ProfilePanelProps {
  readonly frame: LessonFrame;
}

/** Lies over the plot, so that the mark follows the pointer; drawn by the picture under it. */
function StationSlider({ teaching, shape, isShown, frame, onStation }: StationSliderProps) {
  const { system, lengthM, stationStepM } = teaching;
  const { plot } = frame;
  const { stationM } = shape.choice;
  return (
    <div
      class="lesson-mark"
      style={{
        left: `${plot.left}px`,
        top: `${plot.top}px`,
        width: `${plot.right - plot.left}px`,
        height: `${plot.bottom - plot.top}px`,
      }}
    >
      <Slide
        label={STATION_NAME}
        value={stationM}
        least={0}
        most={lengthM}
        step={stationStepM}
        unitM={lengthIn(1, system)}
        spoken={isShown ? readWords(shape, system) : stationWords(stationM, system)}
        onValue={onStation}
      />
    </div>
  );
}

interface PictureProps extends Drawn {
  readonly frame: LessonFrame;
  readonly widthPx: number;
  readonly heightPx: number;
}

function Picture({ frame, widthPx, heightPx, ...drawn }: PictureProps) {
  const id = useId();
  const { teaching, shape, before, isShown } = drawn;
  const { x, plot } = frame;
  const { choice, line, practice } = shape;
  const paths = profilePaths(line, practice.limitM, frame);
  const was = before && profilePaths(before.line, practice.limitM, frame);
  const markX = x(choice.stationM);
  const limitY = frame.y(shape.topM - practice.limitM);
  return (
    <svg
      class="lesson-picture profile-picture"
      width={widthPx}
      height={heightPx}
      role="img"
      aria-label={isShown ? shapeSpoken(shape, teaching.system) : LESSON.unknown}
    >
      <Hatches id={id} scale={HATCH_SCALE} />
      <path class="profile-soil" d={paths.groundFill} />
      {isShown
        ? paths.bands.map((d, level) => d && <path key={level} d={d} {...classLook(level, id)} />)
        : was && <path {...classLook(0, id)} d={was.bands.join("")} />}
      {was && was.groundLine !== paths.groundLine && (
        <path class="lesson-ghost" d={was.groundLine} />
      )}
      {was && was.crestLine !== paths.crestLine && <path class="lesson-ghost" d={was.crestLine} />}
      {limitY <= plot.bottom && <path class="profile-limit" d={paths.limitLine} />}
      <path class="profile-water" d={paths.waterLine} />
      <path class="profile-ground" d={paths.groundLine} />
      <path class="profile-crest" d={paths.crestLine} />
      <Axes teaching={teaching} frame={frame} readM={choice.stationM} typePx={drawn.typePx} />
      <FallName {...drawn} frame={frame} />
      <path class="lesson-mark-line" d={`M${markX} ${plot.top - 4}V${plot.bottom}`} />
      <Heights {...drawn} frame={frame} />
      {lineNames(drawn, frame).map((name) => (
        <Name key={name.kind + name.text} name={name} x={plot.right + 0.7 * drawn.typePx} />
      ))}
    </svg>
  );
}

function Name({ name, x }: { readonly name: LineName; readonly x: number }) {
  return (
    <text
      class={`lesson-name lesson-name-${name.kind}`}
      x={x}
      y={name.y}
      dominant-baseline="central"
    >
      {name.text}
    </text>
  );
}

interface AxesProps {
  readonly teaching: TeachingGround;
  readonly frame: LessonFrame;
  readonly readM: number;
  readonly typePx: number;
}

function Axes({ teaching, frame, readM, typePx }: AxesProps) {
  const { plot, levels, stations, x } = frame;
  const isRead = (m: number) => Math.abs(m - readM) < teaching.stationStepM / 2;
  const near = (m: number) => Math.abs(m - readM) < teaching.lengthM / 8;
  const marks = [
    ...stations.filter((m) => isRead(m) || !near(m)),
    ...(stations.some(isRead) ? [] : [readM]),
  ];
  return (
    <g class="lesson-axes">
      <path class="profile-axis" d={`M${plot.left} ${plot.bottom}H${plot.right}`} />
      {levels.map(({ text, y }) => (
        <g key={text}>
          <path class="profile-tick" d={`M${plot.left - 6} ${y}h6`} />
          <text x={plot.left - 9} y={y} text-anchor="end" dominant-baseline="central">
            {text}
          </text>
        </g>
      ))}
      {stations.map((m) => (
        <path key={m} class="profile-tick" d={`M${x(m)} ${plot.bottom}v5`} />
      ))}
      {marks.map((m) => (
        <text
          key={m}
          class={isRead(m) ? "lesson-read" : undefined}
          x={x(m)}
          y={plot.bottom + 0.7 * typePx}
          text-anchor="middle"
          dominant-baseline="hanging"
        >
          {stationWords(m, teaching.system)}
        </text>
      ))}
    </g>
  );
}

/** How the ground falls, along it. */
function FallName({
  teaching,
  shape,
  frame,
  typePx,
}: PictureProps | (Drawn & { readonly frame: LessonFrame })) {
  const fromM = 0.06 * teaching.lengthM;
  const level = (m: number) => teaching.startGroundM - shape.choice.slope * m;
  const [left, right] = [frame.x(fromM), frame.x(teaching.lengthM)];
  const [high, low] = [frame.y(level(fromM)), frame.y(level(teaching.lengthM))];
  const angle = (Math.atan2(low - high, right - left) * 180) / Math.PI;
  return (
    <text
      class="lesson-fall"
      transform={`translate(${left} ${high + 0.4 * typePx}) rotate(${angle})`}
      dominant-baseline="hanging"
    >
      {fallWords(shape.choice.slope, teaching.system)}
    </text>
  );
}

/** The heights at the start of the line and where it is read. */
function Heights({
  teaching,
  shape,
  before,
  isShown,
  frame,
  typePx,
}: Drawn & { readonly frame: LessonFrame }) {
  const { plot, x } = frame;
  const { startGroundM, system } = teaching;
  const readX = x(shape.choice.stationM);
  const isRight = readX > (plot.left + plot.right) / 2;
  const isStartKnown = isShown || before?.startHeightM === shape.startHeightM;
  const words = (heightM: number) => heightWords(heightM, system);
  const startX = plot.left + 1.1 * typePx;
  return (
    <>
      {isStartKnown && shape.startHeightM > 0 && readX > plot.left + 6 * typePx && (
        <Height
          x={startX}
          side={1}
          top={frame.y(shape.topM)}
          foot={frame.y(startGroundM)}
          text={words(shape.startHeightM)}
          typePx={typePx}
        />
      )}
      {isShown && shape.heightM > 0 && (
        <Height
          x={readX + (isRight ? -1 : 1) * 1.1 * typePx}
          side={isRight ? -1 : 1}
          top={frame.y(shape.topM)}
          foot={frame.y(shape.groundM)}
          text={words(shape.heightM)}
          typePx={typePx}
        />
      )}
    </>
  );
}

interface HeightProps {
  readonly x: number;
  /** The words stand right (1) or left (-1) of the line. */
  readonly side: 1 | -1;
  readonly top: number;
  readonly foot: number;
  readonly text: string;
  readonly typePx: number;
}

function Height({ x, side, top, foot, text, typePx }: HeightProps) {
  const widthPx = textWidth(text, 1.1 * typePx) + 0.9 * typePx;
  const heightPx = 1.6 * typePx;
  const left = side === 1 ? x + 0.6 * typePx : x - 0.6 * typePx - widthPx;
  const middle = (top + foot) / 2 + 0.16 * (foot - top);
  return (
    <g class="lesson-height">
      <path d={`M${x - 6} ${top}h12M${x} ${top}V${foot}M${x - 6} ${foot}h12`} />
      <rect x={left} y={middle - heightPx / 2} width={widthPx} height={heightPx} />
      <text x={left + widthPx / 2} y={middle} text-anchor="middle" dominant-baseline="central">
        {text}
      </text>
    </g>
  );
}
