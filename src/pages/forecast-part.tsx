import { timeOf } from "../../shared/defaults.ts";
import type { Exported } from "../../shared/exports/exported.ts";
import type { Forecast } from "../../shared/plan.ts";
import { momentOf } from "../../shared/time/forecast-time.ts";
import { formatLength, type UnitSystem } from "../../shared/units.ts";
import { momentWords, zoneWords } from "../../shared/words/clock.ts";
import { ForecastChart, ForecastKey } from "../drawing/forecast-chart.tsx";
import { CrestTable } from "../drawing/time-curve.tsx";
import { pxOf } from "./paper.ts";
import type { Piece } from "./sheet.tsx";

const CHART_PX = 190;

/** For the office: the forecast that the times rest on, as a curve, as it was given, and what each crest would take. */
export function forecastPieces({ plan, line, system }: Exported, widthMm: number): Piece[] {
  const { forecast } = timeOf(plan);
  const { time } = line;
  if (!forecast || !time) return [];
  return [
    <section aria-label="Forecast">
      <h2>Forecast</h2>
      <ForecastChart
        plan={plan}
        time={time}
        system={system}
        widthPx={Math.floor(pxOf(widthMm))}
        heightPx={CHART_PX}
      />
      <ForecastKey plan={plan} time={time} />
      <ForecastRows forecast={forecast} system={system} />
      <CrestTable crests={time.crests} plan={plan} system={system} />
    </section>,
  ];
}

interface ForecastRowsProps {
  readonly forecast: Forecast;
  readonly system: UnitSystem;
}

/** The rows as they were given. */
function ForecastRows({ forecast, system }: ForecastRowsProps) {
  const { rows, levels, note } = forecast;
  const first = momentOf(rows[0]!.at)!;
  const hasBand = rows.every(({ lowM, highM }) => lowM !== null && highM !== null);
  const shown = rows.length <= MOST_ROWS ? rows : [];
  return (
    <>
      <p>
        {note && `${note} `}
        {rows.length} rows by {levels}, {zoneWords(first) ?? "no zone stated"}.
        {shown.length === 0 && " They are too many for this page and are in the plan file."}
      </p>
      <ul class="build-forecast">
        {shown.map(({ at, levelM, lowM, highM }) => (
          <li key={at}>
            {momentWords(momentOf(at)!, true, system)}{" "}
            <strong>{formatLength(levelM, system, 2)}</strong>
            {hasBand &&
              ` (${formatLength(lowM!, system, 2)} to ${formatLength(highM!, system, 2)})`}
          </li>
        ))}
      </ul>
    </>
  );
}

const MOST_ROWS = 120;
