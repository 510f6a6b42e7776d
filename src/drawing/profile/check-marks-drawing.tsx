import type { Check, SizedLine } from "../../../shared/sizing-types.ts";
import type { UnitSystem } from "../../../shared/units.ts";
import { checkWords } from "../../../shared/words/checks.ts";
import { SeverityMark } from "../severity-mark.tsx";
import { type MarkWords, wordsBeside } from "./check-lane.ts";
import type { ProfileFrame } from "./profile-frame.ts";
import { type CheckMark, COUNT_PX, checkMarks } from "./profile-marks.ts";

/** Side of a mark's shape on paper and on the screen, pixels. */
const SMALL_PX = 9.8;
const LARGE_PX = 13;

interface MarksProps {
  readonly line: SizedLine;
  readonly frame: ProfileFrame;
  readonly system: UnitSystem;
  readonly onPoint: ((check: Check | null) => void) | undefined;
}

/** The checks that speak of a stretch, above the line: where each runs, and its shape. */
export function CheckMarks({ line, frame, system, onPoint }: MarksProps) {
  const { plot, lanes, rowPx, layout } = frame;
  const marks = checkMarks(line.checks, lanes, frame.x, plot.left, plot.right);
  const middleY = ({ lane }: CheckMark) => plot.top - 1 - (lane + 0.5) * rowPx;
  const wordsOf = (mark: CheckMark) =>
    layout === "screen" ? wordsBeside(mark, marks, frame.widthPx) : null;
  return (
    <g>
      {marks.map((mark) => (
        <Span key={keyOf(mark)} mark={mark} y={middleY(mark)} />
      ))}
      {marks
        .filter(({ isJoined }) => !isJoined)
        .map((mark) => (
          <Shape
            key={keyOf(mark)}
            mark={mark}
            y={middleY(mark)}
            words={wordsOf(mark)}
            isLarge={layout === "screen"}
            system={system}
            onPoint={onPoint}
          />
        ))}
    </g>
  );
}

function keyOf({ check }: CheckMark): string {
  return `${check.id}-${check.fromM}`;
}

function Span({ mark, y }: { readonly mark: CheckMark; readonly y: number }) {
  const { check, fromPx, toPx } = mark;
  return (
    <path
      class={`profile-mark-stretch profile-mark-${check.severity}`}
      d={`M${fromPx} ${y - 3}v6M${fromPx} ${y}H${toPx}M${toPx} ${y - 3}v6`}
    />
  );
}

interface ShapeProps {
  readonly mark: CheckMark;
  readonly y: number;
  readonly words: MarkWords | null;
  readonly isLarge: boolean;
  readonly system: UnitSystem;
  readonly onPoint: ((check: Check | null) => void) | undefined;
}

function Shape({ mark, y, words, isLarge, system, onPoint }: ShapeProps) {
  const { check, middlePx, count } = mark;
  const half = isLarge ? LARGE_PX / 2 : SMALL_PX / 2;
  return (
    <g
      class="profile-mark"
      onPointerEnter={() => onPoint?.(check)}
      onPointerLeave={() => onPoint?.(null)}
    >
      <title>{titleOf(mark, system)}</title>
      <rect
        class="profile-mark-back"
        x={middlePx - 6.5}
        y={y - 5.5}
        width={count > 1 ? 13 + COUNT_PX : 13}
        height={11}
      />
      {count > 1 && !words && (
        <text x={middlePx + half + 2} y={y + 4}>
          {count}
        </text>
      )}
      {words && (
        <text class="profile-mark-words" x={words.x} y={y + 4}>
          {words.parts.map(({ severity, text }, i) => (
            <tspan key={severity} class={`profile-mark-words-${severity}`}>
              {i > 0 && ", "}
              {text}
            </tspan>
          ))}
        </text>
      )}
      <g transform={`translate(${middlePx - half} ${y - half}) scale(${half / 7})`}>
        <SeverityMark severity={check.severity} />
      </g>
    </g>
  );
}

function titleOf({ check, count }: CheckMark, system: UnitSystem): string {
  const { message } = checkWords(check, system);
  return count > 1 ? `${message} And ${count - 1} more here.` : message;
}
