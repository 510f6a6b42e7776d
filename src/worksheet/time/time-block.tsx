import { failureWords } from "../../../shared/words/failure.ts";
import "./time.css";
import { isLate, timeVerdict } from "../../../shared/time/time-verdict.ts";
import { butMustFix } from "../../../shared/words/must-fix.ts";
import { timeVerdictBrief } from "../../../shared/words/time-verdict.ts";
import { plan } from "../../document/store.ts";
import { LevelNotice } from "../../drawing/level-notice.tsx";
import { ground } from "../../live/ground.ts";
import { chosenLine } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import { timeNow } from "../../live/time-now.ts";
import { uncounted } from "../../live/uncounted.ts";
import { mustFixOnChosen } from "../../live/water-now.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { CurvePart } from "./curve-part.tsx";
import { ForecastPart } from "./forecast-part.tsx";
import { OrderPart } from "./time-order.tsx";
import { TimeResult } from "./time-result.tsx";
import { WorkPart } from "./time-work.tsx";

/** Whether the line is built before the water comes, by whom and in which order. */
export function TimeBlock() {
  const now = timeNow.value;
  const time = now?.time ?? null;
  const doubt = chosenLine.value?.levelDoubt ?? null;
  return (
    <Disclosure id="time" title="Crew and time" summary={<TimeSummary />}>
      <div class="time-settled" data-stale={now?.isStale ?? false}>
        <LevelNotice doubt={doubt} system={unitSystem.value} />
        {!doubt && (time ? <TimeResult time={time} /> : <p class="hint">{nextStep()}</p>)}
      </div>
      <ForecastPart time={time} />
      <WorkPart />
      {time && (
        <div class="time-settled" data-stale={now?.isStale ?? false}>
          <OrderPart time={time} />
          <CurvePart time={time} />
        </div>
      )}
    </Disclosure>
  );
}

function TimeSummary() {
  const time = timeNow.value?.time;
  if (!time) return <>{plan.value.time?.forecast ? "" : "no forecast"}</>;
  const verdict = timeVerdict({ time, levelDoubt: chosenLine.value?.levelDoubt ?? null });
  const words = timeVerdictBrief(verdict, unitSystem.value);
  if (verdict.kind === "in-time") {
    return (
      <>
        {words}
        {butMustFix(mustFixOnChosen.value)}
      </>
    );
  }
  return <span class={isLate(verdict) ? "time-late" : "time-unsure"}>{words}</span>;
}

function nextStep(): string {
  if (!ground.value) return "Open the elevation data first.";
  if (uncounted.value)
    return `${failureWords(uncounted.value, unitSystem.value).message} The time is not known.`;
  if (!chosenLine.value) return "Draw a ring or a line to see how long it takes.";
  return "Calculating the build sequence.";
}
