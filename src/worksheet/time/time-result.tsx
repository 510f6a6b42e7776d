import { formatSetting } from "../../../shared/setting-text.ts";
import { riseOverPlanM } from "../../../shared/time/forecast-end.ts";
import { isAllOnHold, isLate, timeVerdict, verdictOf } from "../../../shared/time/time-verdict.ts";
import type { AheadVerdict, Crew, LineTime } from "../../../shared/time/types.ts";
import { formatCount } from "../../../shared/units.ts";
import { hourWords } from "../../../shared/words/clock.ts";
import { gapLength } from "../../../shared/words/ground-gap.ts";
import { butMustFix } from "../../../shared/words/must-fix.ts";
import { timeWords } from "../../../shared/words/time.ts";
import {
  aheadCellWords,
  crestAboveWords,
  notInTimesWords,
  stillRisingWords,
} from "../../../shared/words/time-cautions.ts";
import { sizeForLevel } from "../../document/edits/forecast.ts";
import { plan } from "../../document/store.ts";
import { SeverityMark } from "../../drawing/severity-mark.tsx";
import { chosenLine } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import { riverNow } from "../../live/time-now.ts";
import { mustFixOnChosen } from "../../live/water-now.ts";
import { Fact } from "../../ui/fact.tsx";
import { TimeAmount } from "./time-amount.tsx";
import { WaysOutList } from "./time-ways.tsx";

const BANDS: readonly { readonly band: AheadVerdict["band"]; readonly label: string }[] = [
  { band: "low", label: "Low" },
  { band: "likely", label: "Likely" },
  { band: "high", label: "High" },
];

/** Whether there is time, from when to when the work goes, and what would make it possible. */
export function TimeResult({ time }: { readonly time: LineTime }) {
  const system = unitSystem.value;
  const line = { time, levelDoubt: chosenLine.value?.levelDoubt ?? null };
  const verdict = timeVerdict(line);
  const isHopeless = verdict.kind === "late" || verdict.kind === "over-a-year";
  const fix = verdict.kind === "in-time" ? butMustFix(mustFixOnChosen.value) : "";
  return (
    <section class="time-result" aria-label="Is there time">
      <CrestAbove time={time} />
      <p class="time-verdict" data-late={isHopeless}>
        {verdict.kind !== "in-time" && <SeverityMark severity={isHopeless ? "stop" : "caution"} />}
        <strong>
          {timeWords(line, system)}
          {fix}.
        </strong>
      </p>
      {isLate(verdict) && <WaysOutList time={time} />}
      <StillRising />
      <NotCounted />
      {time.crew && <WorkFacts time={time} crew={time.crew} />}
      {time.verdicts.length > 0 && <Verdicts time={time} />}
    </section>
  );
}

/** That the forecast goes over what the line is sized for, and the way to size it again. */
function CrestAbove({ time }: { readonly time: LineTime }) {
  const likely = time.crests.find(({ band }) => band === "likely");
  if (!likely || riseOverPlanM(time) === 0) return null;
  const goesOver = likely.riseM > plan.value.water.freeboardM;
  return (
    <div class="time-caution">
      <SeverityMark severity={goesOver ? "stop" : "caution"} />
      <p>
        {crestAboveWords(likely, plan.value, unitSystem.value)}{" "}
        <button type="button" class="text-button" onClick={() => sizeForLevel(likely.waterM)}>
          Size the line for it
        </button>
      </p>
    </div>
  );
}

/** That a forecast shows no crest, so that neither the height nor the time rests on one. */
function StillRising() {
  const river = riverNow.value;
  const words = river && stillRisingWords(river, plan.value, unitSystem.value);
  if (!words) return null;
  return (
    <div class="time-caution">
      <SeverityMark severity="caution" />
      <p>{words}</p>
    </div>
  );
}

/** That some of the line is in none of these times, because its ground is not known. */
function NotCounted() {
  const gap = gapLength(chosenLine.value, unitSystem.value);
  if (!gap) return null;
  return (
    <div class="time-caution">
      <SeverityMark severity="stop" />
      <p>{notInTimesWords(gap)}</p>
    </div>
  );
}

function WorkFacts({ time, crew }: { readonly time: LineTime; readonly crew: Crew }) {
  const { startAt, daylight, finishFastH, finishSlowH, firstWetH } = time;
  const system = unitSystem.value;
  const isOnHold = isAllOnHold(time);
  const finish = (hours: number | null) =>
    hours === null ? "not within a year" : hourWords(startAt, hours, system);
  return (
    <dl class="facts">
      {startAt && (
        <Fact name="Start">{hourWords(startAt, 0, system, { long: true, toMin: 1 })}</Fact>
      )}
      <Fact name="Bags an hour">
        {formatCount(Math.round(crew.slowBagsPerH))} to {formatCount(Math.round(crew.fastBagsPerH))}
      </Fact>
      {daylight && (
        <Fact name="Daylight, first day">
          {formatSetting("clock", daylight.fromH, "us")} to{" "}
          {formatSetting("clock", daylight.toH, "us")}
        </Fact>
      )}
      {!isOnHold && (
        <Fact name="Last bag">
          <TimeAmount make="finishFastH" title="Last bag, fast" time={time}>
            {finish(finishFastH)}
          </TimeAmount>{" "}
          to{" "}
          <TimeAmount make="finishSlowH" title="Last bag, slow" time={time}>
            {finish(finishSlowH)}
          </TimeAmount>
        </Fact>
      )}
      {(time.verdicts.length > 0 || firstWetH !== null) && (
        <Fact name="First wet ground">
          <TimeAmount make="wetH" title="First wet ground" time={time}>
            {firstWetH === null ? "none in this forecast" : hourWords(startAt, firstWetH, system)}
          </TimeAmount>
        </Fact>
      )}
    </dl>
  );
}

function Verdicts({ time }: { readonly time: LineTime }) {
  return (
    <table class="time-table">
      <caption>
        Does the top of levee stay above the water
        {riseOverPlanM(time) > 0 ? ", up to the sized-for level?" : "?"}
      </caption>
      <thead>
        <tr>
          <th scope="col">Forecast</th>
          <th scope="col">Slow pace</th>
          <th scope="col">Fast pace</th>
        </tr>
      </thead>
      <tbody>
        {BANDS.filter(({ band }) => verdictOf(time, band, "slow")).map(({ band, label }) => (
          <tr key={band} data-band={band}>
            <th scope="row">{label}</th>
            {(["slow", "fast"] as const).map((pace) => (
              <VerdictCell key={pace} time={time} verdict={verdictOf(time, band, pace)!} />
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function VerdictCell({
  time,
  verdict,
}: {
  readonly time: LineTime;
  readonly verdict: AheadVerdict;
}) {
  const system = unitSystem.value;
  const isPart = gapLength(chosenLine.value, system) !== null;
  return (
    <td data-ahead={verdict.ahead && !isPart}>
      <TimeAmount make="ahead" title="Ahead of the water" time={time}>
        {aheadCellWords(verdict, time, isPart, system)}
      </TimeAmount>
    </td>
  );
}
