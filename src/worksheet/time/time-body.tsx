import { failureWords } from "../../../shared/words/failure.ts";
import { nextStepWords, uncountedWords } from "../../../shared/words/next-steps.ts";
import { LevelNotice } from "../../drawing/level-notice.tsx";
import { ground } from "../../live/ground.ts";
import { chosenLine } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import { timeNow } from "../../live/time-now.ts";
import { uncounted } from "../../live/uncounted.ts";
import { CurvePart } from "./curve-part.tsx";
import { ForecastPart } from "./forecast-part.tsx";
import { OrderPart } from "./time-order.tsx";
import { TimeResult } from "./time-result.tsx";
import { WorkPart } from "./time-work.tsx";

/** The verdict on time, the forecast, the people, the build sequence and the bags by stage. */
export function TimeBody() {
  const now = timeNow.value;
  const time = now?.time ?? null;
  const doubt = chosenLine.value?.levelDoubt ?? null;
  return (
    <>
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
    </>
  );
}

function nextStep(): string {
  if (!ground.value) return nextStepWords("time", "ground");
  if (uncounted.value) {
    return uncountedWords("time", failureWords(uncounted.value, unitSystem.value).message);
  }
  return nextStepWords("time", chosenLine.value ? "answer" : "line");
}
