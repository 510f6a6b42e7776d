import "./time-charts.css";
import type { Plan } from "../../shared/plan.ts";
import { riverClock } from "../../shared/time/river-clock.ts";
import { isAllOnHold } from "../../shared/time/time-verdict.ts";
import type { LineTime } from "../../shared/time/types.ts";
import { lengthUnit, type UnitSystem } from "../../shared/units.ts";
import { zoneWords } from "../../shared/words/clock.ts";
import { levelWords, namedLevel } from "../../shared/words/time.ts";
import { type ForecastFrame, forecastFrame } from "./forecast-frame.ts";

interface ForecastChartProps {
  readonly plan: Plan;
  /** The work and the first wet ground of the chosen line; null without one. */
  readonly time: LineTime | null;
  readonly system: UnitSystem;
  readonly widthPx: number;
  readonly heightPx: number;
  /** A moment looked at, hours from the start of work. */
  readonly momentH?: number | null;
}

const LANE_PX = 7;
/** A label stands left of its mark when the plot ends within so much of it. */
const LABEL_PX = 62;

/** The river to come: likely line and band, the water the plan is sized for, the work under it. */
export function ForecastChart(props: ForecastChartProps) {
  const { plan, time, system, widthPx, heightPx, momentH } = props;
  const frame = forecastFrame(props);
  const river = riverClock(plan);
  if (!frame || !river) return null;
  const { plot, x, y, days, levels } = frame;
  const crest = namedLevel(plan, river.crestM, system);
  return (
    <svg
      class="time-chart"
      width={widthPx}
      height={heightPx}
      viewBox={`0 0 ${widthPx} ${heightPx}`}
      role="img"
      aria-label={`Forecast hydrograph, crest at ${crest}`}
    >
      {levels.map(({ yPx, label }) => (
        <g key={label}>
          <path class="time-grid" d={`M${plot.left} ${yPx}H${plot.right}`} />
          <text x={plot.left - 5} y={yPx + 4} text-anchor="end">
            {label}
          </text>
        </g>
      ))}
      <text x={plot.left - 5} y={9} text-anchor="end">
        {lengthUnit(system)}
      </text>
      {days.map(({ xPx, label }) => (
        <g key={label + xPx}>
          <path class="time-grid" d={`M${xPx} ${plot.top}V${plot.bottom + LANE_PX + 6}`} />
          <text x={Math.min(xPx + 3, plot.right - 26)} y={heightPx - 3}>
            {label}
          </text>
        </g>
      ))}
      {frame.band && <path class="time-band" d={frame.band} />}
      <path class="time-likely" d={frame.likely} />
      {frame.designM !== null && (
        <>
          <path class="time-design" d={`M${plot.left} ${y(frame.designM)}H${plot.right}`} />
          <text class="time-design-text" x={plot.left + 3} y={y(frame.designM) - 4}>
            sized for {levelWords(plan, frame.designM, system)}
          </text>
        </>
      )}
      {time && <Work frame={frame} time={time} />}
      {momentH !== null && momentH !== undefined && (
        <g class="time-moment">
          <path d={`M${x(momentH)} ${plot.top}V${plot.bottom}`} />
          <circle cx={x(momentH)} cy={y(river.levelAtH(momentH))} r={3.5} />
        </g>
      )}
    </svg>
  );
}

/** The work as a bar under the plot, to its fast and its slow end, and where the line first gets wet. */
function Work({ frame, time }: { readonly frame: ForecastFrame; readonly time: LineTime }) {
  const { plot, x } = frame;
  const { firstWetH, finishFastH, finishSlowH, missing } = time;
  const laneY = plot.bottom + 5;
  const within = (hour: number | null) => Math.min(plot.right, x(hour ?? Number.POSITIVE_INFINITY));
  const [startX, fastX, slowX] = [x(0), within(finishFastH), within(finishSlowH)];
  const wetX = firstWetH === null ? null : x(firstWetH);
  const isLeft = wetX !== null && wetX > plot.right - LABEL_PX;
  return (
    <>
      {missing.length === 0 && !isAllOnHold(time) && (
        <>
          <path
            class="time-work-slow"
            d={`M${startX} ${laneY}H${slowX}V${laneY + LANE_PX}H${startX}Z`}
          />
          <path
            class="time-work-fast"
            d={`M${startX} ${laneY}H${fastX}V${laneY + LANE_PX}H${startX}Z`}
          />
        </>
      )}
      {wetX !== null && (
        <>
          <path class="time-wet" d={`M${wetX} ${plot.top}V${laneY + LANE_PX}`} />
          <text
            class="time-wet-text"
            x={wetX + (isLeft ? -4 : 4)}
            y={plot.bottom - 5}
            text-anchor={isLeft ? "end" : "start"}
          >
            first wet
          </text>
        </>
      )}
    </>
  );
}

/** What the marks of the chart mean. */
export function ForecastKey({ plan, time }: Pick<ForecastChartProps, "plan" | "time">) {
  const river = riverClock(plan);
  if (!river) return null;
  const hasBand = plan.time?.forecast?.rows.every((row) => row.lowM !== null && row.highM !== null);
  const zone = zoneWords(river.start);
  return (
    <ul class="time-key">
      <li>
        <i class="key-likely" /> likely{hasBand && ", low to high"}
      </li>
      {time?.missing.length === 0 && !isAllOnHold(time) && (
        <li>
          <i class="key-work" /> work, to its fast and slow end
        </li>
      )}
      <li>{zone ? `local time, ${zone}` : "local clock, no zone stated"}</li>
    </ul>
  );
}
