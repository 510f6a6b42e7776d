import type { Plan } from "../../shared/plan.ts";
import type { BandCrest, LineTime } from "../../shared/time/types.ts";
import { formatCount, formatLength, lengthUnit, type UnitSystem } from "../../shared/units.ts";
import { inUnits } from "../../shared/words/check-list.ts";
import { levelWords } from "../../shared/words/time.ts";
import { plan } from "../document/store.ts";
import { unitSystem } from "../live/state.ts";
import { Disclosure } from "../ui/disclosure.tsx";
import { useSize } from "../ui/use-size.ts";
import { TimeAmount } from "../worksheet/time/time-amount.tsx";
import { curveFrame } from "./time-curve-frame.ts";

const CHART_PX = 150;

/** What another foot of water would cost, and what each band of the forecast would take. */
export function CurvePart({ time }: { readonly time: LineTime }) {
  const system = unitSystem.value;
  const [ref, size] = useSize<HTMLDivElement>();
  const { curve, crests } = time;
  const next =
    curve.nextFoot &&
    curve.nextFoot.bags > 0 &&
    `${formatCount(curve.nextFoot.bags)} for the next ${system === "us" ? "foot" : "0.30 m"}`;
  return (
    <Disclosure id="time-curve" title="Bags against stage" level="part" summary={next}>
      {curve.points.length > 1 && (
        <div class="time-chart-place" ref={ref} style={{ height: CHART_PX }}>
          {size && (
            <CurveChart plan={plan.value} time={time} system={system} widthPx={size.widthPx} />
          )}
        </div>
      )}
      <p class="time-next">
        <TimeAmount make="nextFoot" title="The next foot" time={time}>
          {nextWords(curve.words, system)}
        </TimeAmount>
      </p>
      <p class="hint">{limitWords(plan.value, time, system)}</p>
      {crests.length > 0 && <CrestTable crests={crests} plan={plan.value} system={system} />}
    </Disclosure>
  );
}

interface CurveChartProps {
  readonly plan: Plan;
  readonly time: LineTime;
  readonly system: UnitSystem;
  readonly widthPx: number;
}

function CurveChart(props: CurveChartProps) {
  const frame = curveFrame({ ...props, heightPx: CHART_PX });
  if (!frame) return null;
  const { plot, limitX } = frame;
  const limit = formatLength(props.plan.practice.limitM, props.system);
  const isLimitLeft = limitX !== null && limitX > plot.right - 52;
  return (
    <svg
      class="time-chart"
      width={props.widthPx}
      height={CHART_PX}
      viewBox={`0 0 ${props.widthPx} ${CHART_PX}`}
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
        <text key={label} x={xPx} y={CHART_PX - 5} text-anchor="middle">
          {label}
        </text>
      ))}
      <text x={0} y={CHART_PX - 5}>
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
      <caption>Sized for the crest of each forecast</caption>
      <thead>
        <tr>
          <th scope="col">Forecast</th>
          <th scope="col">{of.water.by === "stage" ? "Stage" : "Water"}</th>
          <th scope="col">Bags</th>
          <th scope="col">Highest</th>
          <th scope="col">Over limit</th>
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

/** The words on the next foot in the person's units. */
function nextWords(words: string, system: UnitSystem): string {
  const next = system === "us" ? "The next foot" : "The next 0.30 m";
  return inUnits(words.replace(/^The next foot \([^)]*\)/, next), system);
}

/** At which level the greatest height reaches the limit. */
function limitWords(of: Plan, { curve }: LineTime, system: UnitSystem): string {
  const now = curve.points.find(({ riseM }) => riseM === 0)!;
  const limit = formatLength(of.practice.limitM, system);
  if (curve.limitRiseM !== null) {
    const level = levelWords(of, now.waterM + curve.limitRiseM, system);
    const isPast = curve.limitRiseM < 0;
    return `The highest place ${isPast ? "passed" : "reaches"} the limit of ${limit} at ${level}${isPast ? " already" : ""}.`;
  }
  return now.greatestHeightM > of.practice.limitM
    ? `The highest place is over the limit of ${limit} at every level shown.`
    : `The highest place stays within the limit of ${limit} at every level shown.`;
}
