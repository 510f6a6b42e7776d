import { bagsAtHeight, type LessonShape } from "../../shared/lesson/lesson-shape.ts";
import { lengthIn, lengthUnit } from "../../shared/units.ts";
import {
  bagsWords,
  beforeWords,
  curveTitle,
  LESSON,
  lineBagsWords,
  wholeLineWords,
} from "../../shared/words/lesson.ts";
import { textWidth } from "../drawing/text-width.ts";
import { axisFor } from "./axis.ts";
import type { Drawn } from "./shown.ts";
import { useDrawing } from "./use-drawing.ts";

/** How bags grow with height, with the points now and before; the whole line's bags under it. */
export function CurvePanel(drawn: Drawn) {
  const [ref, size] = useDrawing(drawn.typePx);
  const { teaching, shape, before, isShown } = drawn;
  return (
    <section class="lesson-panel lesson-curve" aria-label={curveTitle(teaching.system)}>
      <h2>{curveTitle(teaching.system)}</h2>
      <div class="lesson-drawing" ref={ref}>
        {size && <Curve {...drawn} widthPx={size.widthPx} heightPx={size.heightPx} />}
      </div>
      <p class="lesson-whole">
        {wholeLineWords(teaching)} <b>{isShown ? lineBagsWords(shape.lineBags) : LESSON.unknown}</b>
        {before && `, ${beforeWords(lineBagsWords(before.lineBags))}`}
      </p>
    </section>
  );
}

interface CurveProps extends Drawn {
  readonly widthPx: number;
  readonly heightPx: number;
}

const POINTS = 60;

function Curve({ widthPx, heightPx, ...drawn }: CurveProps) {
  const { teaching, shape, before, isShown, typePx } = drawn;
  const { system, room } = teaching;
  const perUnit = (perM: number) => perM / lengthIn(1, system);
  const shapes = before ? [shape, before] : [shape];
  const unit = lengthUnit(system);
  const heights = axisFor(
    [0, lengthIn(room.curveM, system)],
    shapes.map(({ heightM }) => lengthIn(heightM, system)),
    7,
  );
  const toM = heights.to / lengthIn(1, system);
  const steepest = (each: LessonShape) => perUnit(bagsAtHeight(each, toM));
  const bags = axisFor([0, Math.max(...shapes.map(steepest))], [], 4);
  const plot = {
    left: 2.6 * typePx,
    right: widthPx - 1.5 * typePx,
    top: 0.9 * typePx,
    bottom: heightPx - 1.5 * typePx,
  };
  const x = (heightM: number) =>
    plot.left + ((plot.right - plot.left) * lengthIn(heightM, system)) / heights.to;
  const y = (perM: number) => plot.bottom - ((plot.bottom - plot.top) * perUnit(perM)) / bags.to;
  const curve = (each: LessonShape) =>
    `M${Array.from({ length: POINTS + 1 }, (_, i) => (toM * i) / POINTS)
      .map((heightM) => `${x(heightM)} ${y(bagsAtHeight(each, heightM))}`)
      .join("L")}`;
  const limitX = x(shape.practice.limitM);
  const seen = isShown ? shape : (before ?? shape);
  const isFlatter = before !== null && before.choice.baseRatio !== shape.choice.baseRatio;
  const words = bagsWords(shape.bagsPerM, system);
  const [pointX, pointY] = [x(shape.heightM), y(shape.bagsPerM)];
  const isLeft = pointX + 0.7 * typePx + textWidth(words, 1.05 * typePx) > plot.right;
  const isLow = pointY > plot.bottom - 1.5 * typePx;
  return (
    <svg class="lesson-picture" width={widthPx} height={heightPx} aria-hidden="true">
      <rect
        class="lesson-over-zone"
        x={limitX}
        y={plot.top}
        width={Math.max(0, plot.right - limitX)}
        height={plot.bottom - plot.top}
      />
      <g class="lesson-axes">
        {bags.labels.map((label) => {
          const at = plot.bottom - ((plot.bottom - plot.top) * label) / bags.to;
          return (
            <g key={label}>
              <path class="profile-grid" d={`M${plot.left} ${at}H${plot.right}`} />
              <text
                x={plot.left - 0.4 * typePx}
                y={at}
                text-anchor="end"
                dominant-baseline="central"
              >
                {label}
              </text>
            </g>
          );
        })}
        {heights.labels.map((label, i) => (
          <text
            key={label}
            x={plot.left + ((plot.right - plot.left) * label) / heights.to}
            y={plot.bottom + 0.4 * typePx}
            text-anchor="middle"
            dominant-baseline="hanging"
          >
            {`${Number(label.toFixed(2))}${i === heights.labels.length - 1 ? ` ${unit}` : ""}`}
          </text>
        ))}
      </g>
      <path class="profile-limit" d={`M${limitX} ${plot.top}V${plot.bottom}`} />
      <text
        class="lesson-limit-name"
        x={limitX - 0.5 * typePx}
        y={plot.top + 0.3 * typePx}
        text-anchor="end"
        dominant-baseline="central"
      >
        {LESSON.limit}
      </text>
      {isFlatter && isShown && <path class="lesson-ghost" d={curve(before)} />}
      <path class="lesson-curve-line" d={curve(seen)} />
      {isShown && (
        <path class="lesson-lead" d={`M${plot.left} ${pointY}H${pointX}V${plot.bottom}`} />
      )}
      {before && (
        <>
          <circle
            class="lesson-point-before"
            cx={x(before.heightM)}
            cy={y(before.bagsPerM)}
            r={0.45 * typePx}
          />
          <text
            class="lesson-was lesson-on-curve"
            x={x(before.heightM) - 0.8 * typePx}
            y={y(before.bagsPerM) - 0.9 * typePx}
            text-anchor="end"
            dominant-baseline="central"
          >
            {`${bagsWords(before.bagsPerM, system)} ${LESSON.before}`}
          </text>
        </>
      )}
      {isShown && (
        <>
          <circle class="lesson-point" cx={pointX} cy={pointY} r={0.5 * typePx} />
          <text
            class="lesson-point-name lesson-on-curve"
            x={isLeft ? pointX - 0.7 * typePx : pointX + 0.7 * typePx}
            y={pointY + (isLeft || isLow ? -0.9 : 0.6) * typePx}
            text-anchor={isLeft ? "end" : "start"}
            dominant-baseline="central"
          >
            {words}
          </text>
        </>
      )}
    </svg>
  );
}
