import { failureWords } from "../../../shared/words/failure.ts";
import "./time.css";
import { endsBeforeTheWork, riseOverPlanM } from "../../../shared/time/forecast-end.ts";
import type { LineTime } from "../../../shared/time/types.ts";
import { formatLength } from "../../../shared/units.ts";
import { levelDoubtShort } from "../../../shared/words/level-doubt.ts";
import { butMustFix } from "../../../shared/words/must-fix.ts";
import {
  doneAfter,
  isPartCounted,
  mainVerdict,
  timeWords,
  verdictOf,
} from "../../../shared/words/time.ts";
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
    <Disclosure
      id="time"
      title="Crew and time"
      summary={<TimeSummary />}
      line={
        doubt
          ? levelDoubtShort(doubt)
          : time && time.verdicts.length + time.missing.length > 0
            ? closedWords(time)
            : undefined
      }
    >
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

/** The verdict; before it, that the line is sized below its forecast crest. */
function closedWords(time: LineTime): string {
  const system = unitSystem.value;
  const riseM = riseOverPlanM(time);
  const words = timeWords(time, system);
  return riseM > 0
    ? `Sized ${formatLength(riseM, system)} below the forecast crest; ${words}`
    : words;
}

function TimeSummary() {
  const time = timeNow.value?.time;
  if (chosenLine.value?.levelDoubt) return <span class="time-unsure">not known</span>;
  if (!time) return <>{plan.value.time?.forecast ? "" : "no forecast yet"}</>;
  if (time.missing.length > 0) return <span class="time-unsure">not known</span>;
  const verdict = mainVerdict(time);
  if (!verdict) return <>{doneAfter(time)}</>;
  if (verdict.ahead && riseOverPlanM(time) > 0) {
    return <span class="time-late">sized below the forecast</span>;
  }
  if (verdict.ahead && endsBeforeTheWork(time)) {
    return <span class="time-unsure">not known, the forecast ends first</span>;
  }
  if (isPartCounted(time)) return <span class="time-unsure">not known, part is not counted</span>;
  if (verdict.ahead) return <>in time{butMustFix(mustFixOnChosen.value)}</>;
  const isFastEnough = verdictOf(time, "likely", "fast")?.ahead;
  return <span class="time-late">{isFastEnough ? "only at the fast pace" : "not in time"}</span>;
}

function nextStep(): string {
  if (!ground.value) return "Open the elevation data first.";
  if (uncounted.value)
    return `${failureWords(uncounted.value, unitSystem.value).message} The time is not known.`;
  if (!chosenLine.value) return "Draw a ring or a line to see how long it takes.";
  return "Calculating the build sequence.";
}
