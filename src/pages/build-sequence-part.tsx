import { hasOtherSections } from "../../shared/reaches.ts";
import "./build-sequence.css";
import { timeOf } from "../../shared/defaults.ts";
import type { Exported } from "../../shared/exports/exported.ts";
import type { Forecast } from "../../shared/plan.ts";
import { formatSetting } from "../../shared/setting-text.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { endsBeforeTheWork, riseOverPlanM } from "../../shared/time/forecast-end.ts";
import { momentOf } from "../../shared/time/forecast-time.ts";
import type { Crew, LineTime } from "../../shared/time/types.ts";
import { mostWork, soonerLines } from "../../shared/time/ways-out.ts";
import {
  formatCount,
  formatHours,
  formatLength,
  lengthIn,
  type UnitSystem,
} from "../../shared/units.ts";
import { mostWorkWords } from "../../shared/words/checks/time.ts";
import { hourWords, momentWords, zoneWords } from "../../shared/words/clock.ts";
import { gapLength } from "../../shared/words/ground-gap.ts";
import { butMustFix } from "../../shared/words/must-fix.ts";
import { SETTLING_NOTE } from "../../shared/words/settling.ts";
import { doneAfter, timeWords } from "../../shared/words/time.ts";
import { timeVerdictWords } from "../../shared/words/time-verdict.ts";
import { ForecastChart, ForecastKey } from "../drawing/forecast-chart.tsx";
import { CrestTable } from "../drawing/time-curve.tsx";
import { mustFixOn } from "../live/water-now.ts";
import {
  inSequence,
  isAhead,
  isBehind,
  paperValue,
  SEQUENCE_COLUMNS,
} from "./build-sequence-table.ts";
import { type Rows, Sheet } from "./sheet.tsx";
import type { SheetFrame } from "./title-block.tsx";

const CHART_PX = 190;
const MM_PX = 96 / 25.4;

interface BuildSequenceProps extends SheetFrame {
  readonly time: LineTime;
  /** Every line's result, to name those in time when this one is not. */
  readonly results: readonly SizedLine[];
}

/** On paper: whether there is time, who builds which stretch when, and the forecast it rests on. */
export function BuildSequenceSheet({ time, results, ...frame }: BuildSequenceProps) {
  const { of } = frame;
  const { plan, line, system } = of;
  const { forecast } = timeOf(plan);
  const lead = (
    <>
      <p class="build-verdict">
        <strong>{timeWords(line, system)}.</strong> {time.crew && crewWords(of, time, time.crew)}
      </p>
      {doubtWords(line, time, system).map((words) => (
        <p key={words} class="sheet-warning">
          {words}
        </p>
      ))}
      <Ways line={line} time={time} results={results} system={system} />
      {time.stretches.some(isBehind) && (
        <p class="build-behind">
          ▲ behind: before it is done the water comes nearer to its top than{" "}
          {formatLength(time.marginM, system)}; at 0.0 it overtops.
        </p>
      )}
      <p>{SETTLING_NOTE}</p>
    </>
  );
  const chart = (widthMm: number) =>
    forecast && (
      <div class="build-whole">
        <h3>Forecast</h3>
        <ForecastChart
          plan={plan}
          time={time}
          system={system}
          widthPx={Math.floor(widthMm * MM_PX)}
          heightPx={CHART_PX}
        />
        <ForecastKey plan={plan} time={time} />
        <ForecastRows forecast={forecast} system={system} />
        <CrestTable crests={time.crests} plan={plan} system={system} />
      </div>
    );
  return (
    <Sheet
      {...frame}
      name="Build sequence"
      pieces={({ widthMm }) =>
        [lead, stretchRows(line, time, system), chart(widthMm)].filter((each) => each !== null)
      }
    />
  );
}

/** What the verdict leaves out, and who reads this sheet alone must know. */
function doubtWords(line: SizedLine, time: LineTime, system: UnitSystem): string[] {
  const riseM = riseOverPlanM(time);
  const gap = gapLength(line, system);
  return [
    riseM > 0 &&
      `The forecast crest is ${formatLength(riseM, system)} above the sized-for water: nothing here is said of water above that.`,
    endsBeforeTheWork(time) &&
      "The forecast ends before the work does: the water after it is not known.",
    gap !== null &&
      `${gap} of the line has no elevation data: its bags and hours are in none of these times.`,
  ].filter((words) => words !== false);
}

function crewWords({ plan, system }: Exported, time: LineTime, crew: Crew): string {
  const { shifts, shiftH, lit, setUpH, liftM } = timeOf(plan);
  const { people, fillers, layers, crews, slowBagsPerH, fastBagsPerH } = crew;
  const begin = time.startAt && hourWords(time.startAt, 0, system, { long: true, toMin: 1 });
  return [
    begin && `Start ${begin}.`,
    `${formatCount(people)} people: ${Math.round(fillers)} fill, ${Math.round(layers)} lay in ${crews} ${crews === 1 ? "crew" : "crews"}.`,
    `${shifts} ${shifts === 1 ? "shift" : "shifts"} of ${formatHours(shiftH)} in 24 hours, ${lit ? "at night too, under lights" : daylightWords(time)}; ${formatHours(setUpH)} to set up first.`,
    `At ${formatCount(Math.round(slowBagsPerH))} to ${formatCount(Math.round(fastBagsPerH))} bags an hour ${formatCount(time.bags)} bags take ${doneAfter(time)}. Times below are at the slow pace.`,
    `Raise the line ${formatLength(liftM, system)} at a time all along: each crew comes back to its stretches.`,
  ]
    .filter(Boolean)
    .join(" ");
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
  readonly system: UnitSystem;
}

function Ways({ line, time, results, system }: WaysProps) {
  const ways = time.waysOut;
  if (!ways) return null;
  const most = mostWork(time, !hasOtherSections(line));
  const others = soonerLines(line, results).map(
    ({ line: other, verdict }) =>
      `"${other.name}" of ${formatCount(other.totals.bags)} bags, ${timeVerdictWords(verdict, system)}${butMustFix(mustFixOn(other))}`,
  );
  const found = [
    ...others,
    ways.people !== null && `${formatCount(ways.people)} people instead`,
    ways.peopleDayAndNight !== null &&
      ways.peopleDayAndNight < (ways.people ?? Infinity) &&
      `${formatCount(ways.peopleDayAndNight)} people at work at every hour, day and night under lights, and as many again for each further shift`,
    most && `a smaller ring of at most ${mostWorkWords(most)}`,
  ].filter((words) => words !== false && words !== null);
  return (
    <p class="sheet-warning">
      {found.length > 0
        ? `To be in time: ${found.join("; or ")}.`
        : "No number of people is enough: start sooner, or prepare to leave."}{" "}
      Never cut the freeboard to save time.
    </p>
  );
}

function stretchRows(line: SizedLine, time: LineTime, system: UnitSystem): Rows {
  const required = lengthIn(time.marginM, system).toFixed(1);
  return {
    rows: inSequence(time).map((stretch) => (
      <tr key={stretch.fromM} data-behind={isBehind(stretch)}>
        {SEQUENCE_COLUMNS.map((column) => {
          const value = paperValue(column, { stretch, line, time, system });
          const words = typeof value === "number" ? formatCount(value) : (value ?? "–");
          const isMarked = isAhead(column) && isBehind(stretch);
          const marked = words === required ? `▲ < ${words}` : `▲ ${words}`;
          return <td key={column.id}>{isMarked ? marked : words}</td>;
        })}
      </tr>
    )),
    around: (rows) => (
      <table class="sheet-table" data-table="build-sequence">
        <thead>
          <tr>
            {SEQUENCE_COLUMNS.map(({ id, title, unit }) => (
              <th key={id} scope="col">
                {title}
                <small>{unit(system)}</small>
              </th>
            ))}
          </tr>
        </thead>
        <tbody data-rows>{rows}</tbody>
      </table>
    ),
  };
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
