import { useId } from "preact/hooks";
import { FOOT_M } from "../../shared/constants.ts";
import { timeOf } from "../../shared/defaults.ts";
import type { Exported } from "../../shared/exports/exported.ts";
import { waterElevationAtGauge } from "../../shared/stage.ts";
import type { LineTime } from "../../shared/time/types.ts";
import { formatStation } from "../../shared/units.ts";
import { layToWords, liftPictureWords, ON_HOLD } from "../../shared/words/crew-parts.ts";
import { namedLevel } from "../../shared/words/time.ts";
import { Hatches } from "../drawing/hatches.tsx";
import { textWidth } from "../drawing/text-width.ts";
import { type LiftBox, type LiftLayout, liftLayout } from "./lift-layout.ts";

const LEFT_PX = 92;
const RIGHT_PX = 4;
const TOP_PX = 10;
const PLOT_PX = 138;
/** Between the plot, or the names under it, and the stations. */
const UNDER_PX = 8;
const AXIS_PX = 22;
const TYPE_PX = 15;
const SMALL_PX = 12;
const LEAST_STATIONS_PX = 70;
/** Lifts are named as often as their names can be read one below the other. */
const LEAST_MARKS_PX = 15;
const EVERY = [1, 2, 5, 10, 20, 50] as const;

interface LiftPictureProps {
  readonly of: Exported;
  readonly time: LineTime;
  readonly widthPx: number;
}

/** Which crew lays what over the stations: each step from where it stops down to what is laid before it. */
export function LiftPicture({ of: { plan, line, system }, time, widthPx }: LiftPictureProps) {
  const id = useId();
  const bottomPx = TOP_PX + PLOT_PX;
  const layout = liftLayout(line, time, {
    ...{ leftPx: LEFT_PX, rightPx: widthPx - RIGHT_PX, topPx: TOP_PX, bottomPx },
    typePx: TYPE_PX,
    widthOf: (text) => textWidth(text, TYPE_PX),
  });
  const { x, y, boxes, bodies, labels, deepestM } = layout;
  const { liftM } = timeOf(plan);
  const { freeboardM } = plan.water;
  const lowestPx = labels.reduce((most, { yPx }) => Math.max(most, yPx + TYPE_PX / 2), bottomPx);
  const axisPx = lowestPx + UNDER_PX;
  const stepM = liftM * (EVERY.find((k) => y(k * liftM) - y(0) >= LEAST_MARKS_PX) ?? EVERY.at(-1)!);
  const marks = Array.from({ length: Math.floor(deepestM / stepM) + 1 }, (_, k) => k * stepM);
  const heightPx = axisPx + AXIS_PX;
  return (
    <figure class="lift-picture">
      <svg width="100%" viewBox={`0 0 ${widthPx} ${heightPx}`} role="img">
        <title>Steps of each crew over the stations, down from the mark on the stake</title>
        <Hatches id={id} />
        <clipPath id={`${id}-body`}>
          {bodies.map((body) => (
            <polygon key={body[0]![0]} points={pointsOf(body)} />
          ))}
        </clipPath>
        <g clip-path={`url(#${id}-body)`}>
          {boxes.map((box) => (
            <Box key={`${box.name} ${box.fromPx}`} box={box} id={id} bottomPx={bottomPx} />
          ))}
        </g>
        {bodies.map((body) => (
          <polyline key={body[0]![0]} class="lift-ground" points={pointsOf(body.slice(1, -1))} />
        ))}
        <line class="lift-mark" x1={x(0)} x2={x(line.totals.lengthM)} y1={y(0)} y2={y(0)} />
        {freeboardM < deepestM && (
          <line
            class="lift-water"
            x1={x(0)}
            x2={x(line.totals.lengthM)}
            y1={y(freeboardM)}
            y2={y(freeboardM)}
          />
        )}
        {labels.map(({ name, xPx, yPx, leadPx }) => (
          <g key={`${name} ${xPx}`}>
            {leadPx && <line class="lift-lead" x1={leadPx.x} y1={leadPx.y} x2={xPx} y2={yPx - 9} />}
            {name === ON_HOLD && <HoldLabel xPx={xPx} yPx={yPx} />}
            <text
              class="lift-name"
              x={xPx}
              y={yPx}
              font-size={TYPE_PX}
              data-hold={name === ON_HOLD}
            >
              {name}
            </text>
          </g>
        ))}
        {marks.map((belowM) => (
          <text key={belowM} class="lift-side" x={LEFT_PX - 8} y={y(belowM)} font-size={SMALL_PX}>
            {layToWords({ belowM }, system)}
          </text>
        ))}
        <Axis layout={layout} lengthM={line.totals.lengthM} yPx={axisPx} system={system} />
      </svg>
      <figcaption>
        {liftPictureWords(namedLevel(plan, waterElevationAtGauge(plan.water), system))}
      </figcaption>
    </figure>
  );
}

interface BoxProps {
  readonly box: LiftBox;
  readonly id: string;
  readonly bottomPx: number;
}

function Box({ box, id, bottomPx }: BoxProps) {
  const { fromPx, toPx, topPx, crew, isOnHold } = box;
  return (
    <rect
      class="lift-box"
      data-crew={crew % 2}
      x={fromPx}
      y={topPx}
      width={Math.max(0, toPx - fromPx)}
      height={bottomPx - topPx}
      {...(isOnHold ? { style: { fill: `url(#${id}-over)` } } : {})}
    />
  );
}

/** A filled ground for the word, which a copier keeps. */
function HoldLabel({ xPx, yPx }: { readonly xPx: number; readonly yPx: number }) {
  const [wide, high] = [textWidth(ON_HOLD, TYPE_PX) + 8, TYPE_PX + 3];
  return (
    <rect class="lift-hold" x={xPx - wide / 2} y={yPx - high / 2} width={wide} height={high} />
  );
}

interface AxisProps {
  readonly layout: LiftLayout;
  readonly lengthM: number;
  readonly yPx: number;
  readonly system: Exported["system"];
}

/** Stations under the picture, at round ones as far apart as they can be read. */
function Axis({ layout: { x }, lengthM, yPx, system }: AxisProps) {
  const eachM = system === "us" ? 100 * FOOT_M : 100;
  const widePx = x(eachM) - x(0);
  const every = EVERY.find((k) => k * widePx >= LEAST_STATIONS_PX) ?? 100;
  const stations = Array.from(
    { length: Math.floor(lengthM / (eachM * every) + 1e-6) + 1 },
    (_, k) => k * every * eachM,
  );
  const lastPx = x(lengthM) + RIGHT_PX - textWidth(formatStation(lengthM, system), SMALL_PX) / 2;
  return (
    <g class="lift-axis" font-size={SMALL_PX}>
      <line x1={x(0)} x2={x(lengthM)} y1={yPx} y2={yPx} />
      <text class="lift-side" x={LEFT_PX - 34} y={yPx + 13}>
        Station
      </text>
      {stations.map((stationM) => (
        <g key={stationM}>
          <line x1={x(stationM)} x2={x(stationM)} y1={yPx} y2={yPx + 4} />
          <text x={Math.min(x(stationM), lastPx)} y={yPx + 17}>
            {formatStation(stationM, system)}
          </text>
        </g>
      ))}
    </g>
  );
}

function pointsOf(points: readonly (readonly [number, number])[]): string {
  return points.map(([xPx, yPx]) => `${xPx.toFixed(1)},${yPx.toFixed(1)}`).join(" ");
}
