import { hasOtherSections } from "../../shared/reaches.ts";
import "./build-order.css";
import { timeOf } from "../../shared/defaults.ts";
import type { Forecast, Plan } from "../../shared/plan.ts";
import { formatSetting } from "../../shared/setting-text.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { hourWords, momentWords, zoneWords } from "../../shared/time/clock-words.ts";
import { endsBeforeTheWork, riseOverPlanM } from "../../shared/time/forecast-end.ts";
import { momentOf } from "../../shared/time/forecast-time.ts";
import type { Crew, LineTime } from "../../shared/time/types.ts";
import { alternativesInTime, mostWork } from "../../shared/time/ways-out.ts";
import {
  formatCount,
  formatHours,
  formatLength,
  lengthIn,
  type UnitSystem,
} from "../../shared/units.ts";
import { mostWorkWords } from "../../shared/words/checks/time.ts";
import { gapLength } from "../../shared/words/ground-gap.ts";
import { butMustFix } from "../../shared/words/must-fix.ts";
import { behindWords, doneAfter, mainVerdict, timeWords } from "../../shared/words/time.ts";
import { ForecastChart, ForecastKey } from "../drawing/forecast-chart.tsx";
import { CrestTable } from "../drawing/time-curve.tsx";
import { mustFixOn } from "../live/water-now.ts";
import { AHEAD_TITLE, inOrder, isBehind, ORDER_COLUMNS } from "./build-order-table.ts";
import { SheetOf } from "./sheet-of.tsx";

interface BuildOrderProps {
  readonly plan: Plan;
  readonly line: SizedLine;
  /** Every alternative's result, to name those in time when this one is not. */
  readonly results: readonly SizedLine[];
  readonly system: UnitSystem;
  readonly widthPx: number;
}

const CHART_PX = 190;

/** On paper: whether there is time, who builds which stretch when, and the forecast it rests on. */
export function BuildOrderSheet({ plan, line, results, system, widthPx }: BuildOrderProps) {
  const { time } = line;
  if (!time || time.stretches.length === 0) return null;
  const { forecast } = timeOf(plan);
  return (
    <section class="sheet-part sheet-page" aria-label="Order of building">
      <h2>Order of building</h2>
      <SheetOf plan={plan} line={line} system={system} />
      <p class="build-verdict">
        <strong>{timeWords(time, system)}.</strong> {time.crew && crewWords(plan, time, time.crew)}
      </p>
      {doubtWords(line, time, system).map((words) => (
        <p key={words} class="sheet-warning">
          {words}
        </p>
      ))}
      <Ways line={line} time={time} results={results} />
      <OtherBands time={time} system={system} />
      {time.stretches.some(isBehind) && (
        <p class="build-behind">
          ▲ behind: before it is done the water comes nearer to its crest than{" "}
          {formatLength(time.marginM, system)}; at 0.0 it comes over.
        </p>
      )}
      <StretchTable time={time} system={system} />
      {forecast && (
        <div class="build-whole">
          <h3>Forecast</h3>
          <ForecastChart
            plan={plan}
            time={time}
            system={system}
            widthPx={widthPx}
            heightPx={CHART_PX}
          />
          <ForecastKey plan={plan} time={time} />
          <ForecastRows forecast={forecast} system={system} />
          <CrestTable crests={time.crests} plan={plan} system={system} />
        </div>
      )}
    </section>
  );
}

/** What the verdict does not speak of, and who reads only the sheet must know. */
function doubtWords(line: SizedLine, time: LineTime, system: UnitSystem): string[] {
  const riseM = riseOverPlanM(time);
  const gap = gapLength(line, system);
  return [
    riseM > 0 &&
      `The forecast crests ${formatLength(riseM, system)} above the water this line is sized for; the verdict holds only up to that water.`,
    endsBeforeTheWork(time) &&
      "The forecast ends before the work does: nothing is known of the water after it.",
    gap !== null &&
      `${gap} of the line has no elevation data: its bags and hours are in none of these times.`,
  ].filter((words) => words !== false);
}

function crewWords(plan: Plan, time: LineTime, crew: Crew): string {
  const { shifts, shiftH, lit, setUpH, liftM } = timeOf(plan);
  const start = time.startAt
    ? `Start ${hourWords(time.startAt, 0, { long: true, toMin: 1 })}. `
    : "";
  const turns = `${shifts} ${shifts === 1 ? "shift" : "shifts"} of ${formatHours(shiftH)} in 24 hours, ${lit ? "at night too, under lights" : daylightWords(time)}`;
  const { people, fillers, layers, crews, slowBagsPerH, fastBagsPerH } = crew;
  return `${start}${formatCount(people)} people, ${Math.round(fillers)} filling and ${Math.round(layers)} laying in ${crews} ${crews === 1 ? "crew" : "crews"}; ${turns}; ${formatHours(setUpH)} to set up first. ${formatCount(Math.round(slowBagsPerH))} to ${formatCount(Math.round(fastBagsPerH))} bags an hour: ${formatCount(time.bags)} bags take ${doneAfter(time)}. Times below are at the slow pace; the line is raised ${formatLength(liftM, "us")} (${formatLength(liftM, "metric")}) at a time all along, so that a crew comes back to each stretch.`;
}

/** `by daylight, 06:52 to 19:48 on the first day`. */
function daylightWords({ daylight }: LineTime): string {
  if (!daylight) return "by daylight";
  const clock = (hour: number) => formatSetting("clock", hour, "us");
  return `by daylight, ${clock(daylight.fromH)} to ${clock(daylight.toH)} on the first day`;
}

interface WaysProps {
  readonly line: SizedLine;
  readonly time: LineTime;
  readonly results: readonly SizedLine[];
}

function Ways({ line, time, results }: WaysProps) {
  const ways = time.waysOut;
  if (!ways) return null;
  const most = mostWork(time, !hasOtherSections(line));
  const others = alternativesInTime(line, results).map(
    (other) =>
      `"${other.name}" of ${formatCount(other.totals.bags)} bags, which is in time${butMustFix(mustFixOn(other))}`,
  );
  const found = [
    ...others,
    ways.people !== null && `${formatCount(ways.people)} people instead`,
    ways.peopleDayAndNight !== null &&
      ways.peopleDayAndNight < (ways.people ?? Infinity) &&
      `${formatCount(ways.peopleDayAndNight)} people working at every hour, day and night under lights, with as many again for every further shift`,
    most && `a smaller ring of at most ${mostWorkWords(most)}`,
  ].filter((words) => words !== false && words !== null);
  return (
    <p class="sheet-warning">
      {found.length > 0
        ? `What would make it possible: ${found.join("; or ")}.`
        : "No number of people is enough: start sooner, or prepare to leave."}{" "}
      Do not save time on freeboard.
    </p>
  );
}

/** That the high forecast would be too soon where the likely one is not. */
function OtherBands({ time, system }: { readonly time: LineTime; readonly system: UnitSystem }) {
  const high = time.verdicts.find(({ band, pace }) => band === "high" && pace === "slow");
  if (!high || high.ahead || !mainVerdict(time)?.ahead) return null;
  return (
    <p class="sheet-warning">
      If the high forecast comes true, the slow pace is {behindWords(time, high, system)}.
    </p>
  );
}

function StretchTable({ time, system }: { readonly time: LineTime; readonly system: UnitSystem }) {
  const asked = lengthIn(time.marginM, system).toFixed(1);
  return (
    <table class="sheet-table" data-table="build-order">
      <thead>
        <tr>
          {ORDER_COLUMNS.map((column) => (
            <th key={column.title} scope="col">
              {column.title}
              <small>{column.unit(system)}</small>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {inOrder(time).map((stretch) => (
          <tr key={stretch.fromM} data-behind={isBehind(stretch)}>
            {ORDER_COLUMNS.map((column) => {
              const words = cellWords(column.title, column.value(stretch, time, system));
              const isMarked = column.title === AHEAD_TITLE && isBehind(stretch);
              const marked = words === asked ? `▲ < ${words}` : `▲ ${words}`;
              return <td key={column.title}>{isMarked ? marked : words}</td>;
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function cellWords(title: string, value: string | number | null): string {
  if (value === null) return "–";
  if (typeof value === "string") return value;
  if (title === "Bags") return formatCount(value);
  return Number.isInteger(value) && title !== AHEAD_TITLE ? `${value}` : value.toFixed(1);
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
        {shown.length === 0 && " Too many for this sheet; they are in the plan file."}
      </p>
      <ul class="build-forecast">
        {shown.map(({ at, levelM, lowM, highM }) => (
          <li key={at}>
            {momentWords(momentOf(at)!, true)} <strong>{formatLength(levelM, system, 2)}</strong>
            {hasBand &&
              ` (${formatLength(lowM!, system, 2)} to ${formatLength(highM!, system, 2)})`}
          </li>
        ))}
      </ul>
    </>
  );
}

const MOST_ROWS = 120;
