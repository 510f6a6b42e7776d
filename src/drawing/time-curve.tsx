import "./time-charts.css";
import type { Plan } from "../../shared/plan.ts";
import type { BandCrest, LineTime } from "../../shared/time/types.ts";
import { formatCount, formatLength, lengthUnit, type UnitSystem } from "../../shared/units.ts";
import { levelWords } from "../../shared/words/time.ts";
import { curveFrame } from "./time-curve-frame.ts";

/** Height of the chart of bags against stage, CSS pixels. */
export const CURVE_PX = 150;

interface CurveChartProps {
  readonly plan: Plan;
  readonly time: LineTime;
  readonly system: UnitSystem;
  readonly widthPx: number;
}

/** Bags against the water's level, with the crests of the forecast. */
export function CurveChart(props: CurveChartProps) {
  const frame = curveFrame({ ...props, heightPx: CURVE_PX });
  if (!frame) return null;
  const { plot, limitX } = frame;
  const limit = formatLength(props.plan.practice.limitM, props.system);
  const isLimitLeft = limitX !== null && limitX > plot.right - 52;
  return (
    <svg
      class="time-chart"
      width={props.widthPx}
      height={CURVE_PX}
      viewBox={`0 0 ${props.widthPx} ${CURVE_PX}`}
      role="img"
      aria-label="Bags against the water's level"
    >
      {frame.bags.map(({ yPx, label }) => (
        <g key={label}>
          <path class="time-grid" d={`M${plot.left} ${yPx}H${plot.right}`} />
          <text x={plot.left - 5} y={yPx + 4} text-anchor="end">
            {label}
          </text>
        </g>
      ))}
      <path class="time-axis" d={`M${plot.left} ${plot.bottom}H${plot.right}`} />
      {frame.levels.map(({ xPx, label }) => (
        <text key={label} x={xPx} y={CURVE_PX - 5} text-anchor="middle">
          {label}
        </text>
      ))}
      <text x={0} y={CURVE_PX - 5}>
        {props.plan.water.by === "stage" ? "stage" : "water"} {lengthUnit(props.system)}
      </text>
      {limitX !== null && limitX >= plot.left && (
        <>
          <path
            class="time-over"
            d={`M${limitX} ${plot.top}H${plot.right}V${plot.bottom}H${limitX}Z`}
          />
          <path class="time-limit" d={`M${limitX} ${plot.top}V${plot.bottom}`} />
          <text
            class="time-limit-text"
            x={limitX + (isLimitLeft ? -4 : 4)}
            y={plot.top + 9}
            text-anchor={isLimitLeft ? "end" : "start"}
          >
            over {limit}
          </text>
        </>
      )}
      <path class="time-curve" d={frame.curve} />
      {frame.points.map(({ xPx, yPx }) => (
        <circle key={xPx} class="time-point" cx={xPx} cy={yPx} r={2.2} />
      ))}
      <circle class="time-now" cx={frame.now.xPx} cy={frame.now.yPx} r={5} />
      {frame.crests.map(({ xPx, yPx, label }) => (
        <g key={label}>
          <path class="time-crest" d={`M${xPx} ${yPx - 4}l4 4-4 4-4-4z`} />
          <text class="time-crest-text" x={xPx - 7} y={yPx - 4} text-anchor="end">
            {label}
          </text>
        </g>
      ))}
    </svg>
  );
}

interface CrestTableProps {
  readonly crests: readonly BandCrest[];
  readonly plan: Plan;
  readonly system: UnitSystem;
}

/** Bags and heights if each band of the forecast came true. */
export function CrestTable({ crests, plan: of, system }: CrestTableProps) {
  return (
    <table class="time-table">
      <caption>Sized for each forecast crest</caption>
      <thead>
        <tr>
          <th scope="col">Forecast</th>
          <th scope="col">{of.water.by === "stage" ? "Stage" : "Water"}</th>
          <th scope="col">Bags</th>
          <th scope="col">Highest</th>
          <th scope="col">Over height limit</th>
        </tr>
      </thead>
      <tbody>
        {crests.map((crest) => (
          <tr key={crest.band} data-band={crest.band}>
            <th scope="row">{crest.band}</th>
            <td>{levelWords(of, crest.waterM, system)}</td>
            <td>
              <strong>{formatCount(crest.bags)}</strong>
            </td>
            <td>{formatLength(crest.greatestHeightM, system)}</td>
            <td>{formatLength(crest.lengthOverLimitM, system, 0)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
